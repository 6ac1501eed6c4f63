/**
 * Corners at which every figure is looked at, whatever its slopes say. Slopes are of one point: where a figure has its
 * extreme there, as the power into a matched load or the imbalance of a bridge in balance, they all are nought and
 * would pass for a figure that nothing moves.
 */
import { seededRandom } from '../algebra/random.ts'
import type { LooseValue } from './world.ts'

/** Corners drawn by chance, besides all values at their least and all at their most. */
const BY_CHANCE = 6
const SEED = 20

/** What rounding leaves: a share of a figure, and an amount in its unit. */
const SHARE = 1e-9
const AMOUNT = 1e-12

/** The corners, the same for every figure of a world, so that what is solved there is shared. */
export function probesOf(loose: readonly LooseValue[]): readonly Float64Array[] {
  if (loose.length === 0) return []
  const random = seededRandom(SEED)
  const at = (isMost: () => boolean): Float64Array =>
    Float64Array.from(loose, ({ least, most }) => (isMost() ? most : least))
  return [
    at(() => false),
    at(() => true),
    ...Array.from({ length: BY_CHANCE }, () => at(() => random() < 0.5)),
  ]
}

/** Whether an amount is above another by more than rounding. */
export function isAbove(amount: number, other: number): boolean {
  return amount - other > Math.max(AMOUNT, SHARE * Math.max(Math.abs(amount), Math.abs(other)))
}
