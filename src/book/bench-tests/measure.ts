/** A number that follows from figures, with the figures that it follows from: what symptoms are put together of. */
import type { FigurePlan } from '../../figures/figure.ts'
import { type Amount, OPEN } from '../../figures/variants.ts'
import type { SpecAt } from '../bench-test.ts'

/** Figures and what follows from them. Pure: the same amounts give the same number. */
export interface Measure {
  readonly plans: readonly FigurePlan[]
  /** @param figures amounts in the order of `plans` */
  of(figures: readonly Amount[], specs: SpecAt): Amount
}

/** A figure by itself, as a share of what is due; where nothing can flow nothing flows. */
export function share(plan: FigurePlan, due: number): Measure {
  return { plans: [plan], of: ([amount]) => flowing(amount) / due }
}

/** How much flows: nothing where nothing can. */
export function flowing(amount: Amount | undefined): Amount {
  return amount === undefined || amount === OPEN ? 0 : amount
}

/** The least of several. What is not settled makes all of it so. */
export function least(...all: readonly Measure[]): Measure {
  return joined(all, (values) => Math.min(...values))
}

/** The most of several. */
export function most(...all: readonly Measure[]): Measure {
  return joined(all, (values) => Math.max(...values))
}

/** Several measures made one: their plans one after the other, their numbers given to `make`. */
export function joined(all: readonly Measure[], make: (values: readonly Amount[]) => Amount): Measure {
  const starts = all.map((_, k) => all.slice(0, k).reduce((sum, { plans }) => sum + plans.length, 0))
  return {
    plans: all.flatMap(({ plans }) => plans),
    of: (figures, specs) =>
      make(
        all.map((one, k) => {
          const first = starts[k] ?? 0
          return one.of(figures.slice(first, first + one.plans.length), specs)
        }),
      ),
  }
}

/** A measure with something done to its number. */
export function after(one: Measure, make: (value: Amount) => Amount): Measure {
  return joined([one], ([value = Number.NaN]) => make(value))
}

/** No ratio counts for more than this: far enough is far enough. */
export const FAR = 100

/** How steeply what happens all at once goes over its cut: a tenth more current makes three times the score. */
const STEEP = 12

/**
 * Of what happens whole or not at all, such as an exchange that takes a loop for closed: a ratio to the current that
 * it takes, bent so that 1 lies on `cut`, a little less far below it and a little more far above.
 */
export function allOrNone(one: Measure, cut: number): Measure {
  // a code that stands for no number stays what it is
  return after(one, (ratio) => (ratio >= 0 ? cut * Math.min(ratio, 2) ** STEEP : ratio))
}

/** The upside down of a measure: of what must not be much. */
export function inverse(one: Measure): Measure {
  return after(one, (value) => (value >= 0 ? Math.min(FAR, 1 / value) : value))
}
