/** What a meter would read between two terminals of a known set with its cords off. */
import { widened } from '../meter/accuracy.ts'
import { choose } from '../meter/choose.ts'
import { type Kit, rangesFor } from '../meter/instrument.ts'
import { looseValues, withChanges } from '../meter/vary.ts'
import { type Condition, conditionOf, readCondition } from '../netlist/condition.ts'
import { conducting } from '../netlist/conduct.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { joinedTo } from '../netlist/paths.ts'
import { type KnownSet, PLACE } from './known.ts'
import type { SightingOdds } from './odds.ts'

/** A reading: where the red lead is held, where the black one, in which condition. */
export interface Pair {
  readonly red: string
  readonly black: string
  /** `on-hook`, `off-hook/make` … */
  readonly condition: string
}

/** `A3 A4 on-hook` */
export const pairId = ({ red, black, condition }: Pair): string => `${red} ${black} ${condition}`

/** Ohms, +∞ for `open`; undefined where a terminal is not there. */
export interface ExpectedReading {
  readonly ohms: number
  /** One standard deviation on the scale u = asinh(ohms / SCALE), besides the instrument's own error. */
  readonly spread: number
}

/** Readings are compared as u = asinh(ohms / SCALE): by difference well below it, by ratio well above. */
export const SCALE = 0.5

/** Tolerances are three standard deviations. from memory */
const SIGMAS = 3

/** Reads known sets, each wiring, pair and condition once. */
export interface Reader {
  /** Undefined where the set has no such terminal. */
  read(known: KnownSet, pair: Pair): ExpectedReading | undefined
  /** One standard deviation of a reading of so many ohms by itself, contacts included; ohms. */
  error(ohms: number): number
}

/** Ranges that read ohms are there, or nothing can be identified by readings. */
export function readsOhms({ instrument }: Kit): boolean {
  return rangesFor(instrument, 'ohms').length > 0
}

export function readerOf(kit: Kit, { reading }: SightingOdds): Reader {
  const ranges = rangesFor(kit.instrument, 'ohms')
  const setting = { redLead: kit.instrument['red lead'] }
  const kept = new Map<string, ExpectedReading>()
  const most = new WeakMap<Netlist, Netlist>()
  const conditions = new Map<string, Condition>()

  const conditionNamed = (words: string): Condition => {
    const known = conditions.get(words)
    if (known !== undefined) return known
    const read = readCondition(words)
    if (read === undefined) throw new RangeError(`${words} is no condition`)
    const made = conditionOf(PLACE, read)
    conditions.set(words, made)
    return made
  }
  // what leaks through open contacts is no way: above the limit it is open in any case
  const shown = (net: Netlist, red: number, black: number, condition: Condition): number => {
    if (!joinedTo(net, conducting(net, condition, 'direct'), red).has(black)) return Number.POSITIVE_INFINITY
    const { value } = choose(net, { red, black, condition }, ranges, setting).shown
    if (typeof value === 'number') return value > reading.open.value ? Number.POSITIVE_INFINITY : value
    return value === 'open' || value === 'beyond-range' ? Number.POSITIVE_INFINITY : Number.NaN
  }
  /** Every resistance at its upper end at once: more than any reading moves. @source Rayleigh's monotonicity law */
  const raised = (net: Netlist): Netlist => {
    const before = most.get(net)
    if (before !== undefined) return before
    const loose = looseValues(net, 1).filter(({ unit, most: factor }) => unit === 'Ω' && factor > 1)
    const made =
      loose.length === 0
        ? net
        : withChanges(
            net,
            loose.map((one) => ({ loose: one, factor: one.most })),
          )
    most.set(net, made)
    return made
  }
  const readAfresh = (net: Netlist, { red, black, condition }: Pair): ExpectedReading | undefined => {
    const ends = [red, black].map((one) => net.nodeIndex.get(`${PLACE}/${one}`))
    const [from, to] = ends
    if (from === undefined || to === undefined) return undefined
    const state = conditionNamed(condition)
    const ohms = shown(net, from, to, state)
    if (!Number.isFinite(ohms)) return { ohms, spread: 0 }
    const slope = ohms / Math.hypot(ohms, SCALE)
    const upper = raised(net)
    const high = upper === net || ohms < SCALE ? ohms : shown(upper, from, to, state)
    const tolerance = Number.isFinite(high)
      ? Math.abs(Math.asinh(high / SCALE) - Math.asinh(ohms / SCALE)) / SIGMAS
      : 0
    return { ohms, spread: Math.hypot(tolerance, reading.build.value * slope) }
  }

  return {
    read(known, pair) {
      const key = `${pairId(pair)} ${known.wiring}`
      const before = kept.get(key)
      if (before !== undefined) return before
      const made = readAfresh(known.net, pair)
      if (made !== undefined) kept.set(key, made)
      return made
    },
    error(ohms) {
      const { range } =
        ranges.find(({ range: one }) => ohms <= one['full scale'].value) ?? ranges.at(-1) ?? {}
      if (range === undefined) return reading.contacts.value
      const band = widened(range, { least: ohms, most: ohms })
      const own = band.most === null ? ohms - band.least : Math.max(ohms - band.least, band.most - ohms)
      return Math.hypot(own, reading.contacts.value)
    },
  }
}
