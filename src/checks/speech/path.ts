/** What the speech checks have in common: the path of speech, and what is said where there is none. */

import type { Figure } from '../../figures/figure.ts'
import type { SpeechPath } from '../../figures/speech.ts'
import { conducting, linksOf } from '../../netlist/conduct.ts'
import type { Branch, NetPlace, NetSocket } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { pathBetween } from '../../netlist/paths.ts'
import { type CheckContext, roleBranches, when, wireAt } from '../context.ts'
import type { Unknown } from '../rule.ts'
import { noLine } from '../wiring/loop.ts'

/** A set with a whole handset on a line. */
export interface Speaking extends SpeechPath {
  readonly socket: NetSocket
}

/** Whether a set has a handset at all: a part to speak or hear with, or cores that end in one. */
export function hasHandset(context: CheckContext, place: NetPlace = context.place): boolean {
  return (
    place.cores.some((core) => core.endsIn === 'handset') ||
    context.net.branches.some(
      ({ part }) => part.place === place.place && (part.role === 'sender' || part.role === 'receiver'),
    )
  )
}

/** A verdict where nothing can be said, in speech. */
export function notSaid(context: CheckContext, check: string, says: string): Unknown {
  return {
    ...noLine(context, check),
    condition: when(context, 'off-hook/speech'),
    reason: 'undetermined',
    says,
  }
}

/** Why a speech check has no answer before any figure is asked for; undefined where there is a path. */
export function unasked(context: CheckContext, check: string): Unknown | undefined {
  if (!hasHandset(context)) return notSaid(context, check, 'The set has no handset.')
  const { net, place } = context
  const wires = [wireAt(context, 'a'), wireAt(context, 'b')]
  if (net.line === undefined || place.socket === undefined || wires.includes(undefined))
    return noLine(context, check)
  return undefined
}

/** The whole path of the examined set; undefined where a part of it is missing. */
export function speaking(context: CheckContext): Speaking | undefined {
  const [sender] = roleBranches(context, 'sender')
  const [receiver] = roleBranches(context, 'receiver')
  const { line } = context.net
  const { socket } = context.place
  if (sender === undefined || receiver === undefined || line === undefined || socket === undefined) return
  return { line, sender, receiver, socket }
}

/** A verdict that gives its figure and has no limit to compare it with. */
export function noLimit(
  context: CheckContext,
  check: string,
  figure: Figure,
  says: string,
  others: readonly Figure[],
): Unknown {
  const lost = figure.state === 'no-convergence'
  return {
    ...notSaid(context, check, lost ? 'No direct-current point was found that suits all parts.' : says),
    subject: context.place.place,
    reason: lost ? 'no-convergence' : 'no-limit',
    figure,
    consequences: others.map((one) => ({ figure: one })),
  }
}

/** Less than this for 1 V is no speech, A: it leaks through open contacts. */
export const NO_SPEECH = 1e-6

/** The points from one end of a part to the other along links, where links join them. */
export function shortedBy(context: CheckContext, part: Branch): readonly string[] | undefined {
  const links = linksOf(conducting(context.net, when(context, 'off-hook/speech'), 'direct'))
  const path = pathBetween(context.net, links, part.from, part.to)
  return path?.nodes.map((node) => nodeName(context.net, node))
}

/** Ids from the terminals of a handset part to its far ends: how its cores land. */
export function corePath(context: CheckContext, part: Branch): readonly string[] {
  const name = (node: number): string => nodeName(context.net, node)
  return context.place.cores
    .filter((core) => core.far === part.from || core.far === part.to)
    .flatMap((core) => [core.far, ...(core.lands === undefined ? [] : [core.lands])].map(name))
}

/** How far one size is below another, dB; undefined where there is nothing to compare. */
export function below(value: number | null, reference: number | null): number | undefined {
  if (value === null || reference === null || value <= 0 || reference <= 0) return undefined
  return 20 * Math.log10(reference / value)
}

/** Decibels as people write them in a sentence. */
export function decibels(value: number): string {
  return `${Math.abs(value) < 10 ? Math.abs(value).toFixed(1) : Math.round(Math.abs(value))} dB`
}
