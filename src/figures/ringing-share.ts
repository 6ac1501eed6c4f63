/** How a bell stands beside the others while the line rings: its apparent power, and its share of their current. */
import type { Condition } from '../netlist/condition.ts'
import type { Branch, NetLine, Netlist, NetPlace } from '../netlist/netlist.ts'
import type { Changes } from '../solver/question.ts'
import type { FigurePlan } from './figure.ts'
import { ringingQuestions, rootSumSquare } from './ringing.ts'

/** Every bell and other sounder of an installation. */
export function soundersOf(net: Netlist): readonly Branch[] {
  return net.branches.filter(({ part }) => part.role === 'sounder')
}

/** Apparent power of a bell, VA: its rms voltage times its rms current, over the harmonics of the wave. */
export function ringingPower(
  bell: Branch,
  condition: Condition,
  frequency: number,
  harmonics: readonly number[],
  changes: Changes = {},
): FigurePlan {
  const questions = ringingQuestions(condition, frequency, harmonics, changes)
  const half = 2 * questions.length
  return {
    id: 'ringing.power',
    subject: bell.id,
    condition,
    unit: 'VA',
    taps: [
      ...questions.map((question) => ({ question, voltage: [bell.from, bell.to] as const })),
      ...questions.map((question) => ({ question, current: bell.index })),
    ],
    value: (readings) => rootSumSquare(readings.subarray(0, half)) * rootSumSquare(readings.subarray(half)),
  }
}

/**
 * Share of a bell in the current of all bells of the installation at the ringing frequency, their sizes added: what
 * n equal bells behind one capacitor have is 1/n. By the fundamental alone, which is what moves a clapper.
 */
export function ringingShare(
  net: Netlist,
  bell: Branch,
  condition: Condition,
  frequency: number,
  changes: Changes = {},
): FigurePlan {
  const [question] = ringingQuestions(condition, frequency, [1], changes)
  const bells = soundersOf(net)
  const own = bells.findIndex(({ index }) => index === bell.index)
  return {
    id: 'ringing.share',
    subject: bell.id,
    condition,
    unit: '1',
    taps: question === undefined ? [] : bells.map(({ index }) => ({ question, current: index })),
    value: (readings) => {
      const size = (k: number): number => Math.hypot(readings[2 * k] ?? 0, readings[2 * k + 1] ?? 0)
      const all = bells.reduce((sum, _, k) => sum + size(k), 0)
      return all === 0 ? 'undetermined' : size(own) / all
    },
  }
}

/** Voltage between the line wires at the set's socket while the line rings, V rms over the harmonics of its wave. */
export function ringingSocketVoltage(
  place: NetPlace,
  line: NetLine,
  condition: Condition,
  changes: Changes = {},
): FigurePlan | undefined {
  const { socket } = place
  const { ringingFrequency, ringingHarmonics } = line
  if (socket === undefined || ringingFrequency === undefined) return undefined
  const questions = ringingQuestions(condition, ringingFrequency, ringingHarmonics, changes)
  return {
    id: 'ringing.socket-voltage',
    subject: place.place,
    condition,
    unit: 'V',
    taps: questions.map((question) => ({ question, voltage: [socket.a, socket.b] as const })),
    value: rootSumSquare,
  }
}
