/** Every figure of a world: its worst case, what many draws come to, and the values that it hangs on. */
import type { Figure } from '../figures/figure.ts'
import { freshSupplier, readFigure, type Supplier } from '../figures/read.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { drawnSupplier, isSmall } from './drawn-set.ts'
import { type DrawLaw, deviationOf, drawer, quantileOf } from './draws.ts'
import type { By, PlansOf, Slopes, Spots } from './sensitivity.ts'
import { refitsBetween, type World } from './world.ts'
import { type WorstCase, worstCase } from './worst-case.ts'

/** How a value moves a figure. */
export interface Pull {
  /** The value, by its id. */
  readonly value: string
  readonly part: string
  /** Change of the figure, in its unit, for one per cent more of the value. */
  readonly 'for one per cent': number
  /** Part of the figure's variance that comes from it, to first order. */
  readonly share: number
}

/** A part with the share of all its values. */
export interface PartShare {
  readonly part: string
  readonly share: number
}

/** Figures below which 5, 50 and 95 of a hundred draws lie. */
export interface Percentiles {
  readonly 5: number
  readonly 50: number
  readonly 95: number
}

/** What becomes of one figure. */
export interface FigureSpread {
  readonly figure: Figure
  /** How its slopes were found; absent where it is no number. */
  readonly by?: By
  readonly worst?: { readonly least: number; readonly most: number; readonly steady: boolean }
  readonly percentiles?: Percentiles
  /** Draws in which it was no number. */
  readonly lost: number
  /** Values that move it, the strongest first. */
  readonly pulls: readonly Pull[]
  readonly parts: readonly PartShare[]
}

/** What the study of one figure found, with the corners of its worst case. */
export interface Studied {
  readonly figure: Figure
  readonly slopes?: Slopes
  readonly worst?: WorstCase
}

/** A share of the variance that is worth a line. */
const WORTH = 1e-6

/** Reads every figure with its values as stated, its slopes and its worst case. */
export function study(spots: Spots, tell: (k: number, of: number) => void): readonly Studied[] {
  const stated = spots.stated()
  return stated.plans.map((plan, k, all) => {
    tell(k, all.length)
    const figure = readFigure(stated.net, plan, stated.supplier)
    const slopes = stated.slopesOf(k)
    if (slopes === undefined || figure.value === null) return { figure }
    return { figure, slopes, worst: worstCase(spots, k, figure.value, slopes) }
  })
}

/** What was drawn: rows of one amount a figure, NaN where it was no number. */
export interface Drawn {
  readonly amounts: readonly Float64Array[]
  /** Draws with every value within its limits. */
  readonly within: Uint8Array
  /** Factors of every draw. */
  readonly factors: readonly Float64Array[]
  readonly law: DrawLaw
}

/** How many sets are drawn, from which seed and by which law. */
export interface Drawing {
  readonly draws: number
  readonly seed: number
  readonly law: DrawLaw
}

/**
 * Draws whole sets, each with every value at once, and reads every figure of each.
 * @param isRead whether the figure of this index is read; the amounts of others are nil
 * @param each called for each draw with its netlist and whoever solves it
 */
export function drawAll(
  world: World,
  plansOf: PlansOf,
  { draws, seed, law }: Drawing,
  isRead: (k: number) => boolean,
  each: (draw: number, net: Netlist, supplier: Supplier) => void,
): Drawn {
  const { loose } = world
  const draw = drawer(loose, law, seed)
  const stated = plansOf(world.net)
  const hasSheets = loose.some(({ site }) => 'sheet' in site)
  const plansAt = (net: Netlist) => (hasSheets ? plansOf(net) : stated)
  const whole = !hasSheets && isSmall(world.net)
  const amounts = stated.map(() => new Float64Array(draws))
  const within = new Uint8Array(draws)
  const factors: Float64Array[] = []
  for (let n = 0; n < draws; n += 1) {
    const drawn = new Float64Array(loose.length)
    draw(drawn)
    factors.push(drawn)
    within[n] = loose.every(({ least, most }, k) => (drawn[k] ?? 1) >= least && (drawn[k] ?? 1) <= most)
      ? 1
      : 0
    const net = world.at(drawn)
    const supplier = whole ? drawnSupplier(world.net, refitsBetween(world.net, net)) : freshSupplier(net)
    plansAt(net).forEach((plan, k) => {
      const column = amounts[k]
      if (column !== undefined && isRead(k)) column[n] = readFigure(net, plan, supplier).value ?? Number.NaN
    })
    each(n, net, supplier)
  }
  return { amounts, within, factors, law }
}

/** All that is known of one figure. */
export function spreadOf(
  { loose }: World,
  { figure, slopes, worst }: Studied,
  amounts: Float64Array,
  { within, law }: Drawn,
): FigureSpread {
  const numbers = amounts.filter((amount) => !Number.isNaN(amount)).sort()
  const lost = amounts.length - numbers.length
  if (slopes === undefined || worst === undefined) return { figure, lost, pulls: [], parts: [] }
  const pulls = pullsOf(loose, slopes.slopes, law, figure.value ?? 0)
  return {
    figure,
    by: slopes.by,
    worst: widened(worst, amounts, within),
    ...(numbers.length === 0 ? {} : { percentiles: percentilesOf(numbers) }),
    lost,
    pulls,
    parts: partsOf(pulls),
  }
}

function percentilesOf(sorted: Float64Array): Percentiles {
  return { 5: quantileOf(sorted, 0.05), 50: quantileOf(sorted, 0.5), 95: quantileOf(sorted, 0.95) }
}

/** A draw with every value within its limits that goes further than the search: then that found too little. */
function widened({ least, most, steady }: WorstCase, amounts: Float64Array, within: Uint8Array) {
  let [low, high] = [least.value, most.value]
  amounts.forEach((amount, n) => {
    if (within[n] !== 1 || Number.isNaN(amount)) return
    low = Math.min(low, amount)
    high = Math.max(high, amount)
  })
  const beyond = (p: number, q: number): boolean => Math.abs(p - q) > ROUNDING * Math.abs(q)
  const found = beyond(low, least.value) || beyond(high, most.value)
  return { least: low, most: high, steady: steady && !found }
}

/** Differences below this share are rounding. */
const ROUNDING = 1e-9

/** The values that move a figure of this size, the strongest first; none where they move it by rounding only. */
export function pullsOf(
  loose: World['loose'],
  slopes: Float64Array,
  law: DrawLaw,
  size: number,
): readonly Pull[] {
  const variances = loose.map((one, k) => ((slopes[k] ?? 0) * deviationOf(one, law)) ** 2)
  const whole = variances.reduce((sum, one) => sum + one, 0)
  if (Math.sqrt(whole) <= ROUNDING * Math.abs(size)) return []
  return loose
    .map(({ id, part }, k) => ({
      value: id,
      part,
      'for one per cent': (slopes[k] ?? 0) / 100,
      share: (variances[k] ?? 0) / whole,
    }))
    .filter(({ share }) => share >= WORTH)
    .sort((p, q) => q.share - p.share)
}

/** The parts that move a figure, the strongest first. */
export function partsOf(pulls: readonly Pull[]): readonly PartShare[] {
  const shares = new Map<string, number>()
  for (const { part, share } of pulls) shares.set(part, (shares.get(part) ?? 0) + share)
  return [...shares].map(([part, share]) => ({ part, share })).sort((p, q) => q.share - p.share)
}
