/**
 * Speech at one frequency, steady: send, receive and sidetone as currents for 1 V, so that nil is a number.
 * Send: current in the line's termination for 1 V in series with the transmitter.
 * Receive: current in the receiver for 1 V of the far end behind the line's termination.
 * Sidetone: current in the receiver for 1 V in series with the transmitter.
 */
import type { Condition } from '../netlist/condition.ts'
import type { Branch, NetLine } from '../netlist/netlist.ts'
import type { Changes, Question } from '../solver/question.ts'
import { modulus } from './between.ts'
import type { FigurePlan } from './figure.ts'

/** The frequency of a single speech figure, Hz. */
export const SPEECH_FREQUENCY = 1000

/** The parts of a speech path. */
export interface SpeechPath {
  readonly line: NetLine
  readonly sender: Branch
  readonly receiver: Branch
}

function quiet(condition: Condition, frequency: number, changes: Changes): Question {
  return { analysis: 'alternating', frequency, condition, sources: 'none', ...changes }
}

/** The transmitter speaks with 1 V, all else at rest. */
export function sendingQuestion(
  sender: Branch,
  condition: Condition,
  frequency: number,
  changes: Changes = {},
): Question {
  return { ...quiet(condition, frequency, changes), series: [{ branch: sender.index, re: 1 }] }
}

/** The far end speaks with 1 V behind the line's termination, half in each wire, all else at rest. */
export function receivingQuestion(
  line: NetLine,
  condition: Condition,
  frequency: number,
  changes: Changes = {},
): Question {
  const series = line.termination.map((branch) => ({ branch, re: 1 / line.termination.length }))
  return { ...quiet(condition, frequency, changes), series }
}

/** The three speech figures of a path; conditions are those of a set in speech. */
export function speechPlans(
  path: SpeechPath,
  condition: Condition,
  changes: Changes = {},
  frequency: number = SPEECH_FREQUENCY,
): readonly FigurePlan[] {
  const [first = 0] = path.line.termination
  const sending = sendingQuestion(path.sender, condition, frequency, changes)
  const receiving = receivingQuestion(path.line, condition, frequency, changes)
  const plan = (id: FigurePlan['id'], subject: Branch, question: Question, current: number): FigurePlan => ({
    id,
    subject: subject.id,
    condition,
    unit: 'A',
    taps: [{ question, current }],
    value: modulus,
  })
  return [
    plan('speech.send', path.sender, sending, first),
    plan('speech.receive', path.receiver, receiving, path.receiver.index),
    plan('speech.sidetone', path.receiver, sending, path.receiver.index),
  ]
}
