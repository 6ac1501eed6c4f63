/** The whole table of a set: every pair of cord cores, every part and contact between its screws, page by page. */

import { type Condition, conditionOf, readCondition } from '../netlist/condition.ts'
import { conducting } from '../netlist/conduct.ts'
import { branchAt, type Netlist, type NetPlace } from '../netlist/netlist.ts'
import { pathBetween } from '../netlist/paths.ts'
import type { Bench } from './bench.ts'
import { swapped } from './leads.ts'
import { corePairs, type Pair, type Point, partPairs, pointsOf } from './points.ts'
import { canShow, readBetween } from './read.ts'
import type { MeterReading } from './reading.ts'
import { isNoCapacitor } from './remarks.ts'

/** The readings of one condition. */
export interface TablePage {
  readonly condition: Condition
  readonly readings: readonly MeterReading[]
}

/** A set's table. */
export interface Table {
  readonly points: readonly Point[]
  readonly pages: readonly TablePage[]
}

/** The set at rest, lifted, and its dial off-normal with the impulse contact closed and open. */
const CONDITIONS = ['on-hook', 'off-hook', 'off-hook/make', 'off-hook/break'] as const

/** Readings of a set by itself, its plug open: on ohms, and by capacitance where a capacitor blocks ohms. */
export function tableOf(bench: Bench, place: NetPlace): Table {
  const points = pointsOf(bench.net, place)
  const cores = corePairs(points)
  const pairs = [...cores, ...partPairs(bench.net, place, points, cores)]
  const pages = CONDITIONS.map((words) => {
    const condition = conditionIn(bench.net, place, words)
    return { condition, readings: pairs.flatMap((pair) => readPair(bench, pair, condition)) }
  })
  return { points, pages }
}

/** A condition of one set, all others as they rest. */
export function conditionIn(net: Netlist, place: NetPlace, words: string): Condition {
  const read = readCondition(words)
  if (read === undefined) throw new RangeError(`${words} is no condition`)
  return conditionOf(place.place, read, net.rest)
}

/** Ohms, the other way round too where that differs; capacitance where ohms are open and a capacitor joins the points. */
function readPair(bench: Bench, [red, black]: Pair, condition: Condition): readonly MeterReading[] {
  const leads = { red: red.node, black: black.node, condition }
  const ohms = readBetween(bench, leads, { shows: 'ohms' })
  const readings = [ohms]
  if (bench.bent) {
    const turned = readBetween(bench, swapped(leads), { shows: 'ohms' })
    if (differs(ohms, turned)) readings.push(turned)
  }
  readings.push(...drops(bench, leads))
  if (ohms.value === null && canShow(bench, 'capacitance') && passesAlternating(bench.net, leads)) {
    const capacitance = readBetween(bench, leads, { shows: 'capacitance' })
    if (tells(capacitance)) readings.push(capacitance)
  }
  return readings
}

/** On the diode range, where the way leads through what has a polarity; both ways round where they differ. */
function drops(bench: Bench, leads: LeadsOf): readonly MeterReading[] {
  if (bench.polar.size === 0 || !canShow(bench, 'diode')) return []
  const ids = new Set([...bench.polar].map((k) => branchAt(bench.net, k).id))
  const both = [leads, swapped(leads)].map((held) => readBetween(bench, held, { shows: 'diode' }))
  const through = both.filter(
    ({ value, parts, beside }) => value !== null && [...parts, ...beside].some((id) => ids.has(id)),
  )
  const [one, other] = through
  return one !== undefined && other !== undefined && !differs(one, other) ? [one] : through
}

/** Whether a capacitance is more than the range’s last digit, and a capacitor’s doing. */
function tells({ value, band, phase }: MeterReading): boolean {
  if (phase !== undefined && isNoCapacitor(phase)) return false
  return value === null || (band?.least ?? 0) > 0
}

function passesAlternating(net: Netlist, { red, black, condition }: LeadsOf): boolean {
  return pathBetween(net, conducting(net, condition, 'alternating'), red, black) !== undefined
}

interface LeadsOf {
  readonly red: number
  readonly black: number
  readonly condition: Condition
}

/** Readings that a person would not take for the same. */
export function differs(p: MeterReading, q: MeterReading): boolean {
  if (p.value === null || q.value === null) return p.state !== q.state
  const size = Math.max(Math.abs(p.value), Math.abs(q.value))
  return Math.abs(p.value - q.value) > Math.max(0.02 * size, p.resolution ?? 0)
}
