/**
 * The least and the most that a figure comes to with every value somewhere within its limits. Values go to the end to
 * which the figure's slopes send them, and the network is solved there. Where a slope has another sign at that corner
 * than with the values as stated, the figure may have an extreme elsewhere: then single values are tried at both ends
 * and as stated until none of them makes it worse. So it is where one of the corners at which every figure is looked at
 * goes further than the slopes let expect.
 */
import { isAbove } from './probes.ts'
import type { Slopes, Spots } from './sensitivity.ts'
import type { LooseValue, World } from './world.ts'

/** One side of a worst case. */
export interface Corner {
  readonly value: number
  readonly factors: Float64Array
}

/** Both sides. */
export interface WorstCase {
  readonly least: Corner
  readonly most: Corner
  /** Every slope has the same sign at both corners and in the middle; no proof, but no sign against it either. */
  readonly steady: boolean
}

/** A slope that is less than this share of the largest has no sign to speak of. */
const NOTHING = 1e-7
/** A value that by its slope moves a figure by less than this share of what all values do is not tried by itself. */
const LITTLE = 1e-3
/** Stands for a least of nought in a logarithm. */
const TINY = 1e-3
/** Rounds of trying single values. */
const ROUNDS = 4

/** The worst case of one figure, by its index among the plans, about its slopes with all values as stated. */
export function worstCase(spots: Spots, k: number, stated: number, { slopes }: Slopes): WorstCase {
  const { world } = spots
  const search = new Search(spots, k)
  const own = { value: stated, factors: new Float64Array(world.loose.length).fill(1) }
  const isMoved = largest(slopes) > 0
  const corners = SIDES.map((side) => (isMoved ? search.corner(cornerOf(world, slopes, side)) : own))
  // a value that turns at either corner may be worse elsewhere on both sides
  const turned = new Set(isMoved ? corners.flatMap((corner) => search.turned(corner, slopes)) : [])
  const probes = spots.probes.map((factors) => search.corner(factors))
  let steady = turned.size === 0 && [...corners, ...probes].every((corner) => corner !== undefined)
  const [least = own, most = own] = SIDES.map((side, k) => {
    const corner = corners[k]
    const start = corner === undefined || (corner.value - stated) * side < 0 ? own : corner
    const found = search.descend(start, [...turned], side)
    const further = farthest(probes, side)
    if (further === undefined || !isAbove(further.value * side, found.value * side)) return found
    // no slope led here: any value may matter
    steady = false
    return search.descend(further, search.mattering(further), side)
  })
  return { least, most, steady }
}

function farthest(corners: readonly (Corner | undefined)[], side: Side): Corner | undefined {
  return corners
    .filter((one) => one !== undefined)
    .reduce<Corner | undefined>(
      (most, one) => (most === undefined || one.value * side > most.value * side ? one : most),
      undefined,
    )
}

/** Down, and up. */
const SIDES = [-1, 1] as const
type Side = (typeof SIDES)[number]

/** Every value at the end to which its slope sends the figure on this side. */
function cornerOf({ loose }: World, slopes: Float64Array, side: Side): Float64Array {
  return Float64Array.from(loose, ({ least, most }, value) => {
    const slope = (slopes[value] ?? 0) * side
    return slope === 0 ? 1 : slope > 0 ? most : least
  })
}

function largest(slopes: Float64Array): number {
  return slopes.reduce((most, slope) => Math.max(most, Math.abs(slope)), 0)
}

/** The values that move a figure at all. */
function moving(slopes: Float64Array): ReadonlySet<number> {
  const floor = NOTHING * largest(slopes)
  return new Set(Array.from(slopes.keys()).filter((value) => Math.abs(slopes[value] ?? 0) > floor))
}

/** The values that move a figure by a share worth looking at, the strongest first. */
function mattering(loose: readonly LooseValue[], slopes: Float64Array): readonly number[] {
  const reach = loose.map(
    ({ least, most }, value) => Math.abs(slopes[value] ?? 0) * Math.log(most / Math.max(least, TINY)),
  )
  const floor = LITTLE * reach.reduce((sum, one) => sum + one, 0)
  return [...reach.keys()]
    .filter((value) => (reach[value] ?? 0) > floor)
    .sort((a, b) => (reach[b] ?? 0) - (reach[a] ?? 0))
}

/** Where a single value is tried: at its ends, as stated, and half way to each end. */
function tried({ least, most }: LooseValue): readonly number[] {
  return [least, (1 + least) / 2, 1, (1 + most) / 2, most]
}

class Search {
  readonly #spots: Spots
  readonly #k: number

  constructor(spots: Spots, k: number) {
    this.#spots = spots
    this.#k = k
  }

  /** A corner with its figure; undefined where that is no number. */
  corner(factors: Float64Array): Corner | undefined {
    const value = this.#amount(factors)
    return value === undefined ? undefined : { value, factors }
  }

  /** The values whose slope at a corner has another sign than in the middle, or is there where none was. */
  turned(corner: Corner | undefined, slopes: Float64Array): readonly number[] {
    if (corner === undefined) return []
    const there = this.#spots.at(corner.factors).slopesOf(this.#k, moving(slopes))?.slopes
    if (there === undefined) return []
    const { loose } = this.#spots.world
    const floors = [slopes, there].map((all) => NOTHING * largest(all))
    const worth = new Set([slopes, there].flatMap((all) => mattering(loose, all)))
    return loose.flatMap((_, value) => {
      if (!worth.has(value)) return []
      const signs = [slopes, there].map((all, at) => {
        const slope = all[value] ?? 0
        return Math.abs(slope) <= (floors[at] ?? 0) ? 0 : Math.sign(slope)
      })
      return signs[0] === signs[1] || signs[1] === 0 ? [] : [value]
    })
  }

  /** The values that matter at a corner; all where it has no slopes. */
  mattering({ factors }: Corner): readonly number[] {
    const { loose } = this.#spots.world
    const there = this.#spots.at(factors).slopesOf(this.#k)?.slopes
    return there === undefined ? [...loose.keys()] : mattering(loose, there)
  }

  /** Tries single values until none of them makes the figure worse. */
  descend(start: Corner, turned: readonly number[], side: Side): Corner {
    let best = start
    for (let round = 0; round < ROUNDS; round += 1) {
      const before = best
      for (const value of turned) {
        const one = this.#spots.world.loose[value]
        for (const factor of one === undefined ? [] : tried(one)) {
          if (factor === best.factors[value]) continue
          const factors = best.factors.slice()
          factors[value] = factor
          const amount = this.#amount(factors)
          if (amount !== undefined && (amount - best.value) * side > 0) best = { value: amount, factors }
        }
      }
      if (best === before) break
    }
    return best
  }

  #amount(factors: Float64Array): number | undefined {
    return this.#spots.at(factors).figure(this.#k)?.value ?? undefined
  }
}
