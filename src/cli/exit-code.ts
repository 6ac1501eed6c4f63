/** Exit codes; where several apply 2, then 3, then 1. */
import type { Counts, Problem, ProblemCode } from '../index.ts'

/** What a command ends with. */
export const EXIT = { answered: 0, fails: 1, wrong: 2, notComputed: 3, stopped: 130 } as const

/** Problems of the computation; all others are the request's or a sheet's. */
const NOT_COMPUTED = new Set<ProblemCode>(['no-unique-solution', 'no-convergence', 'contradiction', 'ours'])

/** The code for a request that could not be answered. */
export function codeOfProblems(problems: readonly Problem[]): number {
  const errors = problems.filter(({ severity }) => severity === 'error')
  return errors.length > 0 && errors.every(({ code }) => NOT_COMPUTED.has(code))
    ? EXIT.notComputed
    : EXIT.wrong
}

/** The code for verdicts and named faults; `strict` lets marginal and unknown ones count as well. */
export function codeOfCounts({ fails, marginal, unknown, faults }: Counts, strict: boolean): number {
  return fails + faults > 0 || (strict && marginal + unknown > 0) ? EXIT.fails : EXIT.answered
}
