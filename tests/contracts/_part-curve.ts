/** A part's law as a curve, and as a linear system about a point. */
import type { GateState, LawPoint, PartLaw, PartSpec, Working } from 'ringproof/parts/kind'
import { type Heard, hear, type Laws } from '../unit/parts/_heard.ts'

/** A law with the spec that it is asked about. */
export interface Subject {
  readonly law: PartLaw
  readonly spec: PartSpec
}

export const REST: Working = { voltage: 0, current: 0 }

/** The laws of all branches at a point. */
export function lawsAt({ law, spec }: Subject, at: LawPoint, gate: GateState = 'closed'): Laws {
  return hear((sink) => law.law(spec, at, gate, sink))
}

/** The direct-current law of one branch, the other branches at rest. */
export function directAt(subject: Subject, branch: number, working: Working): Heard {
  const at: LawPoint = { analysis: 'direct', omega: 0, direct: (k) => (k === branch ? working : REST) }
  const heard = lawsAt(subject, at).branches[branch]
  if (heard === undefined) throw new Error(`branch ${branch} is not stated`)
  return heard
}

/**
 * The point of a branch's curve at x: a voltage for admittances, a current for equations.
 * Undefined where an equation is open, which carries no current but 0.
 */
export function onCurve(subject: Subject, branch: number, x: number): Working | undefined {
  const heard = directAt(subject, branch, { voltage: x, current: x })
  if (heard.form === 'admittance') return { voltage: x, current: heard.y.re * x + heard.s.re }
  if (heard.a === 0) return undefined
  return { voltage: (heard.z.re * x + heard.e.re) / heard.a, current: x }
}

/** The coordinate that is not x. */
export function otherOf(heard: Heard, { voltage, current }: Working): number {
  return heard.form === 'admittance' ? current : voltage
}

/** The slope of a branch's tangent: siemens or ohms. */
export function slopeOf(heard: Heard): number {
  return heard.form === 'admittance' ? heard.y.re : heard.z.re / heard.a
}

/** Where Newton comes to rest in a source of `volts` behind `ohms`, and after how many steps; the other branches rest. */
export function settled(
  subject: Subject,
  branch: number,
  volts: number,
  ohms: number,
): { readonly steps: number; readonly working: Working } | undefined {
  let point = REST
  for (let steps = 1; steps <= 60; steps += 1) {
    const carried = crossing(directAt(subject, branch, point), volts, ohms)
    const next = subject.law.settle?.(subject.spec, branch, carried, point) ?? carried
    const unmoved = near(carried.voltage, point.voltage) && near(carried.current, point.current)
    if (unmoved && next.voltage === carried.voltage && next.current === carried.current)
      return { steps, working: carried }
    point = next
  }
  return undefined
}

function near(x: number, y: number): boolean {
  return Math.abs(x - y) <= 1e-9 * Math.abs(x) + 1e-15
}

function crossing(heard: Heard, volts: number, ohms: number): Working {
  if (heard.form === 'admittance') {
    const voltage = (volts / ohms - heard.s.re) / (1 / ohms + heard.y.re)
    return { voltage, current: heard.y.re * voltage + heard.s.re }
  }
  if (heard.a === 0) return { voltage: volts, current: 0 }
  const current = (volts - heard.e.re / heard.a) / (ohms + heard.z.re / heard.a)
  return { voltage: (heard.z.re * current + heard.e.re) / heard.a, current }
}
