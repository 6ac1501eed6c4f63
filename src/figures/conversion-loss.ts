/** How well a pair is balanced about earth. */
import type { Condition } from '../netlist/condition.ts'
import { type Complex, divide, multiply } from '../parts/complex.ts'
import type { Changes, Question } from '../solver/question.ts'
import type { FigurePlan, State } from './figure.ts'

/** Each of the two resistances of the method, ohms. */
const LEG = 300

/** A voltage of this share of the source's is what rounding leaves of none. */
const NOTHING = 1e-9

/** What a wire has to earth that the netlist does not know of, lumped at a node. */
export interface Stray {
  readonly node: number
  readonly farads: number
}

/** The pair that is measured, node indices. */
export interface MeasuredPair {
  readonly name: string
  readonly a: number
  readonly b: number
}

/**
 * Longitudinal conversion loss of what stands on a pair, dB: 20 lg |U/V|, U from earth to the midpoint of two
 * resistances of 300 Ω to the two wires, V the voltage that it brings about between the wires. No other load: lift the
 * exchange for it. Of a pair in perfect balance there is no number.
 *
 * Cables here have no capacitance to earth of their own (`parts/equivalent-pi.ts`), so that nothing of them is ever
 * out of balance; `stray` puts what one wire has beyond the other two at one of its nodes. That is right while the
 * whole wire is far shorter than a wave, at the edge of it at 1 MHz; what two wires that lie alike have in common, and
 * pick-up along the way, are left out.
 * @source AS/CA S002:2010 clause 6.7.3, read in the source
 */
export function conversionLoss(
  pair: MeasuredPair,
  condition: Condition,
  frequency: number,
  changes: Changes = {},
  stray?: Stray,
): FigurePlan {
  const { a, b } = pair
  const base: Question = {
    analysis: 'alternating',
    frequency,
    condition,
    sources: 'none',
    ...changes,
    bridges: [...(changes.bridges ?? []), { from: a, to: 0, ohms: LEG }, { from: b, to: 0, ohms: LEG }],
  }
  // 1 V behind both resistances, as the current that each of them would give into a short
  const driven: Question = {
    ...base,
    probes: [a, b].map((into) => ({ into, outOf: 0, re: 1 / LEG })),
  }
  const probed = stray && { ...base, probes: [{ into: stray.node, outOf: 0, re: 1 }] }
  return {
    id: 'balance.conversion-loss',
    subject: pair.name,
    condition,
    unit: 'dB',
    taps: [
      { question: driven, voltage: [a, b] },
      ...(stray === undefined || probed === undefined
        ? []
        : [
            { question: driven, voltage: [stray.node, 0] as const },
            { question: probed, voltage: [a, b] as const },
            { question: probed, voltage: [stray.node, 0] as const },
          ]),
    ],
    value(readings): number | State {
      const omega = 2 * Math.PI * frequency
      const across = stray === undefined ? at(readings, 0) : loaded(readings, omega * stray.farads)
      const size = Math.hypot(across.re, across.im)
      return size < NOTHING ? 'beyond-range' : -20 * Math.log10(size)
    },
  }
}

function at(readings: Float64Array, tap: number): Complex {
  return { re: readings[2 * tap] ?? 0, im: readings[2 * tap + 1] ?? 0 }
}

/** The voltage across the pair with the susceptance at its node: superposition of the source and of what that draws. */
function loaded(readings: Float64Array, susceptance: number): Complex {
  const [across, atNode, transfer, own] = [0, 1, 2, 3].map((tap) => at(readings, tap)) as [
    Complex,
    Complex,
    Complex,
    Complex,
  ]
  // V = V₀/(1 + jB·Z), and the pair loses Zt·jB·V
  const drawn = divide(multiply({ re: 0, im: susceptance }, atNode), {
    re: 1 - susceptance * own.im,
    im: susceptance * own.re,
  })
  const lost = multiply(transfer, drawn)
  return { re: across.re - lost.re, im: across.im - lost.im }
}
