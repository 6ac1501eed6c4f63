/** The two ends of a bell: what leads to them, and what the bell gets. */

import { between } from '../../figures/between.ts'
import type { Changes, Figure } from '../../figures/figure.ts'
import { ringingCurrent } from '../../figures/ringing.ts'
import { conducting, without } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { pathBetween } from '../../netlist/paths.ts'
import { type CheckContext, plugLinks, roleBranches, when } from '../context.ts'
import type { Consequence, Verdict } from '../rule.ts'
import { noLine } from './loop.ts'

/** One verdict for each bell of the set, or that it has none. */
export function perBell(
  context: CheckContext,
  check: string,
  judgeOne: (bell: Branch) => Verdict,
): readonly Verdict[] {
  const bells = roleBranches(context, 'sounder')
  if (bells.length > 0) return bells.map(judgeOne)
  return [{ ...noLine(context, check), reason: 'undetermined', says: 'The set has no bell.' }]
}

/** What the bell gets where the line rings, with what is changed for the question. */
export function bellCurrent(
  context: CheckContext,
  bell: Branch,
  changes: Changes = {},
): readonly Consequence[] {
  const { line } = context.net
  if (line?.ringingFrequency === undefined || context.place.socket === undefined) return []
  const condition = when(context, 'on-hook/ringing')
  return [
    {
      figure: context.figure(
        ringingCurrent(bell, condition, line.ringingFrequency, line.ringingHarmonics, changes),
      ),
    },
  ]
}

/** Resistance from a node to each end of the bell, set alone and on-hook, bell taken out. */
export function toEnds(
  context: CheckContext,
  bell: Branch,
  node: number,
): readonly { end: number; figure: Figure }[] {
  const condition = when(context, 'on-hook')
  const lifted = [bell.index, ...plugLinks(context)]
  return [bell.from, bell.to].map((end) => ({
    end,
    figure: context.figure(between(context.net, node, end, { condition, lifted })),
  }))
}

/** What an open way counts as, ohms. */
export const OPEN: number = Number.POSITIVE_INFINITY

/** The end that is nearest by resistance. */
export function nearest(
  ends: readonly { end: number; figure: Figure }[],
): { end: number; figure: Figure } | undefined {
  return [...ends].sort((p, q) => (p.figure.value ?? OPEN) - (q.figure.value ?? OPEN))[0]
}

/** Ids of the way from a node to an end of the bell, set alone and bell taken out. */
export function trace(
  context: CheckContext,
  bell: Branch,
  from: number | undefined,
  to: number,
): readonly string[] {
  if (from === undefined) return []
  const choice = without(conducting(context.net, when(context, 'on-hook'), 'direct'), [
    bell.index,
    ...plugLinks(context),
  ])
  return (pathBetween(context.net, choice, from, to)?.nodes ?? [from]).map((node) =>
    nodeName(context.net, node),
  )
}
