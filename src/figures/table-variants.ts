/** Figures of many variants of one network by updates of what was solved once; the same numbers as `freshVariants`. */

import type { Netlist } from '../netlist/netlist.ts'
import type { Change } from '../solver/variants/change.ts'
import {
  APART,
  type Asked,
  type Counts,
  ManyVariants,
  NO_WAY,
  READ,
} from '../solver/variants/many/many-variants.ts'
import { Sampler, type Sampling } from '../solver/variants/sampler.ts'
import type { FigurePlan, State } from './figure.ts'
import { type Amount, type FigureVariants, freshVariants, OPEN, UNFIXED, UNSETTLED } from './variants.ts'

export type { Sampling }

/** Variants by tables of updates, with how they were found. */
export interface TableVariants extends FigureVariants {
  /** Networks of variants by how they were found: by update, by a solve of their own; and readings that were refused. */
  readonly counts: Readonly<Counts>
  /** Variants that were solved afresh besides, and the worst difference of an amount, relative. */
  readonly sampled: number
  readonly worst: number
}

/** Amounts below this share of that of the unchanged network are compared with that share instead. */
const FLOOR = 1e-6
/** Amounts below this, in whatever unit, are nothing. */
const NOTHING = 1e-15

/** The fast supplier of figures of variants. @throws what `freshVariants` throws */
export function tableVariants(
  net: Netlist,
  plans: readonly FigurePlan[],
  changes: readonly Change[],
  sampling: Sampling = {},
): TableVariants {
  return new Table(net, plans, changes, sampling)
}

/** A plan with where its readings stand among those of all plans. */
interface Placed {
  readonly plan: FigurePlan
  readonly places: Int32Array
  readonly readings: Float64Array
}

class Table implements TableVariants {
  readonly plans: readonly FigurePlan[]
  readonly changes: readonly Change[]
  sampled = 0
  worst = 0
  readonly #net: Netlist
  readonly #many: ManyVariants
  readonly #placed: readonly Placed[]
  readonly #out: Float64Array
  readonly #came: Uint8Array
  readonly #sampler: Sampler
  #sound: Float64Array | undefined

  constructor(net: Netlist, plans: readonly FigurePlan[], changes: readonly Change[], sampling: Sampling) {
    this.#net = net
    this.plans = plans
    this.changes = changes
    const asked: Asked[] = []
    const known = new Map<string, number>()
    const placeOf = (tap: FigurePlan['taps'][number]): number => {
      const { question, ...reading } = tap
      const key = JSON.stringify(tap)
      const place = known.get(key) ?? asked.push({ question, reading }) - 1
      known.set(key, place)
      return place
    }
    this.#placed = plans.map((plan) => ({
      plan,
      places: Int32Array.from(plan.taps, placeOf),
      readings: new Float64Array(2 * plan.taps.length),
    }))
    this.#many = new ManyVariants(net, asked, changes)
    this.#out = new Float64Array(2 * asked.length)
    this.#came = new Uint8Array(asked.length)
    this.#sampler = new Sampler(sampling)
  }

  get counts(): Readonly<Counts> {
    return this.#many.counts
  }

  read(made: readonly number[], out: Float64Array): void {
    this.#many.read(made, this.#out, this.#came)
    for (let k = 0; k < this.#placed.length; k += 1) out[k] = this.#amount(this.#placed[k] as Placed)
    if (this.#sampler.isDue()) this.#compare(made, out)
  }

  #amount({ plan, places, readings }: Placed): Amount {
    let state: Amount | undefined
    for (let t = 0; t < places.length; t += 1) {
      const place = places[t] as number
      const came = this.#came[place] as number
      readings[2 * t] = 0
      readings[2 * t + 1] = 0
      if (came === READ) {
        readings[2 * t] = this.#out[2 * place] as number
        readings[2 * t + 1] = this.#out[2 * place + 1] as number
      } else if (came !== NO_WAY && came !== APART) return UNSETTLED
      else state ??= came === NO_WAY ? OPEN : UNFIXED
    }
    return state ?? amountOf(plan.value(readings))
  }

  #compare(made: readonly number[], out: Float64Array): void {
    const fresh = freshVariants(this.#net, this.plans, this.changes)
    if (this.#sound === undefined) {
      this.#sound = new Float64Array(this.plans.length)
      fresh.read([], this.#sound)
    }
    const expected = new Float64Array(this.plans.length)
    fresh.read(made, expected)
    this.sampled += 1
    this.worst = Math.max(this.worst, furthest(out, expected, this.#sound))
  }
}

/** What a plan says as an amount. */
function amountOf(value: number | State): Amount {
  if (typeof value === 'number') return Number.isFinite(value) ? value : OPEN
  if (value === 'no-convergence') return UNSETTLED
  return value === 'undetermined' ? UNFIXED : OPEN
}

/**
 * The largest relative difference of two rows of amounts; infinite where one is a number and the other is none.
 * @param sound what tells how large such an amount is
 */
export function furthest(p: Float64Array, q: Float64Array, sound: Float64Array): number {
  let worst = 0
  for (let k = 0; k < q.length; k += 1) {
    const one = p[k] as number
    const other = q[k] as number
    if (Object.is(one, other) || Math.abs(one - other) < NOTHING) continue
    const size = Number.isFinite(sound[k]) ? Math.abs(sound[k] as number) : 0
    const apart = Math.abs(one - other) / Math.max(Math.abs(other), FLOOR * size)
    worst = Math.max(worst, Number.isNaN(apart) ? Number.POSITIVE_INFINITY : apart)
  }
  return worst
}
