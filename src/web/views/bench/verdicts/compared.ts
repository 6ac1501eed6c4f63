/** Verdicts beside those of the set as found. */
import type { Verdict } from '../../../../index.ts'

export type State = Verdict['state']

/** One subject is told from another by the check and what it is about, conditions included. */
export function keyOf({ check, subject, condition }: Verdict): string {
  return JSON.stringify([check, subject, condition])
}

/** What became of a verdict against as found; nothing where it is the same, or nothing to compare with. */
export function becameWords(now: Verdict, before: ReadonlyMap<string, State>): string | undefined {
  if (before.size === 0) return undefined
  const was = before.get(keyOf(now)) ?? before.get(now.check)
  if (was === now.state) return undefined
  const words = {
    fails: 'became fails',
    marginal: 'became marginal',
    unknown: 'became unknown',
    holds: 'became holds',
  }
  return was === undefined ? 'new' : words[now.state]
}

/** States by key; under the check alone its gravest, for what it did not speak of as found. */
export function statesOf(verdicts: readonly Verdict[]): ReadonlyMap<string, State> {
  const states = new Map<string, State>()
  for (const state of GROUPS.toReversed())
    for (const one of verdicts) if (one.state === state) states.set(one.check, state)
  for (const one of verdicts) states.set(keyOf(one), one.state)
  return states
}

/** The gravest first; within a state in the order of the checks. */
export const GROUPS: readonly State[] = ['fails', 'marginal', 'unknown', 'holds']

export function grouped(
  verdicts: readonly Verdict[],
): readonly { readonly state: State; readonly all: readonly Verdict[] }[] {
  return GROUPS.map((state) => ({ state, all: verdicts.filter((one) => one.state === state) })).filter(
    ({ all }) => all.length > 0,
  )
}
