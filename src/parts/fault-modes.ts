/** How parts go wrong, for the kinds that share a way of doing so. */
import { formatExactly } from '../quantities/format.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { FaultFamily, FaultMode, PartSpec } from './kind.ts'

/** Where every weight and value of a fault is from that names no other source: a judgement of the trade. */
export const FROM_MEMORY = 'from memory'

/** Ohms of a short inside a part: not nothing, as a wire would be. */
const SHORT = 0.1

/** A mode as a kind writes it; the source is memory where it names none. */
export type Written = Omit<FaultMode, 'source'> & { readonly source?: string }

/** A mode with its source. */
export function faultMode(written: Written): FaultMode {
  return { source: FROM_MEMORY, ...written }
}

/** What most modes say of themselves: how often, and what a person would find. */
export interface Found {
  readonly weight: number
  readonly sign: string
  readonly says?: string
  readonly mend?: string
  /** `open-a`, where it befalls one branch; what a person calls that, or its name in brackets behind all. */
  readonly of?: { readonly branch: number; readonly name: string; readonly called?: string }
}

/** A mode before it is written down. */
interface Plain {
  readonly mode: string
  readonly family: FaultFamily
  readonly says: string
  readonly change: FaultMode['change']
}

function modeOf({ mode, family, says, change }: Plain, found: Found): FaultMode {
  const { weight, sign, mend, says: said = says, of } = found
  const common = { family, sign, weight, change, ...(mend === undefined ? {} : { mend }) }
  if (of === undefined) return faultMode({ mode, says: said, ...common })
  const { branch, name, called } = of
  const words = called === undefined ? { says: `${said} (${name})` } : { of: called, says: said }
  return faultMode({ mode: `${mode}-${name}`, branch, ...words, ...common })
}

/** Nothing flows. */
export function opens(found: Found): FaultMode {
  return modeOf({ mode: 'open', family: 'open', says: 'is open', change: { open: true } }, found)
}

/** A short stands beside it. */
export function shorts(found: Found): FaultMode {
  return modeOf({ mode: 'shorted', family: 'shorted', says: 'is shorted', change: { across: SHORT } }, found)
}

/** So many ohms stand beside it. */
export function leaks(ohms: number, found: Found): FaultMode {
  return modeOf({ mode: 'leaky', family: 'leaky', says: 'leaks', change: { across: ohms } }, found)
}

/** So many ohms stand in series with it. */
export function resists(mode: string, ohms: number, found: Found): FaultMode {
  return modeOf({ mode, family: 'resists', says: 'has a high resistance', change: { within: ohms } }, found)
}

/** It has other values. */
export function becomes<Spec extends PartSpec>(
  mode: string,
  instead: Spec,
  found: Found & { readonly says: string; readonly family: FaultFamily },
): FaultMode {
  const { family, says } = found
  return modeOf({ mode, family, says, change: { instead } }, found)
}

/** A quantity so many times as large, to three digits, as someone would write it. */
export function times(quantity: Quantity, factor: number): Quantity {
  const value = Number((quantity.value * factor).toPrecision(3))
  return { ...quantity, value, text: formatExactly(value, quantity.unit) }
}
