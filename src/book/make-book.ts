/**
 * Makes the fault book: every fault's scores, and how far they spread by the tolerances of the parts and by the fault's
 * own size.
 *
 * The spread is linear propagation: each value that has a tolerance is moved by one standard deviation, alone but
 * together with the fault, and the squares of what that does to u = asinh(score / scale) are summed. It takes the values
 * as independent and u as straight over one standard deviation of each.
 * @source Evaluation of measurement data: Guide to the expression of uncertainty in measurement, JCGM 100:2008, 5.1.2; from memory
 */
import type { Change } from '../figures/variants.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { BenchTest } from './bench-test.ts'
import type { Book } from './book.ts'
import type { BookFault } from './fault.ts'
import type { Severity } from './odds.ts'
import { ChangeList, type Scorer, SUPPLY, type Supply, scorerOf } from './scorer.ts'
import { graverBy } from './severity.ts'
import { type Drift, drifted, driftsOf } from './tolerances.ts'

/** What a book is made of. */
export interface BookInputs {
  readonly net: Netlist
  /** The place of the set whose faults these are, where other sets stand beside it. */
  readonly place?: string
  readonly faults: readonly BookFault[]
  readonly tests: readonly BenchTest[]
  /** The factor within which a carbon transmitter reads, up and down: three standard deviations. */
  readonly transmitterSpread: number
  /** How much the faults' own sizes differ from the book's; not at all when absent. */
  readonly severity?: Severity
}

/** Some rows of a book, from one on and before another. */
export interface Rows {
  readonly from: number
  readonly to: number
  /** `tests.length` numbers a row, as in a book. */
  readonly scores: Float64Array
  readonly spreads: Float64Array
}

/** Makes rows, whichever are asked for, in any order; each comes out the same whoever else was asked for. */
export interface BookMaker {
  /** Rows in all: the sound set's and each fault's. */
  readonly count: number
  rows(from: number, to: number): Rows
}

/** Lays a book out: solves nothing but what all rows share. */
export function bookMaker(inputs: BookInputs, supply: Supply = SUPPLY): BookMaker {
  const { net, faults, tests, transmitterSpread, severity } = inputs
  const drifts = driftsOf(net, transmitterSpread)
  const list = new ChangeList()
  const plain = drifts.map((drift) => list.add(driftedPart(net, [], drift)))
  const variants = [[], ...faults.map(({ changes }) => changes)].map((changes) => ({
    made: changes.map((one) => list.add(one)),
    drifted: drifts.map((drift, k) => madeWith(net, changes, drift, plain[k] ?? 0, list)),
    graver: severity && graverBy(net, changes, severity)?.map((one) => list.add(one)),
  }))
  const scorer = scorerOf(net, tests, list.all, supply)
  const moved = new Float64Array(tests.length)
  let felt: readonly number[] | undefined
  return {
    count: variants.length,
    rows(from, to) {
      felt ??= feltDrifts(inputs, drifts, plain, scorer)
      const rows = emptyRows(from, to, tests.length)
      for (let row = from; row < to; row += 1) {
        const variant = variants[row]
        if (variant === undefined) throw new RangeError(`the book has no row ${row}`)
        const at = (row - from) * tests.length
        scorer.read(variant.made, rows.scores, at)
        const steps = felt.flatMap((k) => variant.drifted.slice(k, k + 1))
        for (const made of variant.graver === undefined ? steps : [...steps, variant.graver]) {
          scorer.read(made, moved, 0)
          addSquares(rows, at, moved, tests)
        }
        for (let t = at; t < at + tests.length; t += 1) rows.spreads[t] = Math.sqrt(rows.spreads[t] ?? 0)
      }
      return rows
    },
  }
}

/** A value of another set that moves no u of the sound set by more than this moves none that matters in any row. */
const UNFELT = 1e-4

/**
 * The values that are moved for every row: all of the set itself and of what brings the line to it, and those of other
 * sets that the sound set's scores feel at all. What a neighbour hides behind its open hook, no fault here uncovers.
 */
function feltDrifts(
  { net, place, tests }: BookInputs,
  drifts: readonly Drift[],
  plain: readonly number[],
  scorer: Scorer,
): readonly number[] {
  const [sound, moved] = [new Float64Array(tests.length), new Float64Array(tests.length)]
  scorer.read([], sound, 0)
  return drifts.flatMap(({ part }, k) => {
    const stands = net.parts[part]?.place ?? ''
    if (place === undefined || stands === '' || stands === place) return [k]
    scorer.read(plain.slice(k, k + 1), moved, 0)
    const isFelt = tests.some(
      ({ scale }, t) => Math.abs(compared(moved[t] ?? 0, scale) - compared(sound[t] ?? 0, scale)) > UNFELT,
    )
    return isFelt ? [k] : []
  })
}

function emptyRows(from: number, to: number, tests: number): Rows {
  const size = Math.max(0, to - from) * tests
  return { from, to, scores: new Float64Array(size), spreads: new Float64Array(size) }
}

/** The part's value drifted, on top of other values that a fault gives that part. */
function driftedPart(net: Netlist, changes: readonly Change[], drift: Drift): Change {
  const { part } = drift
  const given = changes.findLast((one) => 'instead' in one && one.instead.part === part)
  const spec = given !== undefined && 'instead' in given ? given.instead.spec : net.parts[part]?.spec
  if (spec === undefined) throw new RangeError(`no part has the index ${part}`)
  return { instead: { part, spec: drifted(spec, drift) } }
}

/** A fault's changes together with a drifted value. */
function madeWith(
  net: Netlist,
  changes: readonly Change[],
  drift: Drift,
  plain: number,
  list: ChangeList,
): readonly number[] {
  const others = changes.filter((one) => !('instead' in one && one.instead.part === drift.part))
  const made = others.map((one) => list.add(one))
  const own = others.length === changes.length ? plain : list.add(driftedPart(net, changes, drift))
  return [...made, own]
}

/** Adds the squares of what a drifted value does to each u; nothing where one of the two scores is no number. */
function addSquares(rows: Rows, at: number, moved: Float64Array, tests: readonly BenchTest[]): void {
  tests.forEach(({ scale }, t) => {
    const step = compared(moved[t] ?? 0, scale) - compared(rows.scores[at + t] ?? 0, scale)
    if (Number.isFinite(step)) rows.spreads[at + t] = (rows.spreads[at + t] ?? 0) + step * step
  })
}

/** u, the form in which scores are compared. */
export function compared(score: number, scale: number): number {
  return Math.asinh(score / scale)
}

/** So many rows are made between two looks at whoever waits. */
const STRETCH = 32

/** Makes a whole book at once. `tell` is told how far it is. */
export function makeBook(
  inputs: BookInputs,
  tell: (says: string) => void = () => {},
  supply: Supply = SUPPLY,
): Book {
  const { tests, faults } = inputs
  const maker = bookMaker(inputs, supply)
  const scores = new Float64Array(maker.count * tests.length)
  const spreads = new Float64Array(maker.count * tests.length)
  for (let from = 0; from < maker.count; from += STRETCH) {
    tell(`working out faults: ${from} of ${faults.length}`)
    const rows = maker.rows(from, Math.min(maker.count, from + STRETCH))
    scores.set(rows.scores, from * tests.length)
    spreads.set(rows.spreads, from * tests.length)
  }
  return { tests, faults, scores, spreads }
}
