/**
 * How well one hypothesis explains observations that share its loose values, and what they tell of those values.
 *
 * Each observation is taken as a normal factor of its u, the one that leaves the same mean and variance as the
 * observation itself does beside all other factors; all factors are found anew at once, so that the order of the
 * observations cannot matter. For normal errors without slips that is exact. Curves are lines around what is known.
 * @source Minka, Expectation propagation for approximate Bayesian inference (2001); from memory
 */
import type { Loose } from '../hypotheses.ts'
import { type Known, nothingKnown, rowInto } from './linear.ts'
import { type Posterior, posteriorOf, varianceAt, workOut } from './posterior.ts'
import type { Site } from './sites.ts'

/** An observation of a hypothesis: what it expects of u where nothing is loose, the variance of its own error, its steps. */
export interface Seen {
  readonly site: Site
  readonly u: number
  readonly error: number
  readonly steps: Float64Array
}

/** What comes of it. */
export interface Fit {
  /** Natural logarithm of the likelihood of all observations together. */
  readonly log: number
  readonly known: Known
  /** The lower triangle L of the precision of the values, L Lᵀ. */
  readonly lower: Float64Array
}

/** Curves are straightened so many times, each time around what is then known. */
const STRAIGHTENED = 4
/** Means and variances of values that differ by less, in standard deviations, straighten a curve alike. */
const ALIKE = 0.01
/** So many times all factors are found anew, and by this share once they should have settled. */
const SWEEPS = 12
const SETTLING = 3
const SHARE = 0.5
/** An error of less than this share of the variance of what is read counts as so much. */
const FINEST = 1e-8
/** No error is less than this on the scale u; the variance. */
const LEAST = 1e-18
/** Factors that move their means by less than this, in standard deviations, have settled. */
const SETTLED = 1e-4

/** @param all at least one observation */
export function fitOf(loose: Loose, all: readonly Seen[]): Fit {
  const width = loose.straight + loose.curved
  const fit: Fitting = {
    ...{ all, width, rows: new Float64Array(all.length * width), centres: new Float64Array(all.length) },
    ...{ errors: new Float64Array(all.length), precision: new Float64Array(all.length) },
    ...{ weighted: new Float64Array(all.length), off: new Float64Array(all.length) },
    posterior: posteriorOf(all.length, width),
  }
  const { posterior } = fit
  let known = nothingKnown(loose)
  const passes = loose.curved > 0 ? STRAIGHTENED : 1
  for (let pass = 1; ; pass++) {
    lineUp(loose, known, fit)
    settle(fit, pass < passes ? SETTLING : SWEEPS)
    const before = known
    known = { mean: posterior.values.slice(), variance: curvedVariances(loose, posterior) }
    if (pass === passes) break
    // where nothing is known anew no curve is straightened otherwise
    if (isAlike(loose, before, known)) {
      settle(fit, SWEEPS)
      break
    }
  }
  return { log: sweep(fit, 0).log, known, lower: posterior.lower }
}

function isAlike({ straight, curved }: Loose, one: Known, other: Known): boolean {
  for (let c = 0; c < curved; c++) {
    const moved = (one.mean[straight + c] ?? 0) - (other.mean[straight + c] ?? 0)
    if (Math.abs(moved) > ALIKE || Math.abs((one.variance[c] ?? 0) - (other.variance[c] ?? 0)) > ALIKE)
      return false
  }
  return true
}

/** Everything that a fit works with; its lists are written over. */
interface Fitting {
  readonly all: readonly Seen[]
  readonly width: number
  /** u = centre + row · z, and noise of this variance. */
  readonly rows: Float64Array
  readonly centres: Float64Array
  readonly errors: Float64Array
  /** τ and ν of each factor; ν is that of u itself, so that it stays right when the centres move. */
  readonly precision: Float64Array
  readonly weighted: Float64Array
  /** ν of u less its centre. */
  readonly off: Float64Array
  readonly posterior: Posterior
}

/** Fills the rows of all observations, with curves taken as lines around what is known. */
function lineUp(loose: Loose, known: Known, { all, width, rows, centres, errors }: Fitting): void {
  all.forEach(({ u, error, steps }, i) => {
    const { centre, noise } = rowInto(loose, steps, u, known, rows, i * width)
    let own = 0
    for (let d = 0; d < width; d++) own += (rows[i * width + d] ?? 0) ** 2
    centres[i] = centre
    // no reading is so exact beside what moves it that digits are lost
    errors[i] = Math.max(error + noise, FINEST * own, LEAST)
  })
}

/** Finds the factors anew until they have settled, at most so often. */
function settle(fit: Fitting, sweeps: number): void {
  posteriorBy(fit)
  for (let k = 0; k < sweeps; k++) {
    const { moved } = sweep(fit, k < SETTLING ? 1 : SHARE)
    posteriorBy(fit)
    if (moved < SETTLED) break
  }
}

function posteriorBy({ rows, centres, precision, weighted, off, posterior }: Fitting): void {
  for (let i = 0; i < off.length; i++) off[i] = (weighted[i] ?? 0) - (precision[i] ?? 0) * (centres[i] ?? 0)
  workOut(posterior, rows, precision, off)
}

/**
 * One look at every observation beside the factors of the others. The likelihood of all is that of the posterior's
 * factors, times how much more or less probable each observation itself is than its factor.
 */
function sweep(
  { all, centres, errors, precision, weighted, off, posterior: { mean, variance, log } }: Fitting,
  share: number,
): { readonly log: number; readonly moved: number } {
  let [sum, moved] = [log, 0]
  all.forEach(({ site }, i) => {
    const [v, tau] = [variance[i] ?? 0, precision[i] ?? 0]
    const centre = centres[i] ?? 0
    const nu = off[i] ?? 0
    // beside the others: what is left when this factor is taken away
    const left = Math.max(1e-12, 1 - tau * v)
    const beside = v / left
    const from = ((mean[i] ?? 0) - v * nu) / left
    const tilted = site.tilt(centre + from, beside, errors[i] ?? 0)
    sum += tilted.log
    if (!(beside > 0)) return
    // ∫ of the others' factors over that of all, by the normal integral
    sum += (from * from) / (2 * beside) - (mean[i] ?? 0) ** 2 / (2 * v) - 0.5 * Math.log(left)
    const kept = tilted.variance / beside
    const fresh = kept < 1 ? (1 / Math.max(kept, 1e-12) - 1) / beside : 0
    const aim = tilted.mean - centre
    const freshNu = fresh > 0 ? fresh * from + (aim - from) / (beside * Math.max(kept, 1e-12)) : 0
    const freshWeighted = freshNu + fresh * centre
    moved = Math.max(
      moved,
      Math.abs(aim - (mean[i] ?? 0)) / Math.sqrt(beside),
      Math.abs(tilted.variance - v) / beside,
    )
    precision[i] = tau + share * (fresh - tau)
    weighted[i] = (weighted[i] ?? 0) + share * (freshWeighted - (weighted[i] ?? 0))
  })
  return { log: sum, moved }
}

/** Variances of the curved values, from L of their precision. */
function curvedVariances({ straight, curved }: Loose, { lower, values }: Posterior): Float64Array {
  const width = values.length
  const unit = new Float64Array(width)
  const room = new Float64Array(width)
  return Float64Array.from({ length: curved }, (_, c) => {
    unit.fill(0)
    unit[straight + c] = 1
    return varianceAt(lower, width, unit, 0, room)
  })
}
