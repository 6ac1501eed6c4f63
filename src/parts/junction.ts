/** The law of a diode, for every part that is made of diodes. */
import * as z from 'zod/mini'
import { lambertOfExp } from '../algebra/lambert-w.ts'
import type { At, Quantity } from '../quantities/quantity.ts'
import { describe } from './ends.ts'
import { plain, quantity, quantityAt } from './fields.ts'
import type { LawPoint, LawSink, PartProblem, Working } from './kind.ts'
import { growth, type Tangent } from './power-law.ts'
import { type SteepLaw, steepStep } from './steep-step.ts'
import { workingOf } from './working.ts'

/**
 * i = I_s·(exp(u / n·V_t) − 1) with u = v − R·i. The saturation current I_s is given itself or by the drop at a
 * current; one of the two.
 */
export interface JunctionSpec {
  readonly drop?: At
  readonly 'saturation current'?: Quantity
  readonly emission?: number
  readonly resistance?: Quantity
  readonly temperature?: Quantity
}

/** Boltzmann's constant over the charge of an electron, V/K. @source SI brochure, 9th edition (2019): 1.380649e-23 J/K and 1.602176634e-19 C, exact */
const VOLTS_PER_KELVIN = 1.380649e-23 / 1.602176634e-19
const ICE_POINT = 273.15
/** Temperature of a diode where the sheet is silent, °C. */
const ROOM = 20
/** Emission coefficient where the sheet is silent. From memory: silicon rectifiers lie between 1.5 and 2. */
export const USUAL_EMISSION = 1.8
/** Up to this current a step is believed as it stands, amperes. Our own choice; it changes no answer. */
const STEEP_FROM = 1e-5

/** A junction in numbers: saturation current A, n·V_t V, series resistance Ω. */
export interface Junction {
  readonly saturation: number
  readonly unit: number
  readonly resistance: number
}

/** n·V_t in volts. */
function unitOf({ temperature, emission }: JunctionSpec): number {
  return (emission ?? USUAL_EMISSION) * ((temperature?.value ?? ROOM) + ICE_POINT) * VOLTS_PER_KELVIN
}

/** A junction's numbers from its spec. */
export function junctionOf(spec: JunctionSpec): Junction {
  const unit = unitOf(spec)
  const resistance = spec.resistance?.value ?? 0
  const saturation = spec['saturation current']?.value ?? fromDrop(spec.drop, unit, resistance)
  return { saturation, unit, resistance }
}

function fromDrop(drop: At | undefined, unit: number, resistance: number): number {
  if (drop === undefined) throw new TypeError('a diode without a drop and without a saturation current')
  return drop.at.value / growth((drop.value.value - resistance * drop.at.value) / unit).value
}

/** Current and slope at a voltage, A and S, in closed form. */
export function junctionCurrent({ saturation, unit, resistance }: Junction, voltage: number): Tangent {
  const inner = resistance === 0 ? voltage : innerVoltage(saturation, unit, resistance, voltage)
  const { value, slope } = growth(inner / unit)
  const conductance = (saturation * slope) / unit
  return { value: saturation * value, slope: conductance / (1 + resistance * conductance) }
}

/** u in u + R·I_s·(exp(u/n·V_t) − 1) = v: by Lambert's W, and a step of Newton's for the last places. */
function innerVoltage(saturation: number, unit: number, resistance: number, voltage: number): number {
  const start = Math.log((saturation * resistance) / unit)
  const w = lambertOfExp(start + (voltage + saturation * resistance) / unit)
  const u = w === 0 ? voltage + saturation * resistance : unit * (Math.log(w) - start)
  const { value, slope } = growth(u / unit)
  const drop = resistance * saturation
  return u - (u + drop * value - voltage) / (1 + (drop * slope) / unit)
}

/** Voltage at a current above −I_s, V. */
export function junctionVoltage({ saturation, unit, resistance }: Junction, current: number): number {
  return unit * Math.log1p(current / saturation) + resistance * current
}

function steep(junction: Junction): SteepLaw {
  return {
    inverse: (current) => junctionVoltage(junction, current),
    knee: junctionVoltage(junction, STEEP_FROM),
  }
}

/** States one junction's law: its tangent in direct current, its slope for small signals. */
export function junctionLaw(junction: Junction, at: LawPoint, branch: number, sink: LawSink): void {
  const { voltage } = workingOf(at, branch)
  const { value, slope } = junctionCurrent(junction, voltage)
  sink.admittance(branch, slope, 0, at.analysis === 'direct' ? value - slope * voltage : 0)
}

/** Newton's next point for one junction. */
export function settleJunction(spec: JunctionSpec, next: Working, before: Working): Working {
  const junction = junctionOf(spec)
  const voltage = steepStep(steep(junction), before.voltage, next.voltage, next.current, false)
  return voltage === next.voltage ? next : { voltage, current: junctionCurrent(junction, voltage).value }
}

/** A diode that carries less, and stands at less, is at rest: A and V. Our own choice. */
const REST_CURRENT = 1e-5
const REST_VOLTAGE = 1

/** Why alternating figures through diodes at rest are approximate: what is larger opens them. */
export function junctionStandIn(at: LawPoint, branches: number): string | undefined {
  if (at.analysis === 'direct') return undefined
  for (let branch = 0; branch < branches; branch += 1) {
    const { voltage, current } = workingOf(at, branch)
    if (Math.abs(voltage) >= REST_VOLTAGE || Math.abs(current) >= REST_CURRENT) return undefined
  }
  return 'diodes at rest as for signals of a few millivolts'
}

/** The keys that every part made of diodes shares. */
export const JUNCTION_KEYS: {
  readonly drop: z.ZodMiniOptional<z.ZodMiniType<At>>
  readonly 'saturation current': z.ZodMiniOptional<z.ZodMiniType<Quantity>>
  readonly emission: z.ZodMiniOptional<z.ZodMiniType<number>>
  readonly resistance: z.ZodMiniOptional<z.ZodMiniType<Quantity>>
  readonly temperature: z.ZodMiniOptional<z.ZodMiniType<Quantity>>
} = {
  drop: z.optional(
    describe(
      quantityAt('voltage', 'current', { above: 0 }, { above: 0 }),
      'forward voltage of one diode, and the current at which it has it; this or `saturation current`',
    ),
  ),
  'saturation current': z.optional(
    describe(quantity('current', { min: 1e-20, max: 1e-2 }), 'I_s in I = I_s (exp(V / n V_t) − 1)'),
  ),
  emission: z.optional(describe(plain(1, 3), `n in the same; ${USUAL_EMISSION} when absent`)),
  resistance: z.optional(
    describe(quantity('resistance'), 'resistance in series with each diode; 0 Ω when absent'),
  ),
  temperature: z.optional(
    describe(quantity('temperature'), `at which all this holds; ${ROOM} °C when absent`),
  ),
}

/** What the schema of a junction cannot see: one of the two ways, and a drop that the resistance leaves room for. */
export function checkJunction(spec: JunctionSpec): readonly PartProblem[] {
  const { drop } = spec
  if ((drop === undefined) === (spec['saturation current'] === undefined)) {
    return [
      {
        code: drop === undefined ? 'key-missing' : 'key-doubled',
        found:
          drop === undefined ? 'neither `drop` nor `saturation current`' : '`drop` and `saturation current`',
        expected: 'one of the two',
        mend: 'say the forward voltage at a current: `drop: 0.7 V at 10 mA`',
      },
    ]
  }
  if (drop === undefined) return []
  const unit = unitOf(spec)
  const units = (drop.value.value - (spec.resistance?.value ?? 0) * drop.at.value) / unit
  if (units >= 1 && units <= 100) return []
  return [
    {
      code: 'quantity-out-of-range',
      found: `a drop of ${drop.value.text} at ${drop.at.text}`,
      expected: `between 1 and 100 times n V_t (${unit.toPrecision(3)} V) behind the series resistance`,
      at: ['drop'],
    },
  ]
}
