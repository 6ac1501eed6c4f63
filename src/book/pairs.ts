/** Two faults at once: which two can be, and what each test would show of them. */
import type { Change } from '../figures/variants.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { at, type Book } from './book.ts'
import type { BookFault } from './fault.ts'
import type { BookInputs } from './make-book.ts'
import { ChangeList, SUPPLY, type Supply, scorerOf } from './scorer.ts'

/** Pairs of faults by their indices, the smaller one first, in the order of the first, then of the second. */
export interface PairList {
  readonly count: number
  readonly first: Uint16Array
  readonly second: Uint16Array
}

/** A book's pairs: one row of scores each, in single precision, whose seven digits are more than any meter's. */
export interface Pairs extends PairList {
  readonly scores: Float32Array
}

/** Some pairs, from one on and before another. */
export interface PairRows {
  readonly from: number
  readonly to: number
  readonly scores: Float32Array
}

/**
 * Every two faults that can be at once: those that do not befall the same thing in two ways, open and shorted, say, or
 * landed on two terminals.
 */
export function pairsOf(net: Netlist, faults: readonly BookFault[]): PairList {
  const touched = faults.map((fault) => touchedBy(net, fault))
  const found: number[] = []
  touched.forEach((one, p) => {
    for (let q = p + 1; q < touched.length; q += 1) {
      const other = touched[q] ?? NONE
      if (!meets(one, other)) found.push(p, q)
    }
  })
  return {
    count: found.length / 2,
    first: Uint16Array.from({ length: found.length / 2 }, (_, k) => found[2 * k] ?? 0),
    second: Uint16Array.from({ length: found.length / 2 }, (_, k) => found[2 * k + 1] ?? 0),
  }
}

const NONE: ReadonlySet<string> = new Set()

/** What a fault says and changes: its subjects, the branches of what it changes, the nodes that it bridges. */
function touchedBy(net: Netlist, { subjects, changes }: BookFault): ReadonlySet<string> {
  return new Set([...subjects, ...changes.flatMap((change) => touchedIn(net, change))])
}

function touchedIn(net: Netlist, change: Change): readonly string[] {
  if ('lifted' in change) return [`branch ${change.lifted}`]
  if ('within' in change) return [`branch ${change.within.branch}`]
  if ('bridge' in change) {
    const { from, to } = change.bridge
    return [`nodes ${Math.min(from, to)} ${Math.max(from, to)}`]
  }
  const { first = 0, count = 0 } = net.parts[change.instead.part] ?? {}
  return Array.from({ length: count }, (_, k) => `branch ${first + k}`)
}

function meets(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  for (const each of one) if (other.has(each)) return true
  return false
}

/** Makes pairs, whichever are asked for; each comes out the same whoever else was asked for. */
export interface PairMaker extends PairList {
  rows(from: number, to: number): PairRows
}

/** Lays all pairs out; solves nothing but what they share. */
export function pairMaker({ net, faults, tests }: BookInputs, supply: Supply = SUPPLY): PairMaker {
  const list = new ChangeList()
  const made = faults.map(({ changes }) => changes.map((one) => list.add(one)))
  const pairs = pairsOf(net, faults)
  const scorer = scorerOf(net, tests, list.all, supply)
  return {
    ...pairs,
    rows(from, to) {
      const scores = new Float32Array(Math.max(0, to - from) * tests.length)
      for (let k = from; k < to; k += 1) {
        const [p, q] = [made[pairs.first[k] ?? -1], made[pairs.second[k] ?? -1]]
        if (p === undefined || q === undefined) throw new RangeError(`the book has no pair ${k}`)
        scorer.read([...p, ...q], scores, (k - from) * tests.length)
      }
      return { from, to, scores }
    },
  }
}

/** So many pairs are made between two looks at whoever waits. */
const STRETCH = 512

/** Makes all pairs at once. `tell` is told how far it is. */
export function makePairs(
  inputs: BookInputs,
  tell: (says: string) => void = () => {},
  supply: Supply = SUPPLY,
): Pairs {
  const maker = pairMaker(inputs, supply)
  const { count, first, second } = maker
  const scores = new Float32Array(count * inputs.tests.length)
  for (let from = 0; from < count; from += STRETCH) {
    tell(`working out pairs of faults: ${from} of ${count}`)
    scores.set(maker.rows(from, Math.min(count, from + STRETCH)).scores, from * inputs.tests.length)
  }
  return { count, first, second, scores }
}

/**
 * How far u of a pair's score spreads: as the two faults' own spreads add up when they are independent. It is not
 * worked out anew.
 */
export function spreadOfPair(book: Book, { first, second }: PairList, pair: number, test: number): number {
  const of = (fault: number): number => book.spreads[at(book, 1 + fault, test)] ?? 0
  return Math.hypot(of(first[pair] ?? 0), of(second[pair] ?? 0))
}
