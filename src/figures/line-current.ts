/** What the exchange gives to the whole line: direct current in its legs, and ringing current. */
import type { Condition } from '../netlist/condition.ts'
import type { NetLine, Netlist } from '../netlist/netlist.ts'
import type { Changes } from '../solver/question.ts'
import { exchangeLegs } from './exchange-legs.ts'
import type { FigureId, FigurePlan } from './figure.ts'
import { ringingQuestions, rootSumSquare } from './ringing.ts'

/** Ids under which the direct current of a whole line is told. */
export type LineCurrentId = Extract<
  FigureId,
  'leakage.on-hook' | 'leakage.ringing' | 'dial.leakage-open' | 'loop.current'
>

/** Direct current of the whole line, A: the larger of what the two legs of the exchange carry in this condition. */
export function lineCurrent(
  net: Netlist,
  line: NetLine,
  id: LineCurrentId,
  condition: Condition,
  changes: Changes = {},
  subject: string = line.name,
): FigurePlan {
  const legs = exchangeLegs(net, line, condition.line)
  return {
    id,
    subject,
    condition,
    unit: 'A',
    taps: legs.map(({ index }) => ({
      question: { analysis: 'direct', condition, ...changes },
      current: index,
    })),
    value: (readings) =>
      legs.length === 0 ? 'open' : readings.reduce((m, x) => Math.max(m, Math.abs(x)), 0),
  }
}

/**
 * Alternating current that the line gives while it rings, A rms over the harmonics of the generator's wave: the larger
 * of what its two legs carry.
 */
export function ringingLineCurrent(
  net: Netlist,
  line: NetLine,
  condition: Condition,
  changes: Changes = {},
): FigurePlan | undefined {
  const { ringingFrequency, ringingHarmonics } = line
  if (ringingFrequency === undefined) return undefined
  const questions = ringingQuestions(condition, ringingFrequency, ringingHarmonics, changes)
  const legs = exchangeLegs(net, line, 'ringing')
  return {
    id: 'ringing.line-current',
    subject: line.name,
    condition,
    unit: 'A',
    taps: legs.flatMap(({ index }) => questions.map((question) => ({ question, current: index }))),
    value: (readings) => {
      const size = 2 * questions.length
      return Math.max(...legs.map((_, k) => rootSumSquare(readings.subarray(k * size, (k + 1) * size))))
    },
  }
}

/**
 * How far the direct current of the whole line while it rings stays below what trips the ringing, as a part of that:
 * (trip − I)/trip. Negative where it trips by itself. Undefined where the line's sheet names no trip current.
 */
export function tripMargin(
  net: Netlist,
  line: NetLine,
  condition: Condition,
  changes: Changes = {},
): FigurePlan | undefined {
  const trip = line.sheet.trip?.current.value
  if (trip === undefined || trip === 0) return undefined
  const current = lineCurrent(net, line, 'leakage.ringing', condition, changes)
  return {
    ...current,
    id: 'ringing.trip-margin',
    unit: '1',
    value: (readings) => {
      const value = current.value(readings)
      return typeof value === 'number' ? (trip - value) / trip : value
    },
  }
}
