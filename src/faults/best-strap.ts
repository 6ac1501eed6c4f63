/** Which strap that could be fitted does most good: for speech, or for the bell. */
import { type CheckContext, roleBranches } from '../checks/context.ts'
import { speechFigures } from '../checks/wiring/landing.ts'
import { bellCurrent, ringsFrom } from './measure.ts'
import { nearestStrap, type StrapBetween, terminalGroups } from './wires.ts'

/** A strap that is thought fitted. */
interface Fitted {
  readonly added: readonly { readonly from: number; readonly to: number }[]
}

/** What a strap is worth; nothing where it does no good. */
export type Worth = (context: CheckContext, fitted: Fitted) => number

/** How much speech there is: the lesser of send and receive, A for 1 V. */
export const speechWorth: Worth = (context, fitted) => {
  const [send, receive] = speechFigures(context, fitted)
  return Math.min(send?.value ?? 0, receive?.value ?? 0)
}

/** The least share of what it needs that a bell of the set gets; nothing where it is too little to ring. */
export const bellWorth: Worth = (context, fitted) => {
  const shares = roleBranches(context, 'sounder').map(
    (bell) =>
      (bellCurrent(context, bell, fitted)?.value ?? 0) / (ringsFrom(bell) ?? Number.POSITIVE_INFINITY),
  )
  const least = Math.min(...shares)
  return least < 1 ? 0 : least
}

/** Two straps are as good as each other within this share. */
const EQUAL = 1e-3

/** Straps between neighbours on a strip are tried before all others. */
const NEIGHBOURS = 1

/** What is worth less than this does no good: a speech current of 10 µA for 1 V, a hundred thousandth of a bell's. */
const NOTHING = 1e-5

/** The strap that is worth most; among equals the shortest. */
export function bestStrap(context: CheckContext, written: string, worth: Worth): StrapBetween | undefined {
  const groups = terminalGroups(context, written, true)
  const straps = groups
    .flatMap((group, k) => groups.slice(k + 1).map((other) => nearestStrap(context, group, other)))
    .filter((one) => one !== undefined)
    .sort((p, q) => p.distance - q.distance)
  const near = straps.filter(({ distance }) => distance <= NEIGHBOURS)
  return pick(context, near, worth) ?? pick(context, straps, worth)
}

function pick(
  context: CheckContext,
  straps: readonly StrapBetween[],
  worth: Worth,
): StrapBetween | undefined {
  let best: { readonly strap: StrapBetween; readonly value: number } | undefined
  for (const strap of straps) {
    const value = worth(context, { added: [{ from: strap.from, to: strap.to }] })
    if (value > NOTHING && value > (best?.value ?? 0) * (1 + EQUAL)) best = { strap, value }
  }
  return best?.strap
}
