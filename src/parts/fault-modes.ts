/** How parts go wrong, for the kinds that share a way of doing so. */
import { formatExactly } from '../quantities/format.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { FaultMode, PartSpec } from './kind.ts'

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
  /** `open-a`, where it befalls one branch. */
  readonly of?: { readonly branch: number; readonly name: string }
}

function modeOf(
  mode: string,
  says: string,
  { weight, sign, says: own, of }: Found,
  change: FaultMode['change'],
): FaultMode {
  const said = own ?? says
  if (of === undefined) return faultMode({ mode, says: said, sign, weight, change })
  const { branch, name } = of
  return faultMode({ mode: `${mode}-${name}`, branch, says: `${said} (${name})`, sign, weight, change })
}

/** Nothing flows. */
export function opens(found: Found): FaultMode {
  return modeOf('open', 'is open', found, { open: true })
}

/** A short stands beside it. */
export function shorts(found: Found): FaultMode {
  return modeOf('shorted', 'is shorted', found, { across: SHORT })
}

/** So many ohms stand beside it. */
export function leaks(ohms: number, found: Found): FaultMode {
  return modeOf('leaky', 'leaks', found, { across: ohms })
}

/** So many ohms stand in series with it. */
export function resists(mode: string, ohms: number, found: Found): FaultMode {
  return modeOf(mode, 'has a high resistance', found, { within: ohms })
}

/** It has other values. */
export function becomes<Spec extends PartSpec>(
  mode: string,
  instead: Spec,
  found: Found & { readonly says: string },
): FaultMode {
  return modeOf(mode, found.says, found, { instead })
}

/** A quantity so many times as large, to three digits, as someone would write it. */
export function times(quantity: Quantity, factor: number): Quantity {
  const value = Number((quantity.value * factor).toPrecision(3))
  return { ...quantity, value, text: formatExactly(value, quantity.unit) }
}
