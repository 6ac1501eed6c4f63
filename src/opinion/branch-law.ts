/** The law of one branch as the tableau writes it: volts·v − amps·i − Σ others·i(other) = source. */
import { isNil, type Pair, type Pairs, plus, times } from './pair.ts'

/** One law; `others` by the index of the other branch. */
export interface BranchLaw {
  readonly volts: Pair
  readonly amps: Pair
  readonly others: ReadonlyMap<number, Pair>
  readonly source: Pair
}

/** i = 0. */
export function openBranch(pairs: Pairs): BranchLaw {
  return { volts: pairs.zero, amps: pairs.one, others: new Map(), source: pairs.zero }
}

/** v = ohms·i. */
export function plainBranch(pairs: Pairs, ohms: Pair): BranchLaw {
  return { volts: pairs.one, amps: ohms, others: new Map(), source: pairs.zero }
}

/** Whether the branch joins its ends: its law knows its voltage. */
export function joins(law: BranchLaw): boolean {
  return !isNil(law.volts)
}

/** Whether the branch is a link of no resistance at all: v = 0. */
export function isShort(law: BranchLaw): boolean {
  return joins(law) && isNil(law.amps) && isNil(law.source) && [...law.others.values()].every(isNil)
}

/** The same branch with a resistance, then a voltage, in series: v becomes v − r·i − e. */
export function inSeries(law: BranchLaw, r: Pair, e: Pair): BranchLaw {
  return {
    ...law,
    amps: plus(law.amps, times(law.volts, r)),
    source: plus(law.source, times(law.volts, e)),
  }
}

/** The same branch without its own source. */
export function resting(pairs: Pairs, law: BranchLaw): BranchLaw {
  return { ...law, source: pairs.zero }
}

/** Hears of a part's laws. The map is by the part's own branches. */
export interface Heard {
  readonly laws: Map<number, BranchLaw>
  /** A value came as a double that is no decimal of the sheet. */
  readonly rounded: boolean
}
