/** All named faults of what stands somewhere. */
import { CHECKS } from '../checks/catalogue.ts'
import type { CheckContext } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { FAULT_RULES } from './catalogue.ts'
import type { FaultRule, NamedFault } from './named-fault.ts'

/** Checks that are asked once of all that stands on the line. */
const ONCE: ReadonlySet<string> = new Set(CHECKS.filter(({ once }) => once === true).map(({ id }) => id))

/** Whether a check fails, or holds by little. */
function failed(verdicts: readonly Verdict[], id: string): boolean {
  return verdicts.some(({ check, state }) => check === id && (state === 'fails' || state === 'marginal'))
}

/** Asks every rule of every place; `judged` are the verdicts of each place in the order of the contexts. */
export function findFaults(
  contexts: readonly CheckContext[],
  judged: readonly (readonly Verdict[])[],
): readonly NamedFault[] {
  const all = judged.flat()
  // what is asked once of all stands with the first place
  const ofAll = (judged[0] ?? []).filter(({ check }) => ONCE.has(check))
  const here = (k: number): readonly Verdict[] => [...(judged[k] ?? []), ...ofAll]
  const named: NamedFault[] = []
  const places = new Set<number>()
  const told = new Set<string>()
  for (const rule of FAULT_RULES) {
    contexts.forEach((context, k) => {
      if ((rule.once === true && k > 0) || (rule.lastResort === true && places.has(k))) return
      const found = rule.find(context, rule.once === true ? all : (judged[k] ?? []), told)
      if (found.length === 0) return
      const { id: fault, title } = rule
      const explains = rule.explains.filter((id) => failed(rule.once === true ? all : here(k), id))
      const faults = found.map((one): NamedFault => ({ fault, title, explains, ...one }))
      const fresh = faults.filter((one) => !isTold(rule, one, named))
      if (fresh.length > 0 && rule.once !== true) places.add(k)
      named.push(...fresh)
      for (const id of fresh.flatMap(({ path }) => path)) told.add(id)
    })
  }
  return named
}

/** Whether an earlier fault says the same more exactly: one that the rule yields to, on a path that this one meets. */
function isTold({ yieldsTo = [] }: FaultRule, { path }: NamedFault, named: readonly NamedFault[]): boolean {
  return named.some((one) => yieldsTo.includes(one.fault) && one.path.some((id) => path.includes(id)))
}
