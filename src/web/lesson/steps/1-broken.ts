/** Break the third wire. */
import { bellAt } from '../rig/reading.ts'
import { milli } from '../words.ts'
import { type Found, foundOf, type Step } from './step.ts'

/** Below this share of what it had, a bell gets nothing to speak of. */
const NOTHING = 0.02

function both(found: Found): { before: number; after: number; rings: boolean } {
  const after = bellAt(foundOf(found, 'parked'), 'hall')
  return {
    before: bellAt(foundOf(found, 'landed'), 'hall').current,
    after: after.current,
    rings: after.rings,
  }
}

export const BROKEN: Step = {
  id: 'broken',
  title: 'Break the third wire',
  text: [
    'Two wires come from the exchange: the a wire and the b wire. A third one, the ringing lead, begins in the master socket, and the bell hangs on it.',
    'One table set is plugged in, and the line is ringing. You can park the core of the third wire: it then lies insulated, on nothing.',
  ],
  question: 'You park the third wire. What does the bell do?',
  asks: 'one',
  choices: [
    { value: 'same', says: 'It rings as before' },
    { value: 'weaker', says: 'It gets less, but still something' },
    { value: 'silent', says: 'It falls silent' },
  ],
  controls: [
    {
      id: 'core',
      sort: 'choice',
      says: 'The core of the third wire',
      options: [
        { value: 'landed', says: 'Landed' },
        { value: 'parked', says: 'Parked' },
      ],
    },
  ],
  begin: { core: 'landed' },
  shown: { core: 'parked' },
  care: ['opening', 'ringing', 'burst'],
  house: ({ core }) => ({ sets: [{ place: 'hall', set: 'table', parked: core === 'parked' }] }),
  needs: { landed: { core: 'landed' }, parked: { core: 'parked' } },
  answer: (found) => {
    const { before, after, rings } = both(found)
    if (after < before * NOTHING && !rings) return 'silent'
    return after < before * 0.9 ? 'weaker' : 'same'
  },
  why: (found) => {
    const { before, after } = both(found)
    const loop = foundOf(found, 'parked').loops.get('hall') ?? 0
    return [
      `With the third wire landed the bell gets ${milli(before)}. With the wire parked it gets ${milli(after)}.`,
      `The pair is whole: with the handset lifted the loop still carries ${milli(loop)}, so speech and dialling go on. Only the bell needs the third wire.`,
    ]
  },
  learned: (found) => {
    const { before, after } = both(found)
    return `The bell hangs on the third wire: ${milli(before)} with it, ${milli(after)} without.`
  },
}
