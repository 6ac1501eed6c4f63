/** What must touch nothing: spare cores and terminals, earth, metal that a hand can touch. */

import { between } from '../../figures/between.ts'
import type { Figure } from '../../figures/figure.ts'
import { earthLeakage } from '../../figures/loop.ts'
import { conducting, without } from '../../netlist/conduct.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { pathBetween } from '../../netlist/paths.ts'
import {
  type CheckContext,
  nodeShort,
  plugLinks,
  type Rule,
  ringingFrequency,
  when,
  wireAt,
} from '../context.ts'
import { type Evidence, graver, judge, worst } from '../judge.ts'
import { limitOf } from '../limits.ts'
import type { Verdict } from '../rule.ts'
import { noLine } from './loop.ts'

/** Wiring numbers of the plug that carry the line pair and the ringing lead. */
const IN_USE: ReadonlySet<string> = new Set(['2', '3', '5'])

/** Every way to hold handset, dial and key. */
const ALL_WAYS: readonly string[] = ['on-hook', 'off-hook'].flatMap((hook) =>
  ['', '/make', '/break'].flatMap((dial) => ['', '/key'].map((key) => hook + dial + key)),
)

/** The same with the recall key up. */
const KEY_UP: readonly string[] = ALL_WAYS.filter((words) => !words.endsWith('/key'))

/** What may be live: the line wires, and the ringing lead where one comes. */
function wiresOf(context: CheckContext): readonly number[] {
  const wires = [wireAt(context, 'a'), wireAt(context, 'b'), wireAt(context, 'ringing')]
  return wires.filter((node) => node !== undefined)
}

/** Direct current or ringing: their limits are different ones. */
type Kind = 'direct' | 'ringing'

/** The least of what leads from a node to anything live. */
function leastToWires(context: CheckContext, node: number, written: readonly string[], by: Kind): Figure {
  return worst(
    wiresOf(context).map((wire) => leastTo(context, node, wire, written, by)),
    'at-least',
  )
}

/** The least of what lies between two nodes of the set alone, to direct current or at ringing frequency. */
function leastTo(
  context: CheckContext,
  node: number,
  other: number,
  written: readonly string[],
  by: Kind,
): Figure {
  const lifted = plugLinks(context)
  const at = by === 'direct' ? {} : { frequency: ringingFrequency(context) }
  const figures = written.map((words) =>
    context.figure(between(context.net, node, other, { condition: when(context, words), lifted, ...at })),
  )
  return worst(figures, 'at-least')
}

/** Judges what lies between by direct current and by ringing, each against its own limit; the graver of the two. */
function judgeApart(
  context: CheckContext,
  reach: (by: Kind) => Figure,
  limits: Readonly<Record<Kind, string>>,
  evidence: Omit<Evidence, 'figure' | 'limit'>,
): Verdict {
  const [direct, ringing] = (['direct', 'ringing'] as const).map((by) =>
    judge({ ...evidence, figure: reach(by), limit: limitOf(context.limits, limits[by]) }),
  )
  if (direct === undefined || ringing === undefined) throw new RangeError('nothing was judged')
  return graver(ringing, direct) < 0 ? ringing : direct
}

function nothing(context: CheckContext, check: string, says: string): Verdict {
  return {
    check,
    subject: context.place.place,
    condition: when(context, 'on-hook'),
    state: 'holds',
    says,
    figure: null,
    limit: null,
    margin: null,
    path: [],
  }
}

const SPARE = { direct: 'spare-free', ringing: 'apart-ringing' } as const
const EARTH_FREE = { direct: 'earth-free', ringing: 'earth-free-ringing' } as const
const TOUCHABLE = { direct: 'touchable-free', ringing: 'apart-ringing' } as const

/** Are spare cores and spare terminals free? */
export const sparesFree: Rule = {
  id: 'wiring.spares-free',
  asks: 'Do spare cores and spare terminals touch nothing live?',
  run(context) {
    const { net, place } = context
    const plug = Object.entries(place.meets)
      .filter(([number]) => !IN_USE.has(number) && !(number === '4' && place.socket?.earth === true))
      .map(([, node]) => node)
    const spares = [...new Set([...place.spare, ...plug])]
    if (spares.length === 0)
      return [nothing(context, sparesFree.id, 'The set has no spare core and no spare terminal.')]
    if (wiresOf(context).length < 2) return [noLine(context, sparesFree.id)]
    return spares.map((node) =>
      judgeApart(context, (by) => leastToWires(context, node, ['on-hook', 'off-hook'], by), SPARE, {
        check: sparesFree.id,
        subject: nodeName(net, node),
        path: [nodeName(net, node)],
        says: {
          good: `${nodeShort(context, node)} touches nothing.`,
          bad: `${nodeShort(context, node)} is spare, but it reaches a line wire.`,
        },
        mend: 'park the core that brings it there, insulated, or take off the strap',
      }),
    )
  },
}

/** Does nothing reach earth while the recall key is up? */
export const earthFree: Rule = {
  id: 'wiring.earth-free',
  asks: 'Does nothing of the set reach earth while the key is up?',
  run: (context) => {
    const wires = wiresOf(context)
    if (wires.length < 2) return [noLine(context, earthFree.id)]
    // where the socket has earth, contact 4 of the plug is the set's own earth
    const earths = [0, ...(context.place.socket?.earth === true ? [context.place.meets[4]] : [])].filter(
      (node) => node !== undefined,
    )
    // where nothing of the set touches earth, one way to hold it stands for all
    const ways = touchesEarth(context) || earths.length > 1 ? KEY_UP : KEY_UP.slice(0, 1)
    const reach = (by: Kind): Figure =>
      worst(
        wires.flatMap((wire) => earths.map((earth) => leastTo(context, wire, earth, ways, by))),
        'at-least',
      )
    const leaks = ['on-hook', 'off-hook'].map((words) =>
      context.figure(earthLeakage(context.net, context.place, when(context, words))),
    )
    return [
      judgeApart(context, reach, EARTH_FREE, {
        check: earthFree.id,
        subject: context.place.place,
        path: ways.length === 1 ? [] : earthPath(context, wires, earths),
        consequences: leaks.map((figure) => ({ figure })),
        says: {
          good: 'No wire of the set reaches earth while the key is up.',
          bad: 'A wire of the set reaches earth with the key up.',
        },
        mend: 'park the earth core, or find the contact that should be open',
      }),
    ]
  },
}

/** Whether any part of the set ends at earth. */
function touchesEarth({ net, place }: CheckContext): boolean {
  return net.branches.some(({ from, to, part }) => part.place === place.place && (from === 0 || to === 0))
}

/** The way from a wire to earth, where there is one. */
function earthPath(
  context: CheckContext,
  wires: readonly number[],
  earths: readonly number[],
): readonly string[] {
  const { net } = context
  for (const words of KEY_UP) {
    const choice = without(conducting(net, when(context, words), 'alternating'), plugLinks(context))
    for (const wire of wires) {
      for (const earth of earths) {
        const path = pathBetween(net, choice, wire, earth)
        if (path !== undefined) return path.nodes.map((node) => nodeName(net, node))
      }
    }
  }
  return []
}

/** Does nothing touchable reach a line wire, in any condition? */
export const touchableFree: Rule = {
  id: 'wiring.touchable-free',
  asks: 'Does no metal that a hand can touch reach a line wire?',
  run(context) {
    const joined = context.place.touchable.filter((one) => one.node !== undefined)
    if (joined.length === 0) {
      return [nothing(context, touchableFree.id, 'No metal that a hand can touch is joined to a terminal.')]
    }
    if (wiresOf(context).length < 2) return [noLine(context, touchableFree.id)]
    return joined.map(({ name, node = 0 }) =>
      judgeApart(context, (by) => leastToWires(context, node, ALL_WAYS, by), TOUCHABLE, {
        check: touchableFree.id,
        subject: name,
        path: [nodeName(context.net, node)],
        says: {
          good: `The ${name} reaches no line wire.`,
          bad: `The ${name} can be touched, and it reaches a line wire. Ringing voltage can hurt: unplug the set now.`,
        },
        mend: `free ${nodeShort(context, node)} from the line before the set is plugged in again`,
      }),
    )
  },
}
