/** The loose values of a book's causes: what one transmitter's resistance, say, does to all readings at once. */
import { at, type Book } from '../book/book.ts'
import { type Loadings, PLACES, stepsEach } from '../book/loadings.ts'
import type { PairList } from '../book/pairs.ts'
import type { Loose } from '../inference/hypotheses.ts'

/**
 * The loose values of every row, and of two faults at once. Of those the values that both faults share move u as they
 * do on average under each alone; where one alone makes no number of it, as under the other. Each fault's own size is
 * its own.
 */
export function looseOf(book: Book, pairs?: PairList): Loose | undefined {
  const { loadings } = book
  if (loadings === undefined) return undefined
  const single = 1 + book.faults.length
  const { straight, curved } = loadings
  const alone = oneRow(book, loadings)
  if (pairs === undefined) return { straight, curved, steps: alone }
  const each = stepsEach(loadings)
  const size = straight + PLACES.length
  const [first, second] = [new Float64Array(each), new Float64Array(each)]
  return {
    straight,
    curved: curved + 1,
    steps(k, t, into) {
      if (k < single) {
        alone(k, t, first)
        into.set(first)
        into.fill(0, each)
        return
      }
      const [p, q] = [pairs.first[k - single] ?? 0, pairs.second[k - single] ?? 0]
      alone(1 + p, t, first)
      alone(1 + q, t, second)
      const isNumber = (fault: number): number =>
        Number.isFinite(book.scores[at(book, 1 + fault, t)]) ? 1 : 0
      const [one, other] = [isNumber(p), isNumber(q)]
      for (let s = 0; s < each; s++)
        into[s] = (one * (first[s] ?? 0) + other * (second[s] ?? 0)) / Math.max(1, one + other)
      into.set(first.subarray(straight, size), straight)
      into.set(second.subarray(straight, size), each)
    },
  }
}

function oneRow(book: Book, loadings: Loadings): Loose['steps'] {
  const each = stepsEach(loadings)
  return (k, t, into) => {
    const from = at(book, k, t) * each
    for (let s = 0; s < each; s++) into[s] = loadings.steps[from + s] ?? 0
  }
}

/** How far u spreads by all of them together, each one standard deviation up. */
export function spreadBy({ straight, curved }: Loose, steps: Float64Array): number {
  let squares = 0
  for (let d = 0; d < straight; d++) squares += (steps[d] ?? 0) ** 2
  const up = PLACES.indexOf(1)
  for (let c = 0; c < curved; c++) squares += (steps[straight + PLACES.length * c + up] ?? 0) ** 2
  return Math.sqrt(squares)
}
