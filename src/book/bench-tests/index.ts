/** Everything that can be found out about a set at the bench. */
import type { BenchTest } from '../bench-test.ts'
import { type BenchSet, soundOf } from './bench-set.ts'
import { readingTests } from './readings/index.ts'
import { symptomTests } from './symptoms.ts'

export type { BenchSet } from './bench-set.ts'
export { COMPLAINTS, type Complaint, complaintsFor } from './complaints.ts'
export { SYMPTOMS } from './symptoms.ts'

/**
 * Symptoms of a set on its line first, then readings outside its case, on the live line, and inside. Plans are made once
 * on the sound netlist, and what is due is computed there; faults are applied to the questions of the plans.
 *
 * @param set a set that stands alone has readings only, unplugged
 */
export function benchTestsOf(set: BenchSet): readonly BenchTest[] {
  const sound = soundOf(set)
  return [...symptomTests(sound), ...readingTests(sound)]
}
