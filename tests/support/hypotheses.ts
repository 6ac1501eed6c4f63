/** Hypotheses by hand, for tests. */
import type { Hypotheses, Observable } from 'ringproof/inference/hypotheses'

/** Something that is asked: with cuts in words, else as a number. */
export function asked(over: Partial<Observable> = {}): Observable {
  return { scale: 1, error: () => 0, slip: 0, effort: 1, ...over }
}

/** Hypotheses with these priors; `rows` is what each expects of each observable. What is left of 1 is `none`. */
export function hypotheses(
  prior: readonly number[],
  observables: readonly Observable[],
  rows: readonly (readonly number[])[],
  spread: number = 0,
): Hypotheses {
  const left = prior.reduce((rest, one) => rest - one, 1)
  return {
    observables,
    count: prior.length,
    prior: Float64Array.from(prior),
    none: Math.abs(left) < 1e-12 ? 0 : left,
    expected: Float64Array.from(rows.flat()),
    spread: new Float64Array(prior.length * observables.length).fill(spread),
  }
}
