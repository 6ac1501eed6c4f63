/** Unequal bells, with and without the resistor. */
import { bellAt } from '../rig/reading.ts'
import { milli } from '../words.ts'
import { type Found, foundOf, type Step } from './step.ts'

const at = (found: Found, name: string, place: string): number => bellAt(foundOf(found, name), place).current

export const UNEQUAL: Step = {
  id: 'unequal',
  title: 'Unequal bells',
  text: [
    'In the hall stands a heavy old set with a bell of low impedance. Two table sets stand beside it, with a resistor in series with each bell.',
    'You can fit such a resistor in the heavy set, too. And you can put a third table set in its place, and take all three resistors out.',
  ],
  question: 'You fit the resistor in the heavy set. What do the two table sets get?',
  asks: 'one',
  choices: [
    { value: 'more', says: 'More than before' },
    { value: 'same', says: 'The same as before' },
    { value: 'less', says: 'Less than before' },
  ],
  controls: [
    {
      id: 'house',
      sort: 'choice',
      says: 'In the house',
      options: [
        { value: 'bare', says: 'Heavy set without resistor' },
        { value: 'fitted', says: 'Heavy set with resistor' },
        { value: 'alike', says: 'Three like sets with resistors' },
        { value: 'alike-bare', says: 'Three like sets without resistors' },
      ],
    },
  ],
  begin: { house: 'bare' },
  shown: { house: 'fitted' },
  care: ['opening', 'ringing'],
  house: ({ house }) => {
    const resistor = house !== 'alike-bare'
    const hall =
      house === 'bare' || house === 'fitted'
        ? ({ set: 'heavy', resistor: house === 'fitted' } as const)
        : ({ set: 'table', resistor } as const)
    return {
      sets: [
        { place: 'hall', ...hall },
        { place: 'kitchen', set: 'table', resistor },
        { place: 'study', set: 'table', resistor },
      ],
    }
  },
  needs: {
    bare: { house: 'bare' },
    fitted: { house: 'fitted' },
    alike: { house: 'alike' },
    'alike-bare': { house: 'alike-bare' },
  },
  answer: (found) => {
    const ratio = at(found, 'fitted', 'kitchen') / at(found, 'bare', 'kitchen')
    return ratio > 1.05 ? 'more' : ratio < 0.95 ? 'less' : 'same'
  },
  why: (found) => {
    const kitchen = bellAt(foundOf(found, 'bare'), 'kitchen')
    return [
      `Without the resistor the heavy set takes ${milli(at(found, 'bare', 'hall'))} and leaves ${milli(kitchen.current)} to each table set, which ${kitchen.rings ? 'still ring' : `is too little: they need ${milli(kitchen.need)}`}.`,
      `With it the heavy set takes ${milli(at(found, 'fitted', 'hall'))}, and each table set gets ${milli(at(found, 'fitted', 'kitchen'))}.`,
      `Three like bells share evenly anyhow: ${milli(at(found, 'alike', 'kitchen'))} each with resistors, ${milli(at(found, 'alike-bare', 'kitchen'))} without. The resistor is there for unequal bells.`,
    ]
  },
  learned: (found) =>
    `The bell resistor makes unequal bells share: the table sets went from ${milli(at(found, 'bare', 'kitchen'))} to ${milli(at(found, 'fitted', 'kitchen'))}.`,
}
