/** A second capacitor, left in the set. */
import { bellAt, sizeOf } from '../rig/reading.ts'
import { milli, timesText } from '../words.ts'
import { type Found, foundOf, type Step } from './step.ts'

const at = (found: Found, name: string): number => bellAt(foundOf(found, name), 'hall').current

/** A change of less than this share is none that an ear would notice. */
const NOTICED = 0.2

export const TWO_CAPACITORS: Step = {
  id: 'two-capacitors',
  title: 'Two capacitors',
  text: [
    'A set that once hung on two wires had a bell capacitor of its own. Whoever lands the third wire has to take it out, since the master socket brings one.',
    'If it is forgotten it lies beside the capacitor of the socket, between the third wire and the b wire, before the bell resistor. Or it lies in line with it, in the place of the bell resistor.',
  ],
  question: 'The forgotten capacitor lies beside the one of the socket. What does the bell get?',
  asks: 'one',
  choices: [
    { value: 'less', says: 'Clearly less' },
    { value: 'same', says: 'About the same' },
    { value: 'more', says: 'Clearly more' },
  ],
  controls: [
    {
      id: 'second',
      sort: 'choice',
      says: 'The capacitor of the set',
      options: [
        { value: 'none', says: 'Taken out' },
        { value: 'beside', says: 'Left beside' },
        { value: 'in-line', says: 'Left in line, no bell resistor' },
        { value: 'linked', says: 'Taken out, a plain link for the resistor' },
      ],
    },
  ],
  begin: { second: 'none' },
  shown: { second: 'beside' },
  care: ['opening', 'ringing'],
  house: ({ second }) => ({
    sets: [
      {
        place: 'hall',
        ...(second === 'beside' || second === 'in-line'
          ? { set: second }
          : { set: 'table', resistor: second !== 'linked' }),
      },
    ],
  }),
  needs: {
    none: { second: 'none' },
    beside: { second: 'beside' },
    'in-line': { second: 'in-line' },
    linked: { second: 'linked' },
  },
  answer: (found) => {
    const ratio = at(found, 'beside') / at(found, 'none')
    return ratio > 1 + NOTICED ? 'more' : ratio < 1 - NOTICED ? 'less' : 'same'
  },
  why: (found) => {
    const beside = foundOf(found, 'beside')
    const own = sizeOf(beside.currents.get('hall/own-capacitor') ?? { re: 0, im: 0 })
    const ratio = at(found, 'beside') / at(found, 'none')
    const isQuiet = beside.leakage.value <= beside.leakage.allowed && bellAt(beside, 'hall').rings
    return [
      `With the one capacitor of the socket the bell gets ${milli(at(found, 'none'))}. With a second beside it, it gets ${milli(at(found, 'beside'))}, ${timesText(ratio)} as much. ${milli(beside.capacitor)} come through the capacitor of the socket and ${milli(own)} through that of the set.`,
      ...(Math.abs(ratio - 1) > NOTICED
        ? []
        : [
            'Twice the capacitor is far from twice the current: the bell and its resistor, which stay the same, set most of it.',
          ]),
      ...(isQuiet
        ? [
            `Nothing shows it: the bell rings, and with everybody on-hook the line draws ${milli(beside.leakage.value)} of direct current, where ${milli(beside.leakage.allowed)} are allowed.`,
          ]
        : []),
      `In line there is no resistor. Then the bell gets ${milli(at(found, 'linked'))} through one capacitor and ${milli(at(found, 'in-line'))} through two${at(found, 'in-line') < at(found, 'linked') ? ': what one has passed the next hinders once more' : ''}.`,
    ]
  },
  learned: (found) =>
    `One capacitor is enough: a second beside it made ${milli(at(found, 'none'))} into ${milli(at(found, 'beside'))}; a second in line, without resistor, made ${milli(at(found, 'linked'))} into ${milli(at(found, 'in-line'))}.`,
}
