/** Where the ringing current comes from, and where it returns. */
import { bellAt } from '../rig/reading.ts'
import { listed, milli } from '../words.ts'
import { type Found, foundOf, type Option, type Step } from './step.ts'

const ELEMENTS: readonly Option[] = [
  { value: 'a-wire', says: 'a wire' },
  { value: 'b-wire', says: 'b wire' },
  { value: 'bell', says: 'bell' },
  { value: 'capacitor', says: 'capacitor of the socket' },
  { value: 'earth', says: 'earth' },
  { value: 'speech-coil', says: 'speech coil' },
  { value: 'third-wire', says: 'third wire' },
]

const path = (found: Found): readonly string[] => foundOf(found, 'landed').path ?? []

const words = (found: Found): readonly string[] =>
  path(found).map((one) => `the ${ELEMENTS.find(({ value }) => value === one)?.says ?? one}`)

export const PATH: Step = {
  id: 'path',
  title: 'Follow the ringing current',
  text: [
    'A current goes round: what leaves the exchange on one wire comes back on the other. Ringing is alternating current, and a capacitor lets that through.',
    'Begin at the b wire, on which this exchange sends its ringing. Press what the current passes, in order, until it is back at the exchange.',
  ],
  question: 'Which way does the ringing current take?',
  asks: 'path',
  choices: ELEMENTS,
  controls: [
    {
      id: 'core',
      sort: 'choice',
      says: 'To prove it, park the third wire again',
      options: [
        { value: 'landed', says: 'Landed' },
        { value: 'parked', says: 'Parked' },
      ],
    },
  ],
  begin: { core: 'landed' },
  shown: { core: 'landed' },
  care: ['ringing', 'line-side'],
  house: ({ core }) => ({ sets: [{ place: 'hall', set: 'table', parked: core === 'parked' }] }),
  needs: { landed: { core: 'landed' }, parked: { core: 'parked' } },
  answer: (found) => path(found).join(' '),
  why: (found) => {
    const reading = foundOf(found, 'landed')
    const parked = foundOf(found, 'parked')
    return [
      `The current passes ${listed(words(found))}. In the picture its weight shows how much, and the arrow which way at one moment; ${2 * reading.frequency} times a second it turns round.`,
      `${milli(reading.capacitor)} pass the capacitor and ${milli(bellAt(reading, 'hall').current)} the bell: all but a trickle is the same current.`,
      `With the third wire parked the circle is open, and ${milli(parked.capacitor)} are left in the capacitor.`,
    ]
  },
  learned: (found) =>
    `The ringing current, ${milli(bellAt(foundOf(found, 'landed'), 'hall').current)}, passes ${listed(words(found))}.`,
}
