/** The registry: one line per kind of part that a sheet may name. */
import * as z from 'zod/mini'
import { bell } from './bell.ts'
import { bridge } from './bridge.ts'
import { cable } from './cable.ts'
import { capacitor } from './capacitor.ts'
import { contact } from './contact.ts'
import { currentResistor } from './current-resistor.ts'
import { currentSource } from './current-source.ts'
import { diode } from './diode.ts'
import { gasTube } from './gas-tube.ts'
import { inductionCoil } from './induction-coil.ts'
import { inductor } from './inductor.ts'
import type { PartKind, PartSpec } from './kind.ts'
import { quench } from './quench.ts'
import { receiver } from './receiver.ts'
import { resistor } from './resistor.ts'
import { strap } from './strap.ts'
import { toneRinger } from './tone-ringer.ts'
import { transmitter } from './transmitter.ts'
import { varistor } from './varistor.ts'
import { voltageSource } from './voltage-source.ts'

const KINDS = [
  resistor,
  capacitor,
  inductor,
  inductionCoil,
  strap,
  contact,
  quench,
  diode,
  bridge,
  varistor,
  gasTube,
  currentResistor,
  transmitter,
  receiver,
  bell,
  toneRinger,
  cable,
  voltageSource,
  currentSource,
]

/** Every kind that a sheet may name, in the order of the reference. */
export const PARTS: ReadonlyMap<string, PartKind> = new Map(
  // each kind is asked only with specs that its own schema has read
  KINDS.map((one) => [one.kind, one as unknown as PartKind]),
)

/** The kind of a part that a sheet has named; a kind that is not registered is our own mistake. */
export function kindOf(spec: PartSpec): PartKind {
  const found = PARTS.get(spec.kind)
  if (found === undefined) throw new TypeError(`no kind of part is called ${spec.kind}`)
  return found
}

/** The schema of any part: the union of all kinds, told apart by `kind`. */
export function partSchema(): z.ZodMiniType<PartSpec> {
  const schemas = [...PARTS.values()].map((one) => one.schema)
  return z.discriminatedUnion('kind', schemas as never) as unknown as z.ZodMiniType<PartSpec>
}
