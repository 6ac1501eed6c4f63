import { deliveredInstruments, kitOf } from 'ringproof/answer/instruments-table'
import { type Bench, benchOf } from 'ringproof/meter/bench'
import type { Leads } from 'ringproof/meter/leads'
import { readBetween } from 'ringproof/meter/read'
import type { MeterReading, Wanted } from 'ringproof/meter/reading'
import { nodeOf } from 'ringproof/netlist/netlist'
import { compiled } from '../../support/compiled.ts'

export const DIGITAL = kitOf('digital', undefined)
export const NEEDLE = kitOf('needle', undefined)
export const CONDITION = { line: 'idle', sets: {} } as const

/** A circuit called `trial` under an instrument. */
export function bench(parts: readonly string[], kit = DIGITAL): Bench {
  return benchOf(compiled(...parts), kit)
}

/** Leads at two nodes of `trial`. */
export function leads({ net }: Bench, red: string, black: string): Leads {
  return { red: nodeOf(net, node(red)), black: nodeOf(net, node(black)), condition: CONDITION }
}

const node = (name: string): string => (name === 'earth' ? name : `trial/${name}`)

/** A reading of a circuit between two of its nodes. */
export function read(
  parts: readonly string[],
  [red, black]: readonly [string, string],
  wanted: Wanted = { shows: 'ohms' },
  kit = DIGITAL,
): MeterReading {
  const on = bench(parts, kit)
  return readBetween(on, leads(on, red, black), wanted)
}

export { deliveredInstruments }
