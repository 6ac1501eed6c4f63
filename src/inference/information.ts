/** What an observation is expected to tell, in bits. */
import type { Belief } from './belief.ts'
import type { Hypotheses } from './hypotheses.ts'
import { type Outcomes, outcomesOf } from './outcomes.ts'
import { valueAt } from './value-at.ts'

/** Hypotheses less probable than this do not count in what is expected. */
const NEGLIGIBLE = 1e-6
/** At most so many hypotheses count, the most probable ones. */
const MOST = 500

/** Hypotheses that count, those of one group side by side, with their probabilities; the whole sums to 1. */
export interface Worth {
  readonly asked: Int32Array
  readonly weight: Float64Array
  /** Where each group begins among them; one more at the end. */
  readonly starts: readonly number[]
  readonly none: number
}

/** Entropy of probabilities, bits. */
export function entropy(probabilities: ArrayLike<number>): number {
  let bits = 0
  for (let k = 0; k < probabilities.length; k++) {
    const p = probabilities[k] ?? 0
    if (p > 0) bits -= p * Math.log2(p)
  }
  return Math.max(0, bits)
}

/** What counts of a belief: pruned, grouped, normalised again. `group` is each hypothesis's own where absent. */
export function worthOf(belief: Belief, group?: ArrayLike<number>): Worth {
  const { of, none } = belief
  let kept = [...of.keys()].filter((k) => valueAt(of, k) >= NEGLIGIBLE)
  if (kept.length > MOST) kept = kept.sort((a, b) => valueAt(of, b) - valueAt(of, a) || a - b).slice(0, MOST)
  const groupAt = (k: number): number => group?.[k] ?? k
  kept.sort((a, b) => groupAt(a) - groupAt(b) || a - b)
  const total = kept.reduce((sum, k) => sum + valueAt(of, k), none)
  const starts = kept.flatMap((k, i) => (i === 0 || groupAt(k) !== groupAt(kept[i - 1] ?? -1) ? [i] : []))
  return {
    asked: Int32Array.from(kept),
    weight: Float64Array.from(kept, (k) => valueAt(of, k) / total),
    starts: [...starts, kept.length],
    none: none / total,
  }
}

/** Entropy of the groups and of `none`, bits. */
export function uncertainty({ weight, starts, none }: Worth): number {
  const groups = starts.slice(0, -1).map((from, g) => {
    let sum = 0
    for (let i = from; i < (starts[g + 1] ?? from); i++) sum += valueAt(weight, i)
    return sum
  })
  return entropy([...groups, none])
}

/**
 * Mutual information between the group that is true and what will be observed, in bits: how many bits of uncertainty
 * about the group the observation takes away on average. From 0 to the entropy of the groups.
 *
 * I(G; O) = Σ p(g, o) log₂ p(g, o) / (p(g) p(o)); numbers are counted in cells of about the observation's own
 * resolution, which can only lower it.
 * @source Cover and Thomas, Elements of Information Theory, 2nd ed., equation 2.28
 */
export function expectedInformation(among: Hypotheses, worth: Worth, observable: number): number {
  const outcomes = outcomesOf(among, observable, worth.asked)
  return informationOf(outcomes, worth)
}

function informationOf({ rows, row, lost }: Outcomes, { weight, starts, none }: Worth): number {
  const cells = rows[0]?.length ?? 0
  const all = new Float64Array(cells)
  const alone = rows.map(() => 0)
  const rowBits = rows.map((one) => -entropy(one))
  let bits = 0
  const last = rows.length - 1
  for (let g = 0; g + 1 < starts.length; g++) {
    const [from, to] = [valueAt(starts, g), valueAt(starts, g + 1)]
    const first = valueAt(row, from)
    let isAlike = true
    let sum = 0
    for (let i = from; i < to; i++) {
      const at = valueAt(row, i)
      if (at !== first) isAlike = false
      sum += valueAt(weight, i)
      alone[at] = valueAt(alone, at) + valueAt(weight, i)
    }
    // Σ p(g,o) log p(g,o) - p(g) log p(g) is p(g) times minus the entropy of the outcome within the group
    bits += isAlike ? sum * valueAt(rowBits, first) : mixedBits(rows, row, weight, from, to, sum)
  }
  alone[last] = valueAt(alone, last) + none
  bits += none * valueAt(rowBits, last)
  rows.forEach((one, at) => {
    const share = valueAt(alone, at)
    if (share > 0) for (let o = 0; o < cells; o++) all[o] = (all[o] ?? 0) + share * (one[o] ?? 0)
  })
  return Math.max(0, (entropy(all) + bits) * (1 - lost))
}

/** The same for a group whose members expect different things. */
function mixedBits(
  rows: readonly Float64Array[],
  row: Int32Array,
  weight: Float64Array,
  from: number,
  to: number,
  sum: number,
): number {
  const mixed = new Float64Array(rows[0]?.length ?? 0)
  for (let i = from; i < to; i++) {
    const one = rows[valueAt(row, i)] ?? mixed
    const share = valueAt(weight, i) / sum
    for (let o = 0; o < mixed.length; o++) mixed[o] = (mixed[o] ?? 0) + share * (one[o] ?? 0)
  }
  return -sum * entropy(mixed)
}
