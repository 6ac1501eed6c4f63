/** A book or its pairs, worked out by a crew, with a store that spares what was worked out before. */
import type { Book } from './book.ts'
import { type Crew, type Stretch, stretchesOf } from './crew.ts'
import { stepsEach, unknownOf } from './loadings.ts'
import type { BookInputs } from './make-book.ts'
import { LEAST_FIRST, unpack } from './pack.ts'
import { type Pairs, pairsOf } from './pairs.ts'
import type { BookStore } from './store.ts'

/** By what means a book is worked out. */
export interface Means<Order> {
  readonly crew: Crew<Order>
  readonly store: BookStore
  /** Told how far it is. */
  readonly tell: (says: string) => void
}

/** What is worked out: the order for the crew, what comes of it here, and the text of everything that decides it. */
export interface Task<Order> {
  readonly order: Order
  readonly inputs: BookInputs
  readonly key: string
}

/** So many rows or pairs are one stretch, whoever works: what one run has kept another one finds. */
const ROWS = 32
const PAIRS = 2048

/** The book of all single faults. */
export async function workBook<Order>(task: Task<Order>, means: Means<Order>): Promise<Book> {
  const { tests, faults, net, transmitterSpread } = task.inputs
  const rows = 1 + faults.length
  const scores = new Float64Array(rows * tests.length)
  const spreads = new Float64Array(rows * tests.length)
  const { straight, curved } = unknownOf(net, transmitterSpread)
  const size = tests.length * stepsEach({ straight, curved })
  const steps = new Float32Array(rows * size)
  const each = 1 + stepsEach({ straight, curved })
  await fill(task, means, stretchesOf('rows', rows, ROWS), each, 'faults', ({ from, to }) => [
    scores.subarray(from * tests.length, to * tests.length),
    spreads.subarray(from * tests.length, to * tests.length),
    steps.subarray(from * size, to * size),
  ])
  return { tests, faults, scores, spreads, loadings: { straight, curved, steps } }
}

/** All pairs of its faults. */
export async function workPairs<Order>(task: Task<Order>, means: Means<Order>): Promise<Pairs> {
  const { tests, faults, net } = task.inputs
  const pairs = pairsOf(net, faults)
  const scores = new Float32Array(pairs.count * tests.length)
  const stretches = stretchesOf('pairs', pairs.count, PAIRS)
  await fill(task, means, stretches, 1, 'pairs of faults', ({ from, to }) => [
    scores.subarray(from * tests.length, to * tests.length),
  ])
  return { ...pairs, scores }
}

/**
 * Fills all stretches: from the store what it has, from the crew the rest, which is kept at once.
 *
 * @param each variants that are solved for one row or pair, about
 */
async function fill<Order>(
  { order, inputs, key }: Task<Order>,
  { crew, store, tell }: Means<Order>,
  stretches: readonly Stretch[],
  each: number,
  noun: string,
  placeOf: (stretch: Stretch) => readonly (Float64Array | Float32Array)[],
): Promise<void> {
  const count = stretches.at(-1)?.to ?? 0
  const missing: Stretch[] = []
  let done = 0
  for (const stretch of stretches) {
    const kept = await store.read(keyOf(key, stretch))
    if (kept !== undefined && unpack(kept, placeOf(stretch))) {
      done += stretch.to - stretch.from
      continue
    }
    // what has another length is none of ours, and would be read in vain each time if it could not be written over
    if (kept !== undefined) await store.remove(keyOf(key, stretch))
    missing.push(stretch)
  }
  const say = (): void => tell(`working out ${noun}: ${done} of ${count}`)
  say()
  const effort = missing.reduce((sum, { from, to }) => sum + to - from, 0) * each * inputs.net.branches.length
  for await (const { bytes, ...stretch } of crew.run(order, missing, effort)) {
    if (!unpack(bytes, placeOf(stretch))) throw new RangeError(`a stretch of ${noun} has the wrong length`)
    await store.write(keyOf(key, stretch), bytes)
    done += stretch.to - stretch.from
    say()
  }
}

/** What decides the bytes of a stretch: what decides the book, the stretch, and how this machine orders bytes. */
function keyOf(key: string, { what, from, to }: Stretch): string {
  return `${what} ${from} ${to} ${LEAST_FIRST}\n${key}`
}
