/** The ringing lead: it reaches the bell, and nothing else. */

import { between } from '../../figures/between.ts'
import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { capacitive, conducting, without } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { pathBetween } from '../../netlist/paths.ts'
import {
  type CheckContext,
  nodeShort,
  plugLinks,
  type Rule,
  ringingFrequency,
  roleBranches,
  when,
  wireAt,
} from '../context.ts'
import { judge, worst } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { judgeAndMend, type Mended, thirdWireWords, withThirdWire } from '../mends.ts'
import type { Verdict } from '../rule.ts'
import { ringsFrom } from '../sheet-limit.ts'
import { bellCurrent, nearest, perBell, toEnds, trace } from './bell-ends.ts'
import { leadMeetsBell, leadOf, pairMeetsBell, rungFromPair } from './bell-feed.ts'
import { noLine } from './loop.ts'

/** Does the ringing lead reach the bell? */
export const ringingLeadToBell: Rule = {
  id: 'wiring.ringing-lead-to-bell',
  asks: 'Does the ringing lead reach the bell?',
  run: (context) =>
    perBell(context, ringingLeadToBell.id, (bell) => {
      // a set in no socket is asked what it would do with a ringing lead
      const lead = leadOf(context)
      if (lead === undefined) return fromThePair(context, bell)
      const rung = rungFromPair(context, bell)
      if (rung !== undefined) return needsNoLead(context, bell, rung)
      if (context.net.line === undefined && !leadMeetsBell(context, bell) && pairMeetsBell(context, bell))
        return { ...noLine(context, ringingLeadToBell.id), subject: bell.id }
      const near = nearest(toEnds(context, bell, lead))
      if (near === undefined) return noLine(context, ringingLeadToBell.id)
      return judge({
        check: ringingLeadToBell.id,
        subject: bell.id,
        figure: near.figure,
        limit: limitOf(context.limits, 'ringing-lead-reach'),
        path: trace(context, bell, lead, near.end),
        says: {
          good: 'The ringing lead reaches the bell.',
          bad: 'The ringing lead does not reach the bell.',
        },
        mend: `land the ringing core on the terminal that leads to ${nodeShort(context, near.end)}`,
        consequences: bellCurrent(context, bell),
      })
    }),
}

/** A ringing core that is left free on purpose: the bell takes its current from the pair, and rings by itself. */
function needsNoLead(context: CheckContext, bell: Branch, figure: Figure): Verdict {
  const least = bell.part.law.sounds?.(bell.part.spec)?.current ?? 0
  const says =
    'The bell takes its current from the pair and rings; the ringing core is joined to nothing that leads to it.'
  const verdict = judge({
    check: ringingLeadToBell.id,
    subject: bell.id,
    figure,
    limit: ringsFrom(least),
    path: [leadOf(context)].flatMap((node) => (node === undefined ? [] : [nodeName(context.net, node)])),
    says: { good: says, bad: says },
    mend: 'little is left over: on the ringing lead the bell may get more',
  })
  return verdict.state === 'holds' ? { ...verdict, remark: says } : verdict
}

/** A set whose plug has no ringing core, or whose socket has no ringing lead: its bell must get its current from the pair. */
function fromThePair(context: CheckContext, bell: Branch): Verdict {
  const sounds = bell.part.law.sounds?.(bell.part.spec)
  const least = sounds?.current
  const [rings] = bellCurrent(context, bell)
  const base = { ...noLine(context, ringingLeadToBell.id), subject: bell.id }
  if (rings === undefined || least === undefined) return base
  if (sounds?.never !== undefined) {
    const { because, mend } = sounds.never
    const says = `No current rings this bell: ${because}.`
    const { check, subject, condition, path } = base
    return {
      check,
      subject,
      condition,
      path,
      figure: rings.figure,
      limit: null,
      margin: null,
      state: 'fails',
      says,
      mend,
    }
  }
  const socket = context.place.socket !== undefined && context.place.socket.ringing === undefined
  const lacks = socket ? 'No ringing lead comes to this socket' : 'The plug has no ringing core'
  const says = `${lacks}; the bell takes its current from the pair.`
  const verdict = judgeAndMend(
    {
      check: ringingLeadToBell.id,
      subject: bell.id,
      figure: rings.figure,
      limit: ringsFrom(least),
      // the contact that meets nothing
      path: [context.place.plug[3]].flatMap((node) =>
        node === undefined ? [] : [nodeName(context.net, node)],
      ),
      says: { good: says, bad: `${lacks}, and the bell gets too little from the pair.` },
      tight: 'little is left over; a ringing lead, or a larger capacitor of its own, gives the bell more',
    },
    () => mendOfPair(context, bell, least, rings.figure, socket),
  )
  return verdict.state === 'holds' ? { ...verdict, remark: says } : verdict
}

/** A third wire to the socket where one can be run and the bell then rings, which is tried; else what could be done. */
function mendOfPair(
  context: CheckContext,
  bell: Branch,
  least: number,
  figure: Figure,
  socket: boolean,
): Mended {
  const third = withThirdWire(context)
  const after = third && context.trial(third.installation)
  const there = after?.net.branches[after.net.branchIndex.get(bell.id) ?? -1]
  const [then] = after !== undefined && there !== undefined ? bellCurrent(after, there) : []
  if (third !== undefined && amountOf(then?.figure) >= least) {
    const mend = `${thirdWireWords(third)}; or use an adapter lead that makes a ringing lead of its own`
    return { mend, consequences: then === undefined ? [] : [{ figure, mended: then.figure }] }
  }
  return {
    mend: socket
      ? 'use a socket or an adapter that has a ringing lead, or give the bell a capacitor of its own to the pair'
      : 'lead a ringing core to the bell, or give it a capacitor of its own to the pair',
  }
}

/** Does the ringing lead reach nothing but the bell? */
export const ringingLeadAlone: Rule = {
  id: 'wiring.ringing-lead-alone',
  asks: 'Does the ringing lead touch nothing but the bell?',
  run(context) {
    const lead = wireAt(context, 'ringing')
    const pair = [wireAt(context, 'a'), wireAt(context, 'b')].filter((node) => node !== undefined)
    if (pair.length < 2) return [noLine(context, ringingLeadAlone.id)]
    if (lead === undefined) return [noLead(context)]
    // a receiver loop touches no line wire, yet nobody may hold ringing voltage in his hand
    const handset = context.place.cores.filter((core) => core.endsIn === 'handset').map((core) => core.far)
    const wires = [...pair, ...handset]
    const bells = roleBranches(context, 'sounder').map((bell) => bell.index)
    const lifted = [...bells, ...plugLinks(context)]
    const figures = ['on-hook', 'off-hook'].flatMap((written) =>
      wires.map((wire) =>
        context.figure(
          between(context.net, lead, wire, {
            condition: when(context, written),
            lifted,
            frequency: ringingFrequency(context),
          }),
        ),
      ),
    )
    const limit = limitOf(context.limits, 'ringing-lead-alone')
    const path = strayPath(context, lead, wires)
    return [
      judgeAndMend(
        {
          check: ringingLeadAlone.id,
          subject: context.place.place,
          figure: worst(figures, 'at-least'),
          limit,
          path,
          says: {
            good: 'With the bell taken out, the ringing lead reaches no line wire and no handset core.',
            bad: 'The ringing lead reaches a line wire or a handset core by another way than through the bell.',
          },
          tight: '',
        },
        () => ({ mend: strayMend(context, path, lead, wires, limit.value) }),
      ),
    ]
  },
}

/** A capacitor on the way whose going frees the lead and lets every bell ring, which is tried; else where to look. */
function strayMend(
  context: CheckContext,
  path: readonly string[],
  lead: number,
  wires: readonly number[],
  least: number,
): string {
  const { net, place } = context
  const bells = roleBranches(context, 'sounder')
  const stores = capacitive(net, when(context, 'on-hook'))
  const onWay = net.branches.filter(
    (one) =>
      one.part.place === place.place &&
      one.part.sort === 'part' &&
      stores(one) &&
      path.includes(nodeName(net, one.from)) &&
      path.includes(nodeName(net, one.to)),
  )
  const frees = onWay.find(({ index }) => {
    const lifted = [index, ...bells.map((bell) => bell.index), ...plugLinks(context)]
    const how = { condition: when(context, 'on-hook'), lifted, frequency: ringingFrequency(context) }
    const free = wires.every(
      (wire) => (context.figure(between(net, lead, wire, how)).value ?? Number.POSITIVE_INFINITY) >= least,
    )
    return (
      free &&
      bells.every((bell) => {
        const [then] = bellCurrent(context, bell, { lifted: [index] })
        return amountOf(then?.figure) >= (bell.part.law.sounds?.(bell.part.spec)?.current ?? 0)
      })
    )
  })
  return frees === undefined
    ? 'follow the path and undo what joins them: a strap, or a core on the wrong terminal'
    : `with the set unplugged, take ${frees.part.name} out, which joins them; the bell still rings without it`
}

/** A set to which no ringing lead comes stands on a line all the same. */
function noLead(context: CheckContext): Verdict {
  const { socket } = context.place
  const at = socket !== undefined && socket.ringing === undefined ? 'this socket' : 'this plug'
  const says = `No ringing lead comes to ${at}, so that there is none to stray.`
  return { ...noLine(context, ringingLeadAlone.id), reason: 'undetermined', says }
}

/** The way by which the ringing lead strays, where there is one. */
function strayPath(context: CheckContext, lead: number, wires: readonly number[]): readonly string[] {
  const { net } = context
  const bells = roleBranches(context, 'sounder').map((bell) => bell.index)
  const all = conducting(net, when(context, 'off-hook'), 'alternating')
  const choice = without(all, [...bells, ...plugLinks(context)])
  const paths = wires.map((wire) => pathBetween(net, choice, lead, wire)).filter((path) => path !== undefined)
  const [shortest] = paths.sort((p, q) => p.nodes.length - q.nodes.length)
  return (shortest?.nodes ?? [lead]).map((node) => nodeName(net, node))
}
