/** The loop: through both line wires off-hook, open on-hook. */

import { between } from '../../figures/between.ts'
import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { loopCurrent, onHookLeakage } from '../../figures/loop.ts'
import type { Condition } from '../../netlist/condition.ts'
import { conducting, without } from '../../netlist/conduct.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { joinedTo, pathBetween } from '../../netlist/paths.ts'
import {
  type CheckContext,
  hasHook,
  nodeShort,
  plugLinks,
  type Rule,
  when,
  whenHungUp,
  wireAt,
} from '../context.ts'
import { judge, shown } from '../judge.ts'
import { limitOf } from '../limits.ts'
import type { Unknown } from '../rule.ts'

/** A verdict where a check needs the set to stand on a line. */
export function noLine(context: CheckContext, check: string): Unknown {
  return {
    check,
    subject: context.place.place,
    condition: when(context, 'on-hook'),
    state: 'unknown',
    reason: 'no-line',
    says: 'The set stands on no line, or its plug has no line wires.',
    figure: null,
    limit: null,
    margin: null,
    path: [],
  }
}

/** A verdict where a check is about a set off-hook, which this one never is. */
export function noHook(context: CheckContext, check: string): Unknown {
  return {
    ...noLine(context, check),
    reason: 'undetermined',
    says: 'The set has no hook contact, so it is never off-hook.',
  }
}

/** The way of the loop through the set off-hook, or what is left of it on both sides of the gap. */
interface LoopWay {
  readonly ids: readonly string[]
  /** Where it is open, in words; empty when it is closed. */
  readonly gap: string
}

function loopWay(context: CheckContext): LoopWay {
  const { net } = context
  const a = wireAt(context, 'a')
  const b = wireAt(context, 'b')
  if (a === undefined || b === undefined) return { ids: [], gap: 'the plug lacks a line wire' }
  const choice = without(conducting(net, when(context, 'off-hook'), 'direct'), plugLinks(context))
  const ids = (from: number, to: number): readonly string[] =>
    (pathBetween(net, choice, from, to)?.nodes ?? []).map((node) => nodeName(net, node))
  const closed = ids(a, b)
  if (closed.length > 0) return { ids: closed, gap: '' }
  const near = joinedTo(net, choice, a)
  const far = joinedTo(net, choice, b)
  const gap = gapsOf(context).find(([p, q]) => (near.has(p) && far.has(q)) || (near.has(q) && far.has(p)))
  if (gap === undefined)
    return { ids: [...ids(a, a), ...ids(b, b)], gap: 'it is open on its way from the a wire to the b wire' }
  const [p, q] = near.has(gap[0]) ? gap : [gap[1], gap[0]]
  return {
    ids: [...ids(a, p), ...ids(q, b)],
    gap: `it is open between ${nodeShort(context, p)} and ${nodeShort(context, q)}`,
  }
}

/** Pairs of nodes where the loop may be waiting: sockets of empty slots, then parts that do not conduct. */
function gapsOf(context: CheckContext): readonly (readonly [number, number])[] {
  const { net, place } = context
  const empty = place.slots.filter((slot) => slot.fitted === undefined)
  const slots = empty.flatMap(({ sockets }) =>
    sockets.flatMap((p, k) => sockets.slice(k + 1).map((q): readonly [number, number] => [p, q])),
  )
  const own = net.branches.filter((branch) => branch.part.place === place.place)
  return [...slots, ...own.map((branch): readonly [number, number] => [branch.from, branch.to])]
}

/** Share of the loop current that suppressors may take without being what carries it. */
const TAKEN = 0.1

/** The loop current, without the suppressors where it is they that carry it: that is no loop. */
function carriedLoop(context: CheckContext, condition: Condition): Figure {
  const whole = context.figure(loopCurrent(context.net, context.place, condition))
  const lifted = openAtRest(context, condition)
  if (lifted.length === 0) return whole
  const bare = context.figure(loopCurrent(context.net, context.place, condition, 'loop.current', { lifted }))
  return amountOf(bare) < (1 - TAKEN) * amountOf(whole) ? bare : whole
}

/** Branches of the set that conduct only once the voltage across them is high. */
function openAtRest({ net, place }: CheckContext, condition: Condition): readonly number[] {
  const conducts = conducting(net, condition, 'direct')
  return net.branches
    .filter(
      ({ part }) => part.place === place.place && part.law.bends?.(part.spec).includes('direct') === true,
    )
    .filter((branch) => !conducts(branch))
    .map(({ index }) => index)
}

/** Do both line wires carry the loop? */
export const loopThroughSet: Rule = {
  id: 'wiring.loop-through-set',
  asks: 'Do both line wires carry the loop off-hook?',
  run(context) {
    if (context.net.line === undefined || context.place.socket === undefined)
      return [noLine(context, loopThroughSet.id)]
    if (!hasHook(context)) return [noHook(context, loopThroughSet.id)]
    // a set beside it that is off its hook says nothing of the wiring of this one
    const condition = whenHungUp(context, 'off-hook')
    const { ids, gap } = loopWay(context)
    const current = carriedLoop(context, condition)
    return [
      judge({
        check: loopThroughSet.id,
        subject: context.place.place,
        figure: current,
        limit: limitOf(context.limits, 'loop-make'),
        path: ids,
        says: {
          good: 'Both line wires carry the loop.',
          bad: `The loop fails off-hook: ${gap || 'too little current flows'}.`,
        },
        mend: 'look along the path for the strap, core or unit that is missing',
      }),
    ]
  },
}

/** Is the loop closed off-hook, by its resistance? */
export const loopClosedOffHook: Rule = {
  id: 'wiring.loop-closed-off-hook',
  asks: 'Is the loop closed off-hook?',
  run(context) {
    const a = wireAt(context, 'a')
    const b = wireAt(context, 'b')
    if (a === undefined || b === undefined) return [noLine(context, loopClosedOffHook.id)]
    if (!hasHook(context)) return [noHook(context, loopClosedOffHook.id)]
    const condition = when(context, 'off-hook')
    const { ids, gap } = loopWay(context)
    return [
      judge({
        check: loopClosedOffHook.id,
        subject: context.place.place,
        figure: context.figure(between(context.net, a, b, { condition, lifted: plugLinks(context) })),
        limit: limitOf(context.limits, 'loop-resistance'),
        path: ids,
        says: {
          good: 'The set closes the loop off-hook.',
          bad: `The loop fails off-hook: ${gap || 'its resistance is too high'}.`,
        },
        mend: 'look along the path for the strap, core or unit that is missing',
      }),
    ]
  },
}

/** Is the loop open on-hook? Judged where the set stands, so that a bell that bridges the capacitor is seen. */
export const loopOpenOnHook: Rule = {
  id: 'wiring.loop-open-on-hook',
  asks: 'Is the loop open to direct current on-hook?',
  run(context) {
    const { line } = context.net
    if (line === undefined || context.place.socket === undefined) return [noLine(context, loopOpenOnHook.id)]
    const limit = limitOf(context.limits, 'on-hook-resistance')
    const { net, place } = context
    const condition = when(context, 'on-hook')
    const choice = conducting(net, condition, 'direct')
    const a = wireAt(context, 'a')
    const b = wireAt(context, 'b')
    if (a === undefined || b === undefined) return [noLine(context, loopOpenOnHook.id)]
    const own = pathBetween(net, (branch) => branch.part.place === place.place && choice(branch), a, b)
    return [
      judge({
        check: loopOpenOnHook.id,
        subject: place.place,
        figure: context.figure(onHookLeakage(net, place, condition)),
        limit: { ...shown(limit), side: 'at-most', unit: 'A', value: line.feedVoltage / limit.value },
        path: (own?.nodes ?? []).map((node) => nodeName(net, node)),
        says: {
          good: 'The set draws no direct current on-hook.',
          bad: 'The set draws direct current on-hook; the exchange sees a leaky line.',
        },
        mend: 'look for a part that bridges the capacitor or the hook contact: a bell returned to the wrong wire, a core one terminal off',
      }),
    ]
  },
}
