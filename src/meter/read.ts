/** Makes one reading whole: range, value, band, kick, ear, meaning. */
import { type Netlist, nodeName } from '../netlist/netlist.ts'
import { pathIds } from '../netlist/paths.ts'
import { widened } from './accuracy.ts'
import type { Bench } from './bench.ts'
import { type BesideIt, besideIt } from './beside.ts'
import { blindSpots } from './blind.ts'
import { type Chosen, choose } from './choose.ts'
import { heard } from './ear.ts'
import { type NamedRange, rangesFor, type Shows } from './instrument.ts'
import { kickOf } from './kick.ts'
import type { Leads } from './leads.ts'
import { type Meaning, meaningOf } from './meaning.ts'
import { peakOf } from './peak.ts'
import type { MeterReading, Wanted } from './reading.ts'
import { remarksOn } from './remarks.ts'
import type { Setting } from './show.ts'
import { spreadOf } from './spread.ts'

const UNITS = {
  ohms: 'Ω',
  buzz: 'Ω',
  diode: 'V',
  capacitance: 'F',
  volts: 'V',
  'alternating-volts': 'V',
} as const

/** Whether an instrument has a range for this. */
export function canShow({ kit }: Bench, shows: Shows): boolean {
  return rangesFor(kit.instrument, shows).length > 0
}

/** Reads between two points. The instrument must have a range for it. */
export function readBetween(bench: Bench, leads: Leads, wanted: Wanted): MeterReading {
  const { net, kit } = bench
  const { shows, frequency } = wanted
  const setting: Setting = {
    redLead: kit.instrument['red lead'],
    ...(frequency === undefined ? {} : { frequency }),
  }
  const ranges = rangesFor(kit.instrument, shows)
  const chosen = choose(net, leads, ranges, setting, wanted.range)
  const { range, shown } = chosen
  const number = typeof shown.value === 'number'
  const kick =
    shows === 'ohms' && range.method === 'battery' ? kickOf(net, leads, range, kit.instrument) : undefined
  const isVolts = shows === 'volts' || shows === 'alternating-volts'
  const way = isVolts
    ? NO_WAY
    : meaningOf(net, leads, number ? shown.solution : undefined, kick !== undefined)
  const besides: BesideIt =
    shows === 'capacitance' ? besideIt(net, leads, chosen, way, setting) : { branches: way.beside }
  const drives = number && !isVolts && shows !== 'capacitance'
  const sounds = drives ? heard(net, kit, shown.solution) : []
  const rings = isVolts && net.line !== undefined && leads.condition.line === 'ringing'
  return {
    id: `meter.${shows}`,
    red: nodeName(net, leads.red),
    black: nodeName(net, leads.black),
    condition: leads.condition,
    range: chosen.name,
    ...(typeof shown.value === 'number' ? { value: shown.value } : { value: null, state: shown.value }),
    ...(shown.adrift === true ? { floating: true as const } : {}),
    unit: UNITS[shows],
    'full scale': range['full scale'].value,
    ...(range.resolution === undefined ? {} : { resolution: range.resolution.value }),
    ...bands(bench, leads, chosen, wanted.range === undefined ? ranges : [chosen], setting),
    ...(number && shown.phase !== undefined ? { phase: shown.phase } : {}),
    ...(rings && frequency !== undefined ? { peak: peakOf(net, leads, frequency) } : {}),
    ...(range.method === 'buzz' ? { buzzes: number && Number(shown.value) < range.limit.value } : {}),
    current: shown.amps,
    ...(kick === undefined ? {} : { kick }),
    heard: sounds,
    path: way.path === undefined ? [] : pathIds(net, way.path),
    parts: way.parts.map(({ id }) => id),
    contacts: way.contacts.map(({ id }) => id),
    beside: besides.branches.map(({ id }) => id),
    blind: isVolts ? [] : blindSpots(net, leads, way, number ? shown : { amps: 0 }),
    remarks: remarksOn(bench, chosen, wanted, { kick, besides, sounds }),
    live: isVolts && net.line !== undefined,
    ...approximation(net, isVolts ? undefined : way, shown.solution),
    residual: shown.solution?.residual ?? 0,
  }
}

const NO_WAY: Meaning = { path: undefined, parts: [], contacts: [], beside: [] }

function bands(
  bench: Bench,
  leads: Leads,
  chosen: Chosen,
  ranges: readonly NamedRange[],
  setting: Setting,
): Pick<MeterReading, 'band' | 'spread'> {
  const { range, shown } = chosen
  if (typeof shown.value !== 'number') return {}
  const spread = spreadOf(bench, leads, ranges, setting, chosen)
  const { interval, worst } = spread
  const most = interval.most === null || worst.most === null ? null : Math.max(interval.most, worst.most)
  const band = widened(range, { least: Math.min(interval.least, worst.least), most })
  const ohms = range.method === 'constant-current' || range.method === 'battery' || range.method === 'buzz'
  const leadsOhms = ohms ? (bench.kit.instrument.leads?.value ?? 0) : 0
  return { band: { ...band, most: band.most === null ? null : band.most + leadsOhms }, spread }
}

/** The stand-ins among the parts that the reading leads through; all of them for a voltage, which any part may move. */
function approximation(
  net: Netlist,
  way: Meaning | undefined,
  solution: Chosen['shown']['solution'],
): { readonly approximate?: string } {
  const through = way && new Set([...way.parts, ...way.beside].map(({ index }) => index))
  const all = solution === undefined ? [] : [...solution.standIns]
  const reasons = all
    .filter(([, branches]) => branches.some((k) => k < net.branches.length && (through?.has(k) ?? true)))
    .map(([reason]) => reason)
  return reasons.length === 0 ? {} : { approximate: reasons.join('; ') }
}
