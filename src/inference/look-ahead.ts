/** Questions in a row: what would be known after each answer, among what counts. */
import type { Hypotheses } from './hypotheses.ts'
import type { Worth } from './information.ts'
import { outcomesOf } from './outcomes.ts'

/** What may have been answered so far: its probability, and what would then be believed. */
export interface Branch {
  readonly share: number
  readonly worth: Worth
}

/** A branch for each answer of an observable that has answers, impossible ones left out. Shares sum to that of `branch`. */
export function branchesOf(
  among: Hypotheses,
  { share, worth }: Branch,
  observable: number,
): readonly Branch[] {
  const { rows, row } = outcomesOf(among, observable, worth.asked)
  const count = rows[0]?.length ?? 0
  return Array.from({ length: count }, (_, answer) => {
    const weight = worth.weight.map((p, i) => p * (rows[row[i] ?? 0]?.[answer] ?? 0))
    const none = worth.none * (rows.at(-1)?.[answer] ?? 0)
    const all = weight.reduce((sum, one) => sum + one, none)
    return {
      share: share * all,
      worth: { ...worth, weight: weight.map((one) => one / all), none: none / all },
    }
  }).filter((branch) => branch.share > 0)
}
