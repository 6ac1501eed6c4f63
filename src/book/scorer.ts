/** The scores of all tests for variants of a network. */
import type { FigurePlan } from '../figures/figure.ts'
import { tableVariants } from '../figures/table-variants.ts'
import type { Change, FigureVariants } from '../figures/variants.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { BenchTest } from './bench-test.ts'
import { canonicalText } from './canonical.ts'

/** Who reads the figures of variants: solved afresh, or from tables of updates. */
export type Supply = (
  net: Netlist,
  plans: readonly FigurePlan[],
  changes: readonly Change[],
) => FigureVariants

/** Whoever reads where nothing else is said. */
export const SUPPLY: Supply = tableVariants

/** Changes by their index, each one once however many faults make it. */
export class ChangeList {
  readonly all: Change[] = []
  readonly #known = new Map<string, number>()

  /** Where a change stands in the list; it is added when it is new. */
  add(change: Change): number {
    const key = canonicalText(change)
    const known = this.#known.get(key)
    if (known !== undefined) return known
    this.#known.set(key, this.all.length)
    this.all.push(change)
    return this.all.length - 1
  }
}

/** Reads scores. */
export interface Scorer {
  /**
   * The scores of all tests with these changes made, by their index.
   * @param out one score a test, from the place `at` on; overwritten
   */
  read(made: readonly number[], out: Float64Array | Float32Array, at: number): void
}

/** A scorer for variants that are made of these changes. Plans that several tests share are read once. */
export function scorerOf(
  net: Netlist,
  tests: readonly BenchTest[],
  changes: readonly Change[],
  supply: Supply = SUPPLY,
): Scorer {
  const places = new Map<FigurePlan, number>()
  const rests = tests.map(({ plans }) =>
    plans.map((plan) => {
      const place = places.get(plan) ?? places.size
      places.set(plan, place)
      return place
    }),
  )
  const variants = supply(net, [...places.keys()], changes)
  const amounts = new Float64Array(places.size)
  const figures = rests.map((one): number[] => one.map(() => 0))
  return {
    read(made, out, at) {
      variants.read(made, amounts)
      const specAt = specsWith(net, changes, made)
      tests.forEach((test, t) => {
        const own = figures[t] ?? []
        rests[t]?.forEach((place, k) => {
          own[k] = amounts[place] ?? Number.NaN
        })
        out[at + t] = test.score(own, specAt)
      })
    },
  }
}

function specsWith(
  net: Netlist,
  changes: readonly Change[],
  made: readonly number[],
): (part: number) => PartSpec {
  const specs = new Map<number, PartSpec>()
  for (const k of made) {
    const change = changes[k]
    if (change !== undefined && 'instead' in change) specs.set(change.instead.part, change.instead.spec)
  }
  return (part) => {
    const spec = specs.get(part) ?? net.parts[part]?.spec
    if (spec === undefined) throw new RangeError(`no part has the index ${part}`)
    return spec
  }
}
