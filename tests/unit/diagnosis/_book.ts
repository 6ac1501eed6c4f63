/** A small book by hand: five faults, four tests. */
import type { BenchTest } from 'ringproof/book/bench-test'
import type { Book } from 'ringproof/book/book'
import type { BookFault } from 'ringproof/book/fault'
import type { Odds } from 'ringproof/book/odds'

const OPEN = Number.POSITIVE_INFINITY
const condition = { line: 'idle', sets: {} } as const

function heard(id: string, effort: number): BenchTest {
  return {
    ...{
      id,
      asks: `${id}?`,
      how: '',
      site: 'in-use',
      live: false,
      effort,
      condition,
      unit: '1',
      scale: 0.02,
    },
    error: () => 0,
    words: {
      answers: [
        { id: 'no', says: 'not at all', fine: false },
        { id: 'faint', says: 'faintly', fine: false },
        { id: 'well', says: 'well', fine: true },
      ],
      cuts: [0.2, 0.7],
      slip: 0.03,
    },
    plans: [],
    score: () => 0,
  }
}

function read(id: string, site: BenchTest['site'], effort: number, live = false): BenchTest {
  return {
    ...{ id, asks: `What is ${id}?`, how: `Hold the leads for ${id}.`, site, live, effort, condition },
    ...{ unit: 'Ω', scale: 0.1, plans: [], score: () => 0 },
    error: (x) => 0.01 * Math.abs(x) + 0.1,
  }
}

export const TESTS: readonly BenchTest[] = [
  heard('tone', 1),
  heard('heard', 2),
  read('ohms plug.a plug.b off-hook', 'outside', 3),
  read('ohms A1 A2 on-hook', 'inside', 9),
  read('ohms A1 A3 on-hook', 'inside', 9),
  read('volts plug.a plug.b off-hook', 'outside', 8, true),
]

function fault(id: string, weight: number): BookFault {
  return {
    ...{ id, subjects: [id], family: 'open', says: `${id} is open`, sign: `look at ${id}` },
    ...{ mend: `mend ${id}`, weight, source: 'from memory', changes: [] },
  }
}

export const FAULTS: readonly BookFault[] = ['a', 'b', 'c', 'd', 'e'].map((id, k) => fault(id, 10 + k))

/** Rows: sound, a … e. d and e are told apart inside alone, c and the sound set by nothing but the live line. */
const ROWS: readonly (readonly number[])[] = [
  [1, 1, 100, 50, 10, 40],
  [0, 1, 100, 50, 10, 40],
  [0, 0, OPEN, 50, 10, 40],
  [1, 1, 100, 50, 10, 5],
  [1, 0.4, 300, 50, 10, 40],
  [1, 0.4, 300, OPEN, 200, 40],
]

export const BOOK: Book = {
  tests: TESTS,
  faults: FAULTS,
  scores: Float64Array.from(ROWS.flat()),
  spreads: new Float64Array(ROWS.length * TESTS.length).fill(0.01),
}

const from = { source: 'from memory' }

/** Only what a diagnosis asks of the odds differs from nothing. */
export const ODDS: Odds = {
  faults: {} as Odds['faults'],
  'damp-resistance': {} as Odds['damp-resistance'],
  severity: { ohms: 2.5, values: 0.25, source: 'from memory' },
  sound: { weight: 12, ...from },
  none: { probability: 0.03, ...from },
  pairs: { probability: 0.1, ...from },
  efforts: {
    'in-use': { effort: 1, ...from },
    'in-use-helped': { effort: 2, ...from },
    outside: { effort: 3, ...from },
    'outside-live': { effort: 8, ...from },
    inside: { effort: 9, ...from },
    lifted: { effort: 15, ...from },
  },
  slips: { heard: { probability: 0.03, ...from }, read: { probability: 0.005, ...from } },
}
