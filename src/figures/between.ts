/** Resistance and impedance between two nodes, as an ideal meter without battery of its own reads them. */
import type { Condition } from '../netlist/condition.ts'
import { type Netlist, nodeName } from '../netlist/netlist.ts'
import type { Changes, Question } from '../solver/question.ts'
import type { FigurePlan } from './figure.ts'

/** What is changed for a reading: branches lifted, and a frequency for impedance. */
export interface Between extends Changes {
  readonly condition: Condition
  /** Hz; resistance to direct current when absent. */
  readonly frequency?: number
}

/**
 * |V| between two nodes for 1 A put into the first and taken out of the second, own sources at rest; ohms. Parts whose
 * law bends count as the line finds them in this condition, without a line as they are for currents too small to matter.
 */
export function between(net: Netlist, p: number, q: number, how: Between): FigurePlan {
  const { condition, frequency, ...changes } = how
  const question: Question = {
    analysis: frequency === undefined ? 'direct' : 'alternating',
    condition,
    sources: 'none',
    small: net.line === undefined ? true : 'fed',
    probes: [{ into: p, outOf: q, re: 1 }],
    ...(frequency === undefined ? {} : { frequency }),
    ...changes,
  }
  return {
    id: frequency === undefined ? 'resistance.between' : 'impedance.between',
    subject: `${nodeName(net, p)} – ${nodeName(net, q)}`,
    condition,
    unit: 'Ω',
    taps: [{ question, voltage: [p, q] }],
    value: modulus,
  }
}

/** Modulus of the first reading. */
export function modulus(readings: Float64Array): number {
  return Math.hypot(readings[0] ?? 0, readings[1] ?? 0)
}
