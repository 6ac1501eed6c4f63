/** Two sets off-hook at once: which, and in what condition. */
import { loopResistance } from '../../figures/loop.ts'
import type { Condition, SetCondition } from '../../netlist/condition.ts'
import type { NetPlace } from '../../netlist/netlist.ts'
import type { CheckContext } from '../context.ts'
import { hasHandset } from './path.ts'

const UP: SetCondition = { hook: 'off-hook', dial: 'rest', key: 'up' }

/** The condition in which two sets are off-hook; the same for either of them, so that it is solved once. */
export function bothUp(context: CheckContext, other: string, line: Condition['line']): Condition {
  const { net, place } = context
  const up = net.places.map((one) => one.place).filter((one) => one === other || one === place.place)
  return { line, sets: { ...net.rest, ...Object.fromEntries(up.map((one) => [one, UP])) } }
}

/** The other sets on this line that have a handset and stand in a socket, in the order of the premises. */
export function othersWithHandset(context: CheckContext): readonly NetPlace[] {
  return context.net.places.filter(
    (one) => one.place !== context.place.place && one.socket !== undefined && hasHandset(context, one),
  )
}

/** The set that takes most of the feed: the one of the least resistance by itself off-hook. */
export function hungriest(context: CheckContext, others: readonly NetPlace[]): NetPlace | undefined {
  let least = Number.POSITIVE_INFINITY
  let chosen = others[0]
  for (const one of others) {
    const plan = loopResistance(context.net, one, conditionOfOther(context, one.place))
    const ohms = (plan && context.figure(plan).value) ?? Number.POSITIVE_INFINITY
    if (ohms < least) [least, chosen] = [ohms, one]
  }
  return chosen
}

/** The other set off-hook by itself, as its own checks ask. */
function conditionOfOther({ net }: CheckContext, other: string): Condition {
  return { line: 'idle', sets: { ...net.rest, [other]: UP } }
}
