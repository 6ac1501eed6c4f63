/** The ringing load by counting: how many of a set a given source feeds until its voltage falls below a limit. */
import type { Complex } from '../parts/complex.ts'
import type { State } from './figure.ts'

/** Hz of the measurement, and V of its source and of the limit. @source AS/CA S002:2010, 6.7.6.2, grade SEEN-P */
export const COUNTING = { frequency: 25, volts: 75, least: 40, loads: 3 } as const

/** The unit ringer: 4 kΩ and 1 µF in series, ohms at 25 Hz. @source AS/CA S002:2010, 6.7.6.2, note, grade SEEN-P */
const UNIT = { re: 4000, im: -1 / (2 * Math.PI * COUNTING.frequency * 1e-6) }

/**
 * The resistive source that three unit ringers bring from 75 V to exactly 40 V, ohms: R from
 * |R + Z/3| = (75/40)·|Z/3|, which is 2859.312 Ω. @source grade DERIVED
 */
export const COUNTING_SOURCE: number = (() => {
  const re = UNIT.re / COUNTING.loads
  const im = UNIT.im / COUNTING.loads
  const whole = (COUNTING.volts / COUNTING.least) * Math.hypot(re, im)
  return Math.sqrt(whole * whole - im * im) - re
})()

/** Most sets that are ever counted: 3 over their number is then 0.1, and less is called 0.1. */
export const MOST_SETS = 30

/** Rounding that an equality may have. */
const EQUAL = 1e-9

/** Voltage of the source with n sets of an admittance, V. */
export function countedVoltage(n: number, { re, im }: Complex): number {
  const y = n * COUNTING_SOURCE
  return COUNTING.volts / Math.hypot(1 + y * re, y * im)
}

/**
 * 3 over the number of sets that bring the source down to 40 V, added one by one; at least 0.1. A set that does it
 * alone counts 3, the most that this measurement knows, however much it takes.
 * @param admittances of one set, S: as one of 1, 2, 3 … of its kind, or one where it is always the same
 */
export function setCount(admittances: readonly Complex[]): number | State {
  for (let count = 1; count <= MOST_SETS; count += 1) {
    const each = admittances[count - 1] ?? admittances.at(-1)
    if (each === undefined) return 'open'
    if (countedVoltage(count, each) <= COUNTING.least * (1 + EQUAL)) return COUNTING.loads / count
  }
  return COUNTING.loads / MOST_SETS
}
