/** Sockets: the master with its capacitor, resistor and gas tube, and the secondaries that it feeds. */
import { capacitor } from '../parts/capacitor.ts'
import type { PartLaw, PartSpec } from '../parts/kind.ts'
import { resistor } from '../parts/resistor.ts'
import { gasTube } from '../parts/suppressor.ts'
import type { LineSheet, PremisesSheet, RunSpec, SocketSpec } from '../sheet/model.ts'
import type { NetlistBuilder } from './builder.ts'
import type { NetSocket } from './netlist.ts'
import { addWire, runResistance } from './run.ts'

/** Adds one socket; sockets that feed it must be in `known` already. */
export function compileSocket(
  builder: NetlistBuilder,
  premises: PremisesSheet,
  line: LineSheet | undefined,
  name: string,
  known: ReadonlyMap<string, NetSocket>,
): NetSocket {
  const spec = premises.sockets[name]
  if (spec === undefined) throw new RangeError(`no socket is called ${name}`)
  const a = builder.node(`${name}/a`)
  const b = builder.node(`${name}/b`)
  if (spec.is === 'master') {
    master(builder, premises, name, spec)
    if (line !== undefined) lead(builder, name, line.cable, premises.reversed)
    return { name, a, b, ringing: builder.node(`${name}/ringing`), earth: spec.earth ?? false }
  }
  const feeder = known.get(spec['fed from'])
  if (feeder === undefined) throw new RangeError(`socket ${name} is fed from nothing`)
  const third =
    spec['ringing lead'] !== false && spec.over?.type !== 'house-pair' && feeder.ringing !== undefined
  const ohms = runResistance(spec.over)
  for (const core of third ? ['a', 'b', 'ringing'] : ['a', 'b']) {
    addWire(builder, name, `cable.${core}`, `${feeder.name}/${core}`, `${name}/${core}`, ohms)
  }
  return {
    name,
    a,
    b,
    ringing: third ? builder.node(`${name}/ringing`) : undefined,
    earth: spec.earth ?? false,
  }
}

function lead(builder: NetlistBuilder, name: string, cable: RunSpec | undefined, reversed: boolean): void {
  const ohms = runResistance(cable)
  addWire(builder, name, 'cable.a', 'exchange/a', `${name}/${reversed ? 'b' : 'a'}`, ohms)
  addWire(builder, name, 'cable.b', 'exchange/b', `${name}/${reversed ? 'a' : 'b'}`, ohms)
}

function master(
  builder: NetlistBuilder,
  premises: PremisesSheet,
  name: string,
  spec: Extract<SocketSpec, { is: 'master' }>,
): void {
  const add = (law: PartLaw<never>, part: string, rest: object, from: string, to: string): void => {
    const whole = { kind: law.kind, from: `${name}/${from}`, to: `${name}/${to}`, ...rest } as PartSpec
    builder.add(law as unknown as PartLaw, whole, {
      place: '',
      owner: name,
      name: part,
      sort: 'socket',
      node: (end) => end,
      origin: premises.places.get(`sockets.${name}`),
    })
  }
  add(capacitor, 'capacitor', { capacitance: spec.capacitance }, 'b', 'ringing')
  add(resistor, 'resistor', { resistance: spec.resistance }, 'ringing', 'a')
  const tube = spec['gas tube']
  if (tube !== undefined) add(gasTube, 'gas-tube', { 'holds off': tube }, 'a', 'b')
}
