/** Where the leads are held, and what the network answers to what an instrument sends through them. */
import type { Condition } from '../netlist/condition.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { type ProblemCode, ProblemError } from '../problem.ts'
import type { Question } from '../solver/question.ts'
import { type Complex, type Solution, voltageBetween } from '../solver/solution.ts'
import { solve } from '../solver/solve.ts'

/** Two points, by node index, and the state in which they are read. */
export interface Leads {
  readonly red: number
  readonly black: number
  readonly condition: Condition
  /** Branches taken off for the reading. */
  readonly lifted?: readonly number[]
}

/** What an instrument met. `open`: nothing can flow between its leads. */
export type Met =
  | { readonly open: true }
  | { readonly open: false; readonly volts: Complex; readonly solution: Solution }

/** Thrown within this folder where a network has no answer to what is sent; one reading may suffer it alone. */
export class Unsettled extends Error {
  readonly state: 'undetermined' | 'no-convergence'
  constructor(state: 'undetermined' | 'no-convergence') {
    super(state)
    this.state = state
  }
}

/** What the lack of an answer leaves of a reading. */
const LEAVES: Readonly<Partial<Record<ProblemCode, Unsettled['state']>>> = {
  'no-convergence': 'no-convergence',
  contradiction: 'undetermined',
  'no-unique-solution': 'undetermined',
}

/** Solves one question; a network without an answer to it ends the reading, not the whole table. */
export function answered(net: Netlist, question: Question): Solution {
  try {
    return solve(net, question)
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    const states = error.problems.map(({ code }) => LEAVES[code])
    const [state] = states
    if (state === undefined || states.includes(undefined)) throw error
    throw new Unsettled(state)
  }
}

/** The question of a reading with nothing sent yet. */
export function held({ condition, lifted }: Leads): Question {
  return { analysis: 'direct', condition, ...(lifted === undefined ? {} : { lifted }) }
}

/** Sends a current into red and out of black, own sources at rest; a negative one the other way. */
export function sendCurrent(net: Netlist, leads: Leads, amps: number, more: Partial<Question> = {}): Met {
  const probes = [{ into: leads.red, outOf: leads.black, re: amps }]
  const solution = answered(net, { ...held(leads), sources: 'none', probes, ...more })
  const volts = solution.probeOpen ? undefined : voltageBetween(solution, leads.red, leads.black)
  return volts === undefined ? { open: true } : { open: false, volts, solution }
}

/** What a battery met: the voltage left between the leads, and what flows. */
export interface Fed {
  readonly volts: Complex
  readonly amps: Complex
  readonly solution: Solution
}

/**
 * Puts a battery of `emf` volts behind `ohms` between the leads, its positive pole to red.
 * A battery behind a resistance is a current beside the same resistance. @source Norton's theorem.
 */
export function connectBattery(
  net: Netlist,
  leads: Leads,
  emf: number,
  ohms: number,
  more: Partial<Question> = {},
): Fed {
  const bridges = [{ from: leads.red, to: leads.black, ohms }]
  const { red, black } = leads
  const probes = [{ into: red, outOf: black, re: emf / ohms }]
  const solution = answered(net, { ...held(leads), sources: 'none', probes, bridges, ...more })
  // the bridge joins the leads, so that they are never in two islands
  const volts = voltageBetween(solution, red, black) ?? { re: emf, im: 0 }
  return { volts, amps: { re: (emf - volts.re) / ohms, im: -volts.im / ohms }, solution }
}

/** Whether nothing fixes the voltage between the leads while no instrument hangs on them. */
export function floats(net: Netlist, leads: Leads, more: Partial<Question> = {}): boolean {
  return voltageBetween(answered(net, { ...held(leads), ...more }), leads.red, leads.black) === undefined
}

/** The voltage between the leads with so many ohms across them, the sheets' sources at work. */
export function holdVoltmeter(net: Netlist, leads: Leads, ohms: number, more: Partial<Question> = {}): Fed {
  const { red, black } = leads
  const bridges = [{ from: red, to: black, ohms }]
  const solution = answered(net, { ...held(leads), bridges, ...more })
  const volts = voltageBetween(solution, red, black) ?? { re: 0, im: 0 }
  return { volts, amps: { re: -volts.re / ohms, im: -volts.im / ohms }, solution }
}

/** The same leads, changed over. */
export function swapped(leads: Leads): Leads {
  return { ...leads, red: leads.black, black: leads.red }
}

/** The leads as the instrument drives them: the one that its current leaves by comes first. */
export function driven(leads: Leads, redLead: 'positive' | 'negative'): Leads {
  return redLead === 'positive' ? leads : swapped(leads)
}
