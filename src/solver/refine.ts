/**
 * Refinement (design 5, "Trust"): the residual is summed part by part from the parts' own values with twice the
 * digits, and the solution is kept as a value and a tail. What the rounding of stamped sums has lost comes back.
 */
import { accumulate, accumulateProduct } from '../algebra/double-double.ts'
import { type Assembled, GAUGE } from './assemble.ts'
import type { LawTable } from './laws.ts'
import type { Topology } from './topology.ts'

/** Least and most steps of refinement; the second one confirms the first. */
const LEAST_STEPS = 2
const MOST_STEPS = 6
/** A correction below this share of its unknown, or this share of the largest, has confirmed it. */
const CONFIRMED = 1e-13
const NOTHING = 1e-20
/**
 * One step with a correction below this share of its unknown is rough: what is left is about the square of that, which
 * is far below what Newton's steps are asked for.
 */
const ROUGH = 1e-7

/** Unknowns as value and tail, interleaved re, im when complex. */
export interface Refined {
  readonly value: Float64Array
  readonly tail: Float64Array
}

/** A number of two parts in two arrays, complex or real. */
class Twofold {
  readonly value: Float64Array
  readonly tail: Float64Array
  constructor(size: number) {
    this.value = new Float64Array(size)
    this.tail = new Float64Array(size)
  }
}

/**
 * Improves a solution in place of its own rounding. `injected` is by node, interleaved.
 * @param rough only as far as a step on the way to something else needs
 * @returns whether the last correction confirmed it; factors too poor to refine with do not
 */
export function refine(
  laws: LawTable,
  topology: Topology,
  assembled: Assembled,
  x: Float64Array,
  injected: Float64Array,
  complex: boolean,
  rough: boolean = false,
): Refined & { readonly confirmed: boolean } {
  const tail = new Float64Array(x.length)
  const least = rough ? 1 : LEAST_STEPS
  const share = rough ? ROUGH : CONFIRMED
  const sum = new Twofold(x.length)
  let confirmed = false
  for (let step = 0; step < MOST_STEPS && !(confirmed && step >= least); step += 1) {
    const correction = residualOf(laws, topology, assembled, { value: x, tail }, injected, complex, sum)
    assembled.system.solve(correction, 1)
    confirmed = isSmall(correction, x, share)
    for (let k = 0; k < x.length; k += 1) accumulate(x, tail, k, correction[k]!)
  }
  return { value: x, tail, confirmed }
}

function isSmall(correction: Float64Array, x: Float64Array, share: number): boolean {
  let largest = 0
  for (let k = 0; k < x.length; k += 1) largest = Math.max(largest, Math.abs(x[k]!))
  for (let k = 0; k < x.length; k += 1) {
    if (!(Math.abs(correction[k]!) <= share * Math.abs(x[k]!) + NOTHING * largest)) return false
  }
  return true
}

/** What one branch holds and carries, while a sum goes over all of them. */
const fall = new Twofold(2)
const current = new Twofold(2)

/** b − A·x by parts, summed in `sum`. */
function residualOf(
  laws: LawTable,
  topology: Topology,
  { unknown }: Assembled,
  x: Refined,
  injected: Float64Array,
  complex: boolean,
  sum: Twofold,
): Float64Array {
  const width = complex ? 2 : 1
  sum.value.fill(0)
  sum.tail.fill(0)
  for (let node = 1; 2 * node < injected.length; node += 1) {
    for (let part = 0; part < width; part += 1)
      sum.value[(node - 1) * width + part] = injected[2 * node + part]!
  }
  for (let k = 0; k < laws.count; k += 1) {
    voltageOf(laws, x, k, width, fall)
    const c = unknown[k]!
    currentFrom(laws, x, k, c, width, fall, current)
    for (let part = 0; part < width; part += 1) {
      addTwofold(sum, (laws.from[k]! - 1) * width + part, -1, current, part)
      addTwofold(sum, (laws.to[k]! - 1) * width + part, 1, current, part)
    }
    if (c < 0) continue
    for (let part = 0; part < width; part += 1) {
      accumulate(sum.value, sum.tail, c * width + part, laws.offset[2 * k + part]!) // e
      addTwofold(sum, c * width + part, -laws.a[k]!, fall, part) // − a·v
    }
    addProduct(sum, c * width, 1, laws.slope[2 * k]!, laws.slope[2 * k + 1]!, current, width) // + z·i
  }
  for (const { branch, other, re, im } of laws.mutuals) {
    const c = unknown[other]! * width
    for (let part = 0; part < width; part += 1) {
      current.value[part] = x.value[c + part]!
      current.tail[part] = x.tail[c + part]!
    }
    addProduct(sum, unknown[branch]! * width, 1, re, im, current, width)
  }
  for (const node of topology.gauges) {
    for (let part = 0; part < width; part += 1) {
      const at = (node - 1) * width + part
      accumulateProduct(sum.value, sum.tail, at, -GAUGE, x.value[at]!, x.tail[at]!)
    }
  }
  return sum.value
}

/** v = V(from) − V(to) of a branch. */
export function voltageOf(laws: LawTable, x: Refined, k: number, width: number, fall: Refined): void {
  const p = (laws.from[k]! - 1) * width
  const q = (laws.to[k]! - 1) * width
  for (let part = 0; part < width; part += 1) {
    fall.value[part] = 0
    fall.tail[part] = 0
    if (p >= 0) accumulateProduct(fall.value, fall.tail, part, 1, x.value[p + part]!, x.tail[p + part]!)
    if (q >= 0) accumulateProduct(fall.value, fall.tail, part, -1, x.value[q + part]!, x.tail[q + part]!)
  }
}

/** The current of a branch: its unknown, or y·v + s. */
export function currentFrom(
  laws: LawTable,
  x: Refined,
  k: number,
  c: number,
  width: number,
  fall: Refined,
  current: Refined,
): void {
  for (let part = 0; part < width; part += 1) {
    current.value[part] = c >= 0 ? x.value[c * width + part]! : laws.offset[2 * k + part]!
    current.tail[part] = c >= 0 ? x.tail[c * width + part]! : 0
  }
  if (c < 0) addProduct(current, 0, 1, laws.slope[2 * k]!, laws.slope[2 * k + 1]!, fall, width)
}

/** sum[k] += factor · x[part]; a negative index is earth and falls away. */
function addTwofold(sum: Refined, k: number, factor: number, x: Refined, part: number): void {
  if (k < 0) return
  accumulateProduct(sum.value, sum.tail, k, factor, x.value[part]!, x.tail[part]!)
}

/** sum[at…] += sign · (re + j·im) · x. */
function addProduct(
  sum: Refined,
  at: number,
  sign: number,
  re: number,
  im: number,
  x: Refined,
  width: number,
): void {
  accumulateProduct(sum.value, sum.tail, at, sign * re, x.value[0]!, x.tail[0]!)
  if (width === 1) return
  accumulateProduct(sum.value, sum.tail, at, -sign * im, x.value[1]!, x.tail[1]!)
  accumulateProduct(sum.value, sum.tail, at + 1, sign * re, x.value[1]!, x.tail[1]!)
  accumulateProduct(sum.value, sum.tail, at + 1, sign * im, x.value[0]!, x.tail[0]!)
}
