/** Add sets until they starve. */
import type { HouseReading } from '../rig/reading.ts'
import { loadText, milli } from '../words.ts'
import { type Found, foundOf, type State, type Step } from './step.ts'

const PLACES = ['hall', 'kitchen', 'study', 'attic', 'cellar', 'porch', 'garage', 'barn', 'loft'] as const
const MOST = PLACES.length
const COUNTS: readonly number[] = PLACES.map((_, k) => k + 1)

const DEPOT = 'depot-exchange'
const ADAPTER = 'adapter-port'

/** First count at which something is so; one more than were tried when never. */
function firstAt(found: Found, line: string, isSo: (reading: HouseReading) => boolean): number {
  return (
    COUNTS.find((count) => {
      const reading = found[`${line} ${count}`]
      return reading !== undefined && isSo(reading)
    }) ?? MOST + 1
  )
}

const starves = (reading: HouseReading): boolean => reading.bells.some(({ rings }) => !rings)
const overloads = ({ load }: HouseReading): boolean => load.sum > load.allowed

const needs: Record<string, State> = {}
for (const count of COUNTS) needs[`${DEPOT} ${count}`] = { line: DEPOT, sets: String(count) }
for (const count of COUNTS.slice(0, 6)) needs[`${ADAPTER} ${count}`] = { line: ADAPTER, sets: String(count) }

const countText = (count: number): string => (count > MOST ? `more than ${MOST}` : String(count))

export const STARVE: Step = {
  id: 'starve',
  title: 'Add sets until they starve',
  text: [
    'The rule of thumb adds up ringer numbers: each set brings a load, and the sum must not exceed what the line allows.',
    'Add sets and look at two things side by side: the sum, and the current that each bell really gets. A bell of this set rings from a current on its sheet; below it, it starves.',
  ],
  question: 'With which set does the first bell starve on the exchange line?',
  asks: 'one',
  choices: [
    ...COUNTS.slice(2).map((count) => ({ value: String(count), says: `With set ${count}` })),
    { value: String(MOST + 1), says: `Not even with set ${MOST}` },
  ],
  controls: [
    { id: 'sets', sort: 'count', says: 'Sets plugged in', least: 1, most: MOST },
    {
      id: 'line',
      sort: 'choice',
      says: 'The line',
      options: [
        { value: DEPOT, says: 'Exchange line' },
        { value: ADAPTER, says: 'Adapter box, weak ringing' },
      ],
    },
  ],
  begin: { line: DEPOT, sets: '1' },
  shown: (found) => ({ line: DEPOT, sets: String(Math.min(MOST, firstAt(found, DEPOT, starves))) }),
  care: ['ringing', 'codes'],
  house: ({ line = DEPOT, sets }) => ({
    line,
    sets: PLACES.slice(0, Number(sets)).map((place) => ({ place, set: 'table' })),
  }),
  needs,
  answer: (found) => String(firstAt(found, DEPOT, starves)),
  why: (found) => {
    const over = firstAt(found, DEPOT, overloads)
    const starved = firstAt(found, DEPOT, starves)
    const one = foundOf(found, `${DEPOT} 1`)
    const overloaded = found[`${DEPOT} ${over}`]
    const hungry = found[`${DEPOT} ${starved}`]
    const onAdapter = firstAt(found, ADAPTER, starves)
    const adapter = found[`${ADAPTER} ${onAdapter}`]
    return [
      `One set brings a load of ${loadText(one.load.sum)}, and this line allows ${loadText(one.load.allowed)}: by the rule of thumb set ${countText(over)} is one too many.`,
      ...(overloaded === undefined
        ? []
        : [
            `Solved, with ${countText(over)} sets each bell still gets ${milli(least(overloaded))} and ${starves(overloaded) ? 'starves' : 'rings'}.`,
          ]),
      ...(hungry === undefined
        ? ['No bell starved in this house.']
        : [
            `The first bell starves with set ${starved}: ${milli(least(hungry))}, where it needs ${milli(hungry.bells[0]?.need ?? 0)}.`,
          ]),
      ...(adapter === undefined
        ? []
        : [
            `On the adapter box it starves with set ${onAdapter} at the sum of ${loadText(adapter.load.sum)}. The sum of the sets is the same on any line; what they get is not. So the rule is for one kind of line, with a reserve, and says nothing of a weaker one.`,
          ]),
    ]
  },
  learned: (found) =>
    `On the exchange line the sum is passed with set ${countText(firstAt(found, DEPOT, overloads))}, and the first bell starves with set ${countText(firstAt(found, DEPOT, starves))}; on the adapter box with set ${countText(firstAt(found, ADAPTER, starves))}.`,
}

function least({ bells }: HouseReading): number {
  return Math.min(...bells.map(({ current }) => current))
}
