/** Observations that share loose values, as rows of a matrix that carries those values over to u. */
import { type Loose, widthOf } from '../hypotheses.ts'
import { valueAt } from '../value-at.ts'
import { lineOf } from './curve.ts'

/** What is known of the loose values: their means, and the variances of the curved ones, which come last. */
export interface Known {
  readonly mean: Float64Array
  readonly variance: Float64Array
}

/** Before anything is observed. */
export function nothingKnown({ straight, curved }: Loose): Known {
  return { mean: new Float64Array(straight + curved), variance: new Float64Array(curved).fill(1) }
}

/** u of one observable: `centre` plus the row times z, and noise. */
export interface Row {
  readonly centre: number
  /** Variance of what bends. */
  readonly noise: number
}

/**
 * Writes the row of one observable, with curves taken as lines around what is known of the values.
 *
 * @param steps what `Loose.steps` wrote
 * @param u where nothing is loose
 */
export function rowInto(
  { straight, curved }: Loose,
  steps: Float64Array,
  u: number,
  known: Known,
  row: Float64Array,
  at: number,
): Row {
  let [centre, noise] = [u, 0]
  for (let d = 0; d < straight; d++) row[at + d] = valueAt(steps, d)
  for (let c = 0; c < curved; c++) {
    const z = valueAt(known.mean, straight + c)
    if (isStill(steps, straight + 4 * c)) {
      row[at + straight + c] = 0
      continue
    }
    const line = lineOf(steps, straight + 4 * c, z, valueAt(known.variance, c))
    row[at + straight + c] = line.slope
    centre += line.mean - line.slope * z
    noise += line.noise
  }
  return { centre, noise }
}

function isStill(steps: Float64Array, at: number): boolean {
  return steps[at] === 0 && steps[at + 1] === 0 && steps[at + 2] === 0 && steps[at + 3] === 0
}

/** How far u may well be moved by all values together: six standard deviations, curves by their farthest step. */
export function reachOf({ straight, curved }: Loose, steps: Float64Array): number {
  let squares = 0
  for (let d = 0; d < straight; d++) squares += valueAt(steps, d) ** 2
  for (let c = 0; c < curved; c++) {
    let most = 0
    for (let p = 0; p < 4; p++) most = Math.max(most, Math.abs(valueAt(steps, straight + 4 * c + p)))
    squares += most * most
  }
  return 6 * Math.sqrt(squares)
}

/** A place for the steps of one observable. */
export function roomFor(loose: Loose): Float64Array {
  return new Float64Array(widthOf(loose))
}
