/** Values drawn within their limits, and what many draws come to. */
import { seededRandom } from '../algebra/random.ts'
import type { LooseValue } from './world.ts'

/** How a value lies within its limits: `normal` with 3σ at them, or evenly between them. */
export type DrawLaw = 'normal' | 'uniform'
export const DRAW_LAWS: readonly DrawLaw[] = ['normal', 'uniform']

/** Standard deviations from the middle to a limit. */
const SIGMAS = 3

/**
 * Draws factors for all values, the same for the same seed. Where limits are a factor up and down, its logarithm is
 * drawn. A normal draw may lie beyond the limits, one in some 370 does; one that would turn a value's sign is drawn anew.
 */
export function drawer(
  loose: readonly LooseValue[],
  law: DrawLaw,
  seed: number,
): (into: Float64Array) => void {
  const random = seededRandom(seed)
  const unit = law === 'uniform' ? () => 2 * random() - 1 : normalsOf(random)
  return (into) => {
    loose.forEach((one, k) => {
      do into[k] = factorAt(one, unit())
      while (!((into[k] ?? 0) > 0))
    })
  }
}

/** The factor at a place between the limits: −1 the least, 0 the middle, 1 the most. */
function factorAt({ least, most, byRatio }: LooseValue, place: number): number {
  if (byRatio) return Math.sqrt(least * most) * Math.sqrt(most / least) ** place
  return (least + most) / 2 + (place * (most - least)) / 2
}

/**
 * Normal numbers with σ = 1/3.
 * @source Box and Muller, A note on the generation of random normal deviates, Ann. Math. Statist. 29 (1958), from memory
 */
function normalsOf(random: () => number): () => number {
  let spare: number | undefined
  return () => {
    if (spare !== undefined) {
      const kept = spare
      spare = undefined
      return kept
    }
    const radius = Math.sqrt(-2 * Math.log(1 - random())) / SIGMAS
    const angle = 2 * Math.PI * random()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
}

/** One standard deviation of a value's logarithm, to first order. */
export function deviationOf({ least, most, byRatio }: LooseValue, law: DrawLaw): number {
  const half = byRatio ? Math.log(most / least) / 2 : (most - least) / 2
  return law === 'uniform' ? half / Math.sqrt(3) : half / SIGMAS
}

/**
 * The value below which a share of a sorted list lies, linear between its members.
 * @source Hyndman and Fan, Sample quantiles in statistical packages, Am. Stat. 50 (1996), definition 7, from memory
 */
export function quantileOf(sorted: ArrayLike<number>, share: number): number {
  const at = share * (sorted.length - 1)
  const below = Math.floor(at)
  const low = sorted[below] ?? Number.NaN
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? Number.NaN
  return low + (at - below) * (high - low)
}
