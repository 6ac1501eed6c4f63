/** A length of cable between two places. */
import { type CableRunSpec, cableRun } from '../parts/cable-run.ts'
import { CABLE_TYPES, cableConstants } from '../parts/cable-types.ts'
import type { PartLaw, PartSpec } from '../parts/kind.ts'
import { strap } from '../parts/strap.ts'
import type { RunSpec } from '../sheet/model.ts'
import type { NetlistBuilder } from './builder.ts'

/** The wires of a run that are used, by name, each from a node to a node, in the order of their branches. */
export type RunWires = Readonly<Record<string, readonly [from: string, to: string]>>

/** Whether a run has a wire for the ringing lead; two places with nothing to speak of between them have. */
export function carriesRinging(run: RunSpec | undefined): boolean {
  return run === undefined || CABLE_TYPES[run.type].wires.includes('ringing')
}

/**
 * Adds a run, `cable` of its owner: `owner/cable.a` and so on for its wires. Without a spec its wires have no
 * length, and nothing lies between them.
 */
export function addRun(
  builder: NetlistBuilder,
  owner: string,
  run: RunSpec | undefined,
  wires: RunWires,
): void {
  const add = (law: PartLaw<never>, spec: PartSpec, name: string): void => {
    const fitting = { place: '', owner, name, sort: 'cable' as const, node: (end: string) => end }
    builder.add(law as unknown as PartLaw, spec, fitting)
  }
  const ends = Object.entries(wires).map(([name, [from, to]]) => ({ name, from, to }))
  if (run === undefined) {
    const none = { value: 0, unit: 'Ω', text: '0 Ω' }
    for (const { name, from, to } of ends) {
      add(strap, { kind: 'strap', from, to, resistance: none } as PartSpec, `cable.${name}`)
    }
    return
  }
  const { type, gauge, length, temperature } = run
  const spec: CableRunSpec = {
    kind: 'cable-run',
    wires: Object.fromEntries(ends.map(({ name, from, to }) => [name, { from, to }])),
    ...cableConstants(type, ends.length, gauge.value, length.value, temperature?.value),
  }
  add(cableRun, spec, 'cable')
}
