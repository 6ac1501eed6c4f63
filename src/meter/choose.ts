/** Which range a person would take, and what it then shows. */
import type { Netlist } from '../netlist/netlist.ts'
import type { NamedRange, Range } from './instrument.ts'
import type { Leads } from './leads.ts'
import { type Setting, type Shown, show } from './show.ts'

/** A range and what it shows. */
export interface Chosen extends NamedRange {
  readonly shown: Shown
}

/**
 * Reads on the one range given, or finds among several: digits on the smallest range that holds the value, a battery's
 * needle on the one where it stands nearest to the middle. What no range shows is `open` on ohms.
 *
 * @param ranges all ranges that show the same, the smallest full scale first; at least one
 * @param only the range asked for by its name
 */
export function choose(
  net: Netlist,
  leads: Leads,
  ranges: readonly NamedRange[],
  setting: Setting,
  only?: string,
): Chosen {
  const read = ({ name, range }: NamedRange): Chosen => ({
    name,
    range,
    shown: show(net, leads, range, setting),
  })
  const last = ranges.at(-1)
  if (last === undefined) throw new RangeError('no range to choose from')
  const widest = asOpen(read(last))
  if (typeof widest.shown.value !== 'number' && isOhms(last.range)) {
    const asked = ranges.find(({ name }) => name === only)
    return asked === undefined ? widest : { ...widest, ...asked }
  }
  const asked = ranges.find(({ name }) => name === only)
  if (asked !== undefined) return read(asked)
  if (last.range.method === 'battery') return nearestMiddle(ranges.map(read)) ?? widest
  for (const range of ranges) {
    const chosen = range === last ? widest : read(range)
    if (typeof chosen.shown.value === 'number') return chosen
  }
  return widest
}

function isOhms({ method }: Range): boolean {
  return method === 'constant-current' || method === 'battery' || method === 'diode' || method === 'buzz'
}

/** Beyond the widest range is open to whoever reads. */
function asOpen(chosen: Chosen): Chosen {
  if (chosen.shown.value !== 'beyond-range' || !isOhms(chosen.range)) return chosen
  return { ...chosen, shown: { ...chosen.shown, value: 'open' } }
}

function nearestMiddle(all: readonly Chosen[]): Chosen | undefined {
  const distance = ({ range, shown }: Chosen): number => {
    if (range.method !== 'battery' || typeof shown.value !== 'number') return Number.POSITIVE_INFINITY
    const middle = range['mid scale'].value
    return Math.abs(middle / (middle + shown.value) - 0.5)
  }
  const [best] = all.filter((one) => Number.isFinite(distance(one))).sort((p, q) => distance(p) - distance(q))
  return best
}
