/** Share the capacitor. */
import { bellAt } from '../rig/reading.ts'
import { milli } from '../words.ts'
import { foundOf, type Step } from './step.ts'

export const SHARED: Step = {
  id: 'shared',
  title: 'Share the capacitor',
  text: [
    'A secondary socket is wired to the master socket with three wires. Now a second set is plugged in there.',
    'The first bell rings with the current that it gets through the capacitor of the master socket.',
  ],
  question: 'What becomes of the first bell when the second set is plugged in?',
  asks: 'one',
  choices: [
    { value: 'own', says: 'It keeps its current: the second socket brings a capacitor of its own' },
    { value: 'shared', says: 'It gets less: both bells share one capacitor' },
    { value: 'half', says: 'It gets exactly half' },
    { value: 'silent', says: 'It falls silent' },
  ],
  controls: [
    {
      id: 'second',
      sort: 'choice',
      says: 'The second set',
      options: [
        { value: 'none', says: 'Not plugged in' },
        { value: 'one', says: 'Plugged in' },
      ],
    },
  ],
  begin: { second: 'none' },
  shown: { second: 'one' },
  care: ['ringing', 'line-side'],
  house: ({ second }) => ({
    sets: [
      { place: 'hall', set: 'table' },
      ...(second === 'one' ? [{ place: 'kitchen', set: 'table' as const }] : []),
    ],
  }),
  needs: { one: { second: 'none' }, two: { second: 'one' } },
  answer: (found) => {
    const after = bellAt(foundOf(found, 'two'), 'hall')
    const share = after.current / bellAt(foundOf(found, 'one'), 'hall').current
    if (!after.rings) return 'silent'
    if (Math.abs(share - 0.5) < 0.02) return 'half'
    return share > 0.95 ? 'own' : 'shared'
  },
  why: (found) => {
    const one = foundOf(found, 'one')
    const two = foundOf(found, 'two')
    const count = two.capacitors
    return [
      `There ${count === 1 ? 'is one capacitor' : `are ${count} capacitors`} in the sockets of this house. It passes ${milli(one.capacitor)} for one bell and ${milli(two.capacitor)} for two.`,
      `The first bell falls from ${milli(bellAt(one, 'hall').current)} to ${milli(bellAt(two, 'hall').current)}, and the second gets ${milli(bellAt(two, 'kitchen').current)}. Two bells side by side hinder the current less than one, so each gets ${Math.round((100 * bellAt(two, 'hall').current) / bellAt(one, 'hall').current)} % of what the first had alone.`,
    ]
  },
  learned: (found) =>
    `All bells share the one capacitor: the first fell from ${milli(bellAt(foundOf(found, 'one'), 'hall').current)} to ${milli(bellAt(foundOf(found, 'two'), 'hall').current)} beside a second.`,
}
