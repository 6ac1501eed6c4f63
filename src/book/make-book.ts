/**
 * Makes the fault book: every fault's scores, and how far they spread by the tolerances of the parts and by the fault's
 * own size.
 *
 * The spread is linear propagation: each value that has a tolerance is moved by one standard deviation, alone but
 * together with the fault, and the squares of what that does to u = asinh(score / scale) are summed. It takes the values
 * as independent and u as straight over one standard deviation of each.
 * @source Evaluation of measurement data: Guide to the expression of uncertainty in measurement, JCGM 100:2008, 5.1.2; from memory
 */
import type { Netlist } from '../netlist/netlist.ts'
import type { BenchTest } from './bench-test.ts'
import type { Book } from './book.ts'
import type { BookFault } from './fault.ts'
import { type Latents, mendCurve, PLACES, stepsEach, unknownOf } from './loadings.ts'
import { graverWith, type Move, type Moved, movedWith, movesOf } from './moves.ts'
import type { Severity } from './odds.ts'
import { ChangeList, type Scorer, SUPPLY, type Supply, scorerOf } from './scorer.ts'
import type { Drift } from './tolerances.ts'

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
  /** What the spreads are made of, as in `Loadings`. */
  readonly steps: Float32Array
}

/** Makes rows, whichever are asked for, in any order; each comes out the same whoever else was asked for. */
export interface BookMaker {
  /** Rows in all: the sound set's and each fault's. */
  readonly count: number
  rows(from: number, to: number): Rows
}

/** How a row's numbers stand. */
interface Layout extends Latents {
  readonly tests: readonly BenchTest[]
  /** Steps that a row has for one test. */
  readonly each: number
}

/** Lays a book out: solves nothing but what all rows share. */
export function bookMaker(inputs: BookInputs, supply: Supply = SUPPLY): BookMaker {
  const { net, faults, tests, transmitterSpread, severity } = inputs
  const unknown = unknownOf(net, transmitterSpread)
  const layout = { ...unknown, tests, each: stepsEach(unknown) }
  const list = new ChangeList()
  const moves = movesOf(net, unknown, list)
  const variants = [[], ...faults.map(({ changes }) => changes)].map((changes) => ({
    made: changes.map((one) => list.add(one)),
    moved: [
      ...movedWith(net, changes, moves, list),
      ...(severity === undefined ? [] : graverWith(net, changes, severity, unknown.straight, list)),
    ],
  }))
  const scorer = scorerOf(net, tests, list.all, supply)
  const moved = new Float64Array(tests.length)
  let unfelt: ReadonlySet<Drift> | undefined
  return {
    count: variants.length,
    rows(from, to) {
      unfelt ??= unfeltDrifts(inputs, moves, scorer)
      const rows = emptyRows(from, to, layout)
      for (let row = from; row < to; row += 1) {
        const variant = variants[row]
        if (variant === undefined) throw new RangeError(`the book has no row ${row}`)
        const at = (row - from) * tests.length
        scorer.read(variant.made, rows.scores, at)
        for (const one of variant.moved) {
          if (one.drift !== undefined && unfelt.has(one.drift)) continue
          scorer.read(one.made, moved, 0)
          stepInto(rows, at, moved, one, layout)
        }
        finish(rows, at, layout)
      }
      return rows
    },
  }
}

/** A value of another set that moves no u of the sound set by more than this moves none that matters in any row. */
const UNFELT = 1e-4

/**
 * The values that are moved for no row: those of other sets that the sound set's scores do not feel at all. What a
 * neighbour hides behind its open hook, no fault here uncovers. All of the set itself and of what brings the line to it
 * are moved.
 */
function unfeltDrifts(
  { net, place, tests }: BookInputs,
  moves: readonly Move[],
  scorer: Scorer,
): ReadonlySet<Drift> {
  const [sound, moved] = [new Float64Array(tests.length), new Float64Array(tests.length)]
  scorer.read([], sound, 0)
  const isUnfelt = ({ plain }: Move): boolean => {
    scorer.read([plain], moved, 0)
    return !tests.some(
      ({ scale }, t) => Math.abs(compared(moved[t] ?? 0, scale) - compared(sound[t] ?? 0, scale)) > UNFELT,
    )
  }
  const others = moves.filter(({ deviations, drift }) => {
    const stands = net.parts[drift.part]?.place ?? ''
    return deviations === 1 && place !== undefined && stands !== '' && stands !== place
  })
  return new Set(others.filter(isUnfelt).map(({ drift }) => drift))
}

function emptyRows(from: number, to: number, { tests, each }: Layout): Rows {
  const size = Math.max(0, to - from) * tests.length
  return {
    ...{ from, to, scores: new Float64Array(size), spreads: new Float64Array(size) },
    steps: new Float32Array(size * each),
  }
}

/**
 * Keeps what a moved value does to each u, and adds the square of one standard deviation to the spread; nothing where
 * one of the two scores is no number.
 */
function stepInto(rows: Rows, at: number, moved: Float64Array, one: Moved, { tests, each }: Layout): void {
  tests.forEach(({ scale }, t) => {
    const step = compared(moved[t] ?? 0, scale) - compared(rows.scores[at + t] ?? 0, scale)
    rows.steps[(at + t) * each + one.column] = step
    if (one.isUp && Number.isFinite(step)) rows.spreads[at + t] = (rows.spreads[at + t] ?? 0) + step * step
  })
}

/** Squares to spreads; steps of no number to none. */
function finish(rows: Rows, at: number, { tests, each, straight, curved }: Layout): void {
  for (let t = at; t < at + tests.length; t += 1) {
    rows.spreads[t] = Math.sqrt(rows.spreads[t] ?? 0)
    for (let d = t * each; d < t * each + straight; d += 1)
      if (!Number.isFinite(rows.steps[d])) rows.steps[d] = 0
    for (let c = 0; c < curved; c += 1) mendCurve(rows.steps, t * each + straight + PLACES.length * c)
  }
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
  const { straight, curved } = unknownOf(inputs.net, inputs.transmitterSpread)
  const scores = new Float64Array(maker.count * tests.length)
  const spreads = new Float64Array(maker.count * tests.length)
  const each = tests.length * stepsEach({ straight, curved })
  const steps = new Float32Array(maker.count * each)
  for (let from = 0; from < maker.count; from += STRETCH) {
    tell(`working out faults: ${from} of ${faults.length}`)
    const rows = maker.rows(from, Math.min(maker.count, from + STRETCH))
    scores.set(rows.scores, from * tests.length)
    spreads.set(rows.spreads, from * tests.length)
    steps.set(rows.steps, from * each)
  }
  return { tests, faults, scores, spreads, loadings: { straight, curved, steps } }
}
