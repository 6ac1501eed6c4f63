/** Figures of many variants of one network: a fault, a drifted value or several such changes made at once. */
import type { Netlist } from '../netlist/netlist.ts'
import { ProblemError } from '../problem.ts'
import { type Change, changed } from '../solver/variants/change.ts'
import type { Figure, FigurePlan } from './figure.ts'
import { freshSupplier, readFigure, type Supplier } from './read.ts'

export type { Change }

/**
 * A figure's value among those of a variant: its number, or what stands for the lack of one:
 * +∞ where nothing can flow (`open`) or the number is beyond all range, NaN where nothing fixes it, −∞ where the
 * parts' laws find no common point or the variant contradicts itself.
 */
export type Amount = number

/** Nothing can flow. */
export const OPEN: Amount = Number.POSITIVE_INFINITY
/** Nothing fixes it. */
export const UNFIXED: Amount = Number.NaN
/** No common point was found. */
export const UNSETTLED: Amount = Number.NEGATIVE_INFINITY

/** Reads a fixed list of figures after any of a fixed list of changes. Whoever supplies it, the numbers are the same. */
export interface FigureVariants {
  readonly plans: readonly FigurePlan[]
  readonly changes: readonly Change[]
  /**
   * The plans' amounts with these changes, by their index, all made at once; none for the network as it is.
   * @param out one amount a plan; overwritten
   */
  read(made: readonly number[], out: Float64Array): void
}

/** Variants that are solved afresh, one by one: slow, plain, and what all other ways are compared with. */
export function freshVariants(
  net: Netlist,
  plans: readonly FigurePlan[],
  changes: readonly Change[],
): FigureVariants {
  return {
    plans,
    changes,
    read(made, out) {
      const supplier = freshSupplier(net)
      const all = made.flatMap((k) => changes.slice(k, k + 1))
      plans.forEach((plan, k) => {
        out[k] = amountOf(net, withChanges(plan, all), supplier)
      })
    },
  }
}

function amountOf(net: Netlist, plan: FigurePlan, supplier: Supplier): Amount {
  try {
    return amountIn(readFigure(net, plan, supplier))
  } catch (error) {
    // sources shorted by a fault contradict each other: no figure rests on that
    if (error instanceof ProblemError) return UNSETTLED
    throw error
  }
}

function withChanges(plan: FigurePlan, changes: readonly Change[]): FigurePlan {
  return {
    ...plan,
    taps: plan.taps.map((tap) => ({ ...tap, question: changed(tap.question, changes) })),
  }
}

/** A figure as an amount. */
export function amountIn({ value, state }: Figure): Amount {
  if (value !== null) return value
  if (state === 'no-convergence') return UNSETTLED
  return state === 'undetermined' ? UNFIXED : OPEN
}
