/** A second capacitor, left in the set. */
import { bellAt } from '../rig/reading.ts'
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
    'If it is forgotten it lies beside the capacitor of the socket, between the third wire and the b wire. Or it lies in line with it, in the place of the bell resistor.',
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
  why: (found) => [
    `With the one capacitor of the socket the bell gets ${milli(at(found, 'none'))}. With a second beside it, it gets ${milli(at(found, 'beside'))}, ${timesText(at(found, 'beside') / at(found, 'none'))} as much: two capacitors side by side pass more.`,
    `The load that this one set lays on the line goes from ${foundOf(found, 'none').load.sum.toFixed(2)} to ${foundOf(found, 'beside').load.sum.toFixed(2)}, though nothing seems wrong.`,
    `In line it is the other way round. Without resistor the bell gets ${milli(at(found, 'linked'))} through one capacitor and ${milli(at(found, 'in-line'))} through two: what one has passed the next hinders once more.`,
  ],
  learned: (found) =>
    `One capacitor is enough: a second beside it made ${milli(at(found, 'none'))} into ${milli(at(found, 'beside'))}; a second in line made ${milli(at(found, 'linked'))} into ${milli(at(found, 'in-line'))}.`,
}
