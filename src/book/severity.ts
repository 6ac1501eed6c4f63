/**
 * How bad a fault is: the book holds one size of each, a short of a tenth of an ohm, a leak of 100 kΩ, a winding with a
 * tenth of its turns gone; what lies on the bench has a size of its own.
 */
import type { Change } from '../figures/variants.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Severity } from './odds.ts'

/** Bridges of less than this, ohms, are links: a core that lies elsewhere lies there wholly. */
const LINK = 0.05

/**
 * The changes of a fault that is worse by one standard deviation in all that has a size: resistances by the factor of
 * the odds, values further from the sheet's. Undefined for a fault that is there or not there, such as a missing strap.
 */
export function graverBy(
  net: Netlist,
  changes: readonly Change[],
  { ohms, values }: Severity,
): readonly Change[] | undefined {
  let hasSize = false
  const graver = changes.map((change): Change => {
    const worse = graverChange(net, change, ohms, values)
    if (worse !== undefined) hasSize = true
    return worse ?? change
  })
  return hasSize ? graver : undefined
}

function graverChange(net: Netlist, change: Change, ohms: number, values: number): Change | undefined {
  if ('lifted' in change) return undefined
  if ('within' in change) return { within: { ...change.within, ohms: change.within.ohms * ohms } }
  if ('bridge' in change) {
    const { bridge } = change
    return bridge.ohms < LINK ? undefined : { bridge: { ...bridge, ohms: bridge.ohms / ohms } }
  }
  const { part, spec } = change.instead
  const sheet = net.parts[part]?.spec
  if (sheet === undefined) return undefined
  return { instead: { part, spec: further(sheet, spec, 1 + values) as PartSpec } }
}

/** Quantities and numbers so many times as far from the sheet's, by their ratio; by their difference for decibels. */
function further(sheet: unknown, spoilt: unknown, times: number): unknown {
  if (typeof spoilt === 'number' && typeof sheet === 'number') return farther(sheet, spoilt, times)
  if (typeof spoilt !== 'object' || spoilt === null || typeof sheet !== 'object' || sheet === null)
    return spoilt
  if ('value' in spoilt && 'unit' in spoilt && spoilt.unit === 'dB') return fartherLevel(sheet, spoilt, times)
  const entries = Object.entries(spoilt).map(([key, inner]): [string, unknown] => [
    key,
    further((sheet as Readonly<Record<string, unknown>>)[key], inner, times),
  ])
  return Object.fromEntries(entries)
}

function fartherLevel(sheet: object, spoilt: object & { value: unknown }, times: number): unknown {
  if (!('value' in sheet) || typeof sheet.value !== 'number' || typeof spoilt.value !== 'number')
    return spoilt
  return { ...spoilt, value: sheet.value + times * (spoilt.value - sheet.value) }
}

function farther(sheet: number, spoilt: number, times: number): number {
  return sheet > 0 && spoilt > 0 ? sheet * (spoilt / sheet) ** times : spoilt
}
