/** What is to be expected of further observations once the loose values are better known. */
import type { Belief, Hypotheses, Loose } from '../hypotheses.ts'
import { expectedOf } from '../scale.ts'
import { valueAt } from '../value-at.ts'
import type { Fit } from './fit.ts'
import { roomFor, rowInto } from './linear.ts'
import { meanAt, varianceAt } from './posterior.ts'

/** What evidence told of the loose values of each hypothesis, kept with the belief that it led to. */
const fitsOf = new WeakMap<Belief, readonly (Fit | undefined)[]>()

/** Keeps them. */
export function rememberFits(belief: Belief, fits: readonly (Fit | undefined)[]): void {
  fitsOf.set(belief, fits)
}

/** Of hypotheses less probable than this nothing is worked out anew. */
const NEGLIGIBLE = 1e-6

const known = new WeakMap<Belief, Hypotheses>()

/**
 * The hypotheses with what each expects, and how far that spreads, after the evidence that led to this belief. Whether
 * more is then to be observed together is left aside: each further observation spreads by itself.
 *
 * @param belief as `believe` gave it for these hypotheses
 */
export function given(among: Hypotheses, belief: Belief): Hypotheses {
  const found = known.get(belief) ?? anew(among, belief)
  known.set(belief, found)
  return found
}

function anew(among: Hypotheses, belief: Belief): Hypotheses {
  const { loose, ...rest } = among
  const fits = fitsOf.get(belief) ?? []
  if (loose === undefined || fits.length === 0) return among
  const [expected, spread] = [among.expected.slice(), among.spread.slice()]
  fits.forEach((fit, k) => {
    if (fit !== undefined && valueAt(belief.of, k) >= NEGLIGIBLE)
      expectInto({ among, loose, k, fit }, expected, spread)
  })
  return { ...rest, expected, spread, origin: among.origin ?? among }
}

interface Of {
  readonly among: Hypotheses
  readonly loose: Loose
  readonly k: number
  readonly fit: Fit
}

function expectInto(
  { among, loose, k, fit: { known: values, lower } }: Of,
  expected: Float64Array,
  spread: Float64Array,
): void {
  const width = values.mean.length
  const [steps, row, room] = [roomFor(loose), new Float64Array(width), new Float64Array(width)]
  among.observables.forEach((seen, observable) => {
    const { says, u } = expectedOf(among, k, observable)
    if (says !== 'number') return
    loose.steps(k, observable, steps)
    if (steps.every((step) => step === 0)) return
    const { centre, noise } = rowInto(loose, steps, u, values, row, 0)
    const at = k * among.observables.length + observable
    expected[at] = seen.scale * Math.sinh(centre + meanAt(values.mean, row, 0))
    spread[at] = Math.sqrt(noise + varianceAt(lower, width, row, 0, room))
  })
}
