/** A length of cable, wire by wire; its resistance alone in this version. */
import { copperResistance } from '../parts/copper.ts'
import { wire } from '../parts/exchange.ts'
import type { RunSpec } from '../sheet/model.ts'
import type { NetlistBuilder } from './builder.ts'

/** Resistance of one wire of a run, ohms. */
export function runResistance(run: RunSpec | undefined): number {
  if (run === undefined) return 0
  return copperResistance(run.gauge.value, run.length.value, run.temperature?.value)
}

/** Adds one wire of a run between two nodes. */
export function addWire(
  builder: NetlistBuilder,
  owner: string,
  name: string,
  from: string,
  to: string,
  ohms: number,
): void {
  builder.add(wire as never, { kind: 'wire', from, to, resistance: ohms } as never, {
    place: '',
    owner,
    name,
    sort: 'cable',
    node: (end) => end,
  })
}
