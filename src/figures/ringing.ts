/** Ringing: what each bell gets at the line's ringing frequency, steady, with clappers held. */
import type { Condition } from '../netlist/condition.ts'
import { type Branch, type Netlist, type NetPlace, nodeName } from '../netlist/netlist.ts'
import type { Changes, Question } from '../solver/question.ts'
import type { FigurePlan } from './figure.ts'

/** Branches of a place whose part has a role. */
export function withRole(net: Netlist, place: NetPlace, role: string): readonly Branch[] {
  return net.branches.filter((branch) => branch.part.place === place.place && branch.part.role === role)
}

/**
 * Current in a branch while the line rings, A rms: the root of the sum of the squares over the harmonics of the
 * generator's wave. Harmonics of different frequency do not interfere in a square averaged over time.
 * @param harmonics multiples of `frequency`, `NetLine.ringingHarmonics`; the fundamental alone when absent
 */
export function ringingCurrent(
  branch: Branch,
  condition: Condition,
  frequency: number,
  harmonics: readonly number[] = SINE,
  changes: Changes = {},
): FigurePlan {
  return {
    id: 'ringing.current',
    subject: branch.id,
    condition,
    unit: 'A',
    taps: ringingQuestions(condition, frequency, harmonics, changes).map((question) => ({
      question,
      current: branch.index,
    })),
    value: rootSumSquare,
  }
}

/**
 * Voltage across a branch while the line rings, V rms, over the harmonics of the generator's wave.
 * @param harmonics multiples of `frequency`; the fundamental alone when absent
 */
export function ringingVoltage(
  branch: Branch,
  condition: Condition,
  frequency: number,
  harmonics: readonly number[] = SINE,
  changes: Changes = {},
): FigurePlan {
  return {
    id: 'ringing.voltage',
    subject: branch.id,
    condition,
    unit: 'V',
    taps: ringingQuestions(condition, frequency, harmonics, changes).map((question) => ({
      question,
      voltage: [branch.from, branch.to],
    })),
    value: rootSumSquare,
  }
}

const SINE: readonly number[] = [1]

/** One question for each harmonic of the generator's wave. */
export function ringingQuestions(
  condition: Condition,
  frequency: number,
  harmonics: readonly number[],
  changes: Changes = {},
): readonly Question[] {
  return harmonics.map((h) => ({ analysis: 'alternating', frequency: h * frequency, condition, ...changes }))
}

/** √Σ|reading|². */
export function rootSumSquare(readings: Float64Array): number {
  return Math.hypot(...readings)
}

/** Share of the bell's current that a capacitor must carry to count as its ringing capacitor. */
export const CAPACITOR_SHARE = 0.1

/** A bell that gets less than this has no ringing capacitor at all, A. */
const SILENT = 1e-6

/**
 * How many of the candidate capacitors carry at least a tenth of the bell's ringing current.
 * @param own whether the bell has a capacitor of its own inside, which is one more
 */
export function ringingCapacitors(
  net: Netlist,
  bell: Branch,
  candidates: readonly Branch[],
  condition: Condition,
  frequency: number,
  own: boolean = false,
  changes: Changes = {},
): FigurePlan {
  const question: Question = { analysis: 'alternating', frequency, condition, ...changes }
  return {
    id: 'ringing.capacitors',
    subject: `${bell.id} from ${nodeName(net, bell.from)} to ${nodeName(net, bell.to)}`,
    condition,
    unit: '1',
    taps: [bell, ...candidates].map((branch) => ({ question, current: branch.index })),
    value: (readings) => {
      const size = (k: number): number => Math.hypot(readings[2 * k] ?? 0, readings[2 * k + 1] ?? 0)
      if (size(0) < SILENT) return 0
      const carrying = candidates.filter((_, k) => size(k + 1) >= CAPACITOR_SHARE * size(0)).length
      return carrying + (own ? 1 : 0)
    },
  }
}
