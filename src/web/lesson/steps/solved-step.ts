/** The houses of a step, solved by the worker. */
import type { HouseReading } from '../rig/reading.ts'
import { solvedHouse } from '../rig/solved.ts'
import type { Found, Step } from './step.ts'

/**
 * All houses that decide a step, one after the other, so that what the learner does meanwhile need not wait for all.
 * `goesOn` hears how far it is; it ends there when it says no.
 */
export async function solvedStep(
  step: Pick<Step, 'needs' | 'house'>,
  goesOn: (tells: string) => boolean = () => true,
): Promise<Found> {
  const found: Record<string, HouseReading> = {}
  const needs = Object.entries(step.needs)
  for (const [k, [name, state]] of needs.entries()) {
    if (!goesOn(`Solving house ${k + 1} of ${needs.length}…`)) break
    found[name] = await solvedHouse(step.house(state))
  }
  return found
}
