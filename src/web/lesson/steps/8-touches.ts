/** What else the third wire touches. */
import { bellAt, type HouseReading } from '../rig/reading.ts'
import { milli } from '../words.ts'
import { type Found, foundOf, type Step } from './step.ts'

const CASES = ['pair', 'a', 'b'] as const

const leaks = ({ leakage }: HouseReading): boolean => leakage.value > leakage.allowed

const at = (found: Found, name: string, place: string): number => bellAt(foundOf(found, name), place).current

export const TOUCHES: Step = {
  id: 'touches',
  title: 'What else the third wire touches',
  text: [
    'The third wire is one thing that all sets of a house have in common. What goes wrong with it in one place is felt in others.',
    'Two sets are plugged in. In the kitchen three things may have happened to the third wire: it was never run there, it touches the a wire, or it touches the b wire.',
  ],
  question: 'Which of them makes the line draw direct current with everybody on-hook?',
  asks: 'one',
  choices: [
    { value: 'pair', says: 'It was never run there' },
    { value: 'a', says: 'It touches the a wire' },
    { value: 'b', says: 'It touches the b wire' },
    { value: 'none', says: 'None of them' },
  ],
  controls: [
    {
      id: 'kitchen',
      sort: 'choice',
      says: 'The third wire in the kitchen',
      options: [
        { value: 'right', says: 'As it should be' },
        { value: 'pair', says: 'Never run there' },
        { value: 'a', says: 'Touches the a wire' },
        { value: 'b', says: 'Touches the b wire' },
        { value: 'two-wire', says: 'Never run, but a two-wire set stands there' },
      ],
    },
  ],
  begin: { kitchen: 'right' },
  shown: { kitchen: 'b' },
  care: ['opening', 'ringing', 'line-side', 'codes'],
  house: ({ kitchen }) => ({
    sets: [
      { place: 'hall', set: 'table' },
      {
        place: 'kitchen',
        set: kitchen === 'two-wire' ? 'two-wire' : 'table',
        pairOnly: kitchen === 'pair' || kitchen === 'two-wire',
        ...(kitchen === 'a' || kitchen === 'b' ? { touches: kitchen } : {}),
      },
    ],
  }),
  needs: Object.fromEntries(['right', ...CASES, 'two-wire'].map((kitchen) => [kitchen, { kitchen }])),
  answer: (found) => CASES.find((one) => leaks(foundOf(found, one))) ?? 'none',
  why: (found) => [
    `Never run there: the kitchen bell gets ${milli(at(found, 'pair', 'kitchen'))}, the hall bell ${milli(at(found, 'pair', 'hall'))}. Speech works, so nobody looks for it. A two-wire set with a capacitor of its own gets ${milli(at(found, 'two-wire', 'kitchen'))} there.`,
    `Touching the a wire: the bells are bridged, the kitchen gets ${milli(at(found, 'a', 'kitchen'))} and the hall ${milli(at(found, 'a', 'hall'))}. One fault silences the whole house; direct current stays blocked by the capacitor.`,
    `Touching the b wire: the capacitor is bridged. The bells get ${milli(at(found, 'b', 'hall'))}, but the line draws ${milli(foundOf(found, 'b').leakage.value)} of direct current on-hook, where ${milli(foundOf(found, 'b').leakage.allowed)} are allowed: the exchange sees a call or a fault.`,
    'How other bells tinkle while a set dials needs the course of each pulse in time. This version does not solve that yet, and it cannot sound the bell.',
  ],
  learned: (found) =>
    `Keep the third wire clear of the pair: on the a wire it silences the house (${milli(at(found, 'a', 'hall'))}), on the b wire the line draws ${milli(foundOf(found, 'b').leakage.value)}.`,
}
