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

/** The three speech figures of a path; conditions are those of a set in speech. */
export function speechPlans(
  path: SpeechPath,
  condition: Condition,
  changes: Changes = {},
  frequency: number = SPEECH_FREQUENCY,
): readonly FigurePlan[] {
  const base = {
    analysis: 'alternating' as const,
    frequency,
    condition,
    sources: 'none' as const,
    ...changes,
  }
  const sending: Question = { ...base, series: [{ branch: path.sender.index, re: 1 }] }
  const [first = 0, second = 0] = path.line.termination
  const receiving: Question = {
    ...base,
    series: [
      { branch: first, re: 0.5 },
      { branch: second, re: 0.5 },
    ],
  }
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
