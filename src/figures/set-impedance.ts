/** What the line sees of a set in speech: its impedance between the line wires, and how much of it comes back. */
import type { Condition } from '../netlist/condition.ts'
import type { NetLine, Netlist, NetPlace } from '../netlist/netlist.ts'
import { type Complex, divide, multiply } from '../parts/complex.ts'
import type { Changes, Question } from '../solver/question.ts'
import type { FigurePlan, State, Tap } from './figure.ts'
import { type ReferenceNetwork, referenceImpedance } from './reference-networks.ts'
import { receivingQuestion } from './speech.ts'

/** A pair of wires and the link whose current, from its `from` to its `to`, goes in at the first of them. */
export interface Port {
  /** What it is the port of: a place. */
  readonly name: string
  /** Node indices. */
  readonly a: number
  readonly b: number
  /** Branch index. */
  readonly into: number
}

/** Where a set meets its socket: none where it stands in none, or where its plug leaves the a wire alone. */
export function portOf(net: Netlist, place: NetPlace): Port | undefined {
  const { socket } = place
  if (socket === undefined) return undefined
  const link = net.branches.find(
    ({ part, from }) => part.place === place.place && part.sort === 'plug' && from === socket.a,
  )
  return link && { name: place.place, a: socket.a, b: socket.b, into: link.index }
}

/** Beyond this no impedance is told from an open pair, ohms: what an open contact leaks is near it. */
const OPEN = 1e10

/** A set as near to its reference as this, relative, returns nothing that can be told from rounding. */
const EQUAL = 1e-9

/** V(a) − V(b) and the current into the a wire, of the first two taps. */
function seen(readings: Float64Array): { readonly v: Complex; readonly i: Complex } {
  const [vr = 0, vi = 0, ir = 0, ii = 0] = readings
  return { v: { re: vr, im: vi }, i: { re: ir, im: ii } }
}

function sizeOf({ re, im }: Complex): number {
  return Math.hypot(re, im)
}

function tapsOf(port: Port, question: Question): readonly Tap[] {
  return [
    { question, voltage: [port.a, port.b] },
    { question, current: port.into },
  ]
}

/**
 * Impedance of a set between its line wires, ohms: the voltage across the pair at its socket over the current that its
 * plug takes from the a wire, while the far end speaks, about the direct-current point of this line. What other sets
 * draw is not in it; what the set's own bell draws on the ringing lead is.
 */
export function setImpedance(
  port: Port,
  line: NetLine,
  condition: Condition,
  frequency: number,
  changes: Changes = {},
): FigurePlan {
  return impedanceAt(port, receivingQuestion(line, condition, frequency, changes))
}

/** As `setImpedance`, of any question that drives a current through the port. */
export function impedanceAt(port: Port, question: Question): FigurePlan {
  return {
    id: 'speech.impedance',
    subject: port.name,
    condition: question.condition,
    unit: 'Ω',
    taps: tapsOf(port, question),
    value(readings): number | State {
      const { v, i } = seen(readings)
      const current = sizeOf(i)
      if (current === 0 && sizeOf(v) === 0) return 'undetermined'
      return current * OPEN < sizeOf(v) ? 'open' : sizeOf(v) / current
    },
    phasor(readings) {
      const { v, i } = seen(readings)
      return divide(v, i)
    },
  }
}

/** A return loss is about the place and the network: `kiosk against 370 Ω + 620 Ω ∥ 310 nF`. */
const AGAINST = ' against '

/**
 * Return loss of a set against a reference network, dB: 20 lg |(Z + Zr)/(Z − Zr)|. Of equal impedances there is no
 * number, since nothing returns; of an open or shorted pair it is 0 dB.
 * @source ITU-T G.122 and any textbook of transmission lines, from memory
 */
export function returnLoss(
  port: Port,
  line: NetLine,
  network: ReferenceNetwork,
  condition: Condition,
  frequency: number,
  changes: Changes = {},
): FigurePlan {
  return returnLossAt(port, network, receivingQuestion(line, condition, frequency, changes))
}

/** As `returnLoss`, of any question with a frequency that drives a current through the port. */
export function returnLossAt(port: Port, network: ReferenceNetwork, question: Question): FigurePlan {
  const reference = referenceImpedance(network, question.frequency ?? 0)
  return {
    id: 'speech.return-loss',
    subject: `${port.name}${AGAINST}${network.words}`,
    condition: question.condition,
    unit: 'dB',
    taps: tapsOf(port, question),
    // with V and I in place of Z, so that an open pair needs no case of its own
    value(readings): number | State {
      const { v, i } = seen(readings)
      const e = multiply(reference, i)
      const sum = Math.hypot(v.re + e.re, v.im + e.im)
      const difference = Math.hypot(v.re - e.re, v.im - e.im)
      if (sum === 0 || !Number.isFinite(sum)) return 'undetermined'
      return difference < EQUAL * sum ? 'beyond-range' : 20 * Math.log10(sum / difference)
    },
  }
}
