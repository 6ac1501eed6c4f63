/** All named faults of what stands somewhere. */
import type { CheckContext } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { FAULT_RULES } from './catalogue.ts'
import type { NamedFault } from './named-fault.ts'

/** Asks every rule of every place; `judged` are the verdicts of each place in the order of the contexts. */
export function findFaults(
  contexts: readonly CheckContext[],
  judged: readonly (readonly Verdict[])[],
): readonly NamedFault[] {
  const all = judged.flat()
  return FAULT_RULES.flatMap((rule) => {
    if (rule.once === true) return contexts.slice(0, 1).flatMap((context) => rule.find(context, all))
    return contexts.flatMap((context, k) => rule.find(context, judged[k] ?? []))
  })
}
