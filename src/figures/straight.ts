/** A handset part taken out of its set and put straight across the line: the most that it can do there by itself. */
import type { Condition } from '../netlist/condition.ts'
import type { Branch, NetLine, Netlist, NetSocket } from '../netlist/netlist.ts'
import { type Complex, divide } from '../parts/complex.ts'
import type { Changes, Question } from '../solver/question.ts'
import type { FigurePlan } from './figure.ts'
import { receivingQuestion } from './speech.ts'

/** Where a part would be put. */
export interface Straight {
  readonly line: NetLine
  readonly socket: NetSocket
  readonly part: Branch
  readonly condition: Condition
  readonly frequency: number
}

/**
 * What a transmitter would send, or a receiver receive, straight across the pair of its set's socket, A for 1 V: |H| over
 * the sum of its impedance, as the set finds it about its direct-current point, and of the line's at that socket with the
 * set unplugged. H is the current in the termination for 1 A put into the pair, which by reciprocity is also the voltage
 * across the pair for 1 V of the far end; so one question answers for both directions. A part that has no current at all
 * in its set counts as one without impedance.
 * @source Thevenin's theorem and reciprocity, any textbook of circuits
 */
export function straightAcross(
  id: 'speech.send' | 'speech.receive',
  net: Netlist,
  { line, socket, part, condition, frequency }: Straight,
  changes: Changes = {},
): FigurePlan {
  const inSet = receivingQuestion(line, condition, frequency, changes)
  const unplugged: Question = {
    analysis: 'alternating',
    frequency,
    condition,
    sources: 'none',
    ...changes,
    lifted: [...(changes.lifted ?? []), ...plugOf(net, part.part.place)],
    probes: [{ into: socket.a, outOf: socket.b, re: 1 }],
  }
  const [first = 0] = line.termination
  return {
    id,
    subject: part.id,
    condition,
    unit: 'A',
    taps: [
      { question: unplugged, voltage: [socket.a, socket.b] },
      { question: unplugged, current: first },
      { question: inSet, voltage: [part.from, part.to] },
      { question: inSet, current: part.index },
    ],
    value(readings): number {
      const line = at(readings, 0)
      const own = impedanceOf(at(readings, 2), at(readings, 3))
      return sizeOf(at(readings, 1)) / Math.hypot(line.re + own.re, line.im + own.im)
    },
  }
}

function plugOf(net: Netlist, place: string): readonly number[] {
  return net.branches
    .filter(({ part }) => part.place === place && part.sort === 'plug')
    .map(({ index }) => index)
}

function at(readings: Float64Array, tap: number): Complex {
  return { re: readings[2 * tap] ?? 0, im: readings[2 * tap + 1] ?? 0 }
}

function sizeOf({ re, im }: Complex): number {
  return Math.hypot(re, im)
}

/** A current below this, A for 1 V, is what rounding leaves of none. */
const NO_CURRENT = 1e-18

/** V/I, and nothing where no current tells. */
function impedanceOf(v: Complex, i: Complex): Complex {
  const z = sizeOf(i) < NO_CURRENT ? { re: 0, im: 0 } : divide(v, i)
  return Number.isFinite(sizeOf(z)) ? z : { re: 0, im: 0 }
}
