/** From prior to posterior: Bayes' rule. */
import type { Belief, Hypotheses, Observation } from './hypotheses.ts'
import { rememberFits } from './joint/given.ts'
import { weighJointly } from './joint/weigh.ts'
import { likelihoodsOf } from './likelihood.ts'
import { valueAt } from './value-at.ts'

export type { Belief } from './hypotheses.ts'

/**
 * The observations that count: of several of one observable the last. A person who reads twice at the same two points
 * repeats all that goes wrong there but the last digit, so that the second is no evidence of its own.
 */
export function standing(evidence: readonly Observation[]): readonly Observation[] {
  const last = new Map(evidence.map((one) => [one.observable, one]))
  return [...last.values()]
}

/**
 * What is to be believed after the evidence: posterior ∝ prior × likelihoods. Observations of different observables are
 * independent once the hypothesis and the values that are loose in it are given; those values are averaged out. Sums run
 * in logarithms, so nothing underflows; the result is always normalised and never NaN.
 */
export function believe(among: Hypotheses, evidence: readonly Observation[]): Belief {
  const logs = new Float64Array(among.count)
  for (let k = 0; k < among.count; k++) logs[k] = Math.log(valueAt(among.prior, k))
  let none = Math.log(among.none)
  const stands = standing(evidence)
  for (const observation of stands) {
    const likelihoods = likelihoodsOf(among, observation)
    for (let k = 0; k < among.count; k++) logs[k] = valueAt(logs, k) + valueAt(likelihoods.of, k)
    none += likelihoods.none
  }
  const fits = weighJointly(among, stands, logs, none)
  const belief = normalised(logs, none)
  rememberFits(belief, fits)
  return belief
}

function normalised(logs: Float64Array, none: number): Belief {
  let most = none
  for (const log of logs) most = Math.max(most, log)
  if (most === Number.NEGATIVE_INFINITY) return { of: logs.fill(0), none: 1 }
  const of = logs.map((log) => Math.exp(log - most))
  const left = Math.exp(none - most)
  const total = of.reduce((sum, one) => sum + one, left)
  return { of: of.map((one) => one / total), none: left / total }
}
