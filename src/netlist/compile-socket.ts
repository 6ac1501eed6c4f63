/** Sockets: the master, and what is fed from another socket over a cable, perhaps through apparatus of its own. */
import { capacitor } from '../parts/capacitor.ts'
import { converter } from '../parts/converter.ts'
import { filter } from '../parts/filter.ts'
import { gasTube } from '../parts/gas-tube.ts'
import type { PartLaw, PartSpec } from '../parts/kind.ts'
import { resistor } from '../parts/resistor.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { LineSheet, PremisesSheet, RunSpec, SocketSpec } from '../sheet/model.ts'
import type { NetlistBuilder } from './builder.ts'
import type { LineState } from './condition.ts'
import type { NetSocket } from './netlist.ts'
import { addRun, carriesRinging } from './run.ts'

/** Sockets that are apparatus between two others, or carry a lead on. */
type FedSpec = Exclude<SocketSpec, { is: 'master' | 'outlet' }>

/** Adds one of a socket's own parts between two nodes. */
type AddPart = (law: PartLaw<never>, name: string, spec: object, during?: readonly LineState[]) => void

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
  const add: AddPart = (law, part, rest, during) => {
    builder.add(law as unknown as PartLaw, { kind: law.kind, ...rest } as PartSpec, {
      place: '',
      owner: name,
      name: part,
      sort: 'socket',
      node: (end) => end,
      origin: premises.places.get(`sockets.${name}`),
      ...(during === undefined ? {} : { during }),
    })
  }
  const ringing = (there: boolean): number | undefined =>
    there ? builder.node(`${name}/ringing`) : undefined
  const common = {
    name,
    is: spec.is,
    a,
    b,
    earth: spec.earth ?? false,
    mirrored: spec.mirrored ?? false,
    fedFrom: spec['fed from'],
  }
  const feeder = spec['fed from'] === undefined ? undefined : known.get(spec['fed from'])
  if (spec['fed from'] !== undefined && feeder === undefined)
    throw new RangeError(`socket ${name} is fed from nothing`)
  if (spec.is === 'master' || spec.is === 'outlet') {
    if (spec.is === 'master') fitMaster(add, name, spec)
    if (feeder === undefined && line !== undefined) {
      const [first, second] = premises.reversed ? ['b', 'a'] : ['a', 'b']
      addRun(builder, name, line.cable, {
        a: ['exchange/a', `${name}/${first}`],
        b: ['exchange/b', `${name}/${second}`],
      })
    }
    if (feeder !== undefined) {
      const third = spec.is === 'master' && carriesLead(spec) && feeder.ringing !== undefined
      const inlet = { a: `${name}/a`, b: `${name}/b` }
      lead(builder, name, spec.over, { feeder: feeder.name, inlet, third })
    }
    return { ...common, ringing: ringing(spec.is === 'master'), pulsesEnd: feeder?.pulsesEnd ?? false }
  }
  if (feeder === undefined) throw new RangeError(`socket ${name} is fed from nothing`)
  const third = carriesLead(spec) && feeder.ringing !== undefined
  const inlet = inletOf(name, spec, feeder.name)
  lead(builder, name, spec.over, { feeder: feeder.name, inlet, third })
  const own = fitApparatus(add, name, spec, inlet)
  return {
    ...common,
    ringing: ringing(third || own),
    pulsesEnd: feeder.pulsesEnd || spec.is === 'converter',
  }
}

/** The parts of a master socket. */
function fitMaster(add: AddPart, name: string, spec: Extract<SocketSpec, { is: 'master' }>): void {
  makeRinging(add, name, spec.capacitance, spec.resistance)
  const tube = spec['gas tube']
  if (tube !== undefined) add(gasTube, 'gas-tube', { from: `${name}/a`, to: `${name}/b`, 'holds off': tube })
}

/** The ringing lead is born between a capacitor to the b wire and a resistor to the a wire. */
function makeRinging(add: AddPart, name: string, capacitance: Quantity, resistance: Quantity): void {
  add(capacitor, 'capacitor', { from: `${name}/b`, to: `${name}/ringing`, capacitance })
  add(resistor, 'resistor', { from: `${name}/ringing`, to: `${name}/a`, resistance })
}

/** Whether a socket takes the ringing lead on from the one that feeds it. */
function carriesLead(spec: Exclude<SocketSpec, { is: 'outlet' }>): boolean {
  if (spec.is === 'adapter') return false // a two-wire lead
  return spec['ringing lead'] !== false && carriesRinging(spec.over)
}

/** Where the pair comes in: at the socket itself, or before the apparatus in the pair. */
function inletOf(name: string, spec: FedSpec, feeder: string): { readonly a: string; readonly b: string } {
  if (spec.is === 'secondary' || spec.is === 'adapter') return { a: `${name}/a`, b: `${name}/b` }
  // apparatus without a cable of its own is plugged into the socket that feeds it
  if (spec.over === undefined) return { a: `${feeder}/a`, b: `${feeder}/b` }
  return { a: `${name}/in-a`, b: `${name}/in-b` }
}

/** Where a cable comes from and leads to. */
interface Lead {
  readonly feeder: string
  readonly inlet: { readonly a: string; readonly b: string }
  /** Whether it takes the ringing lead along. */
  readonly third: boolean
}

/** The cable from the feeding socket. */
function lead(
  builder: NetlistBuilder,
  name: string,
  over: RunSpec | undefined,
  { feeder, inlet, third }: Lead,
): void {
  const wires: Record<string, readonly [string, string]> = {}
  if (inlet.a !== `${feeder}/a`) {
    wires['a'] = [`${feeder}/a`, inlet.a]
    wires['b'] = [`${feeder}/b`, inlet.b]
  }
  if (third) wires['ringing'] = [`${feeder}/ringing`, `${name}/ringing`]
  addRun(builder, name, over, wires)
}

const WITHOUT_RINGING: readonly LineState[] = ['idle', 'speech']

/** Adds the apparatus of a socket; says whether a ringing lead begins in it. */
function fitApparatus(
  add: AddPart,
  name: string,
  spec: FedSpec,
  inlet: { readonly a: string; readonly b: string },
): boolean {
  const wires = {
    a: { from: inlet.a, to: `${name}/a` },
    b: { from: inlet.b, to: `${name}/b` },
  }
  if (spec.is === 'converter') {
    const during = spec['passes ringing'] === false ? WITHOUT_RINGING : undefined
    const load = spec.load === undefined ? {} : { load: spec.load.value }
    add(converter, 'converter', { wires, resistance: spec['series resistance'].value, ...load }, during)
  }
  if (spec.is === 'filter') {
    const { resistance, inductance, capacitance } = spec
    add(filter, 'filter', {
      wires,
      resistance: resistance.value,
      inductance: inductance.value,
      capacitance: capacitance.value,
    })
  }
  if (spec.is !== 'adapter' || spec.capacitance === undefined || spec.resistance === undefined) return false
  makeRinging(add, name, spec.capacitance, spec.resistance)
  return true
}
