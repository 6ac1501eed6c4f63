/** The ringing lead: it reaches the bell, and nothing else. */
import { between } from '../../figures/between.ts'
import { conducting, without } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
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
import type { Verdict } from '../rule.ts'
import { bellCurrent, nearest, perBell, toEnds, trace } from './bell-ends.ts'
import { noLine } from './loop.ts'

/** Does the ringing lead reach the bell? */
export const ringingLeadToBell: Rule = {
  id: 'wiring.ringing-lead-to-bell',
  asks: 'Does the ringing lead reach the bell?',
  run: (context) =>
    perBell(context, ringingLeadToBell.id, (bell) => {
      // a set in no socket is asked what it would do with a ringing lead
      const { socket, plug } = context.place
      const lead = wireAt(context, 'ringing') ?? (socket === undefined ? plug[3] : undefined)
      if (lead === undefined) return fromThePair(context, bell)
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
          bad:
            lead === undefined
              ? 'No ringing lead comes to this plug.'
              : 'The ringing lead does not reach the bell.',
        },
        mend: `land the ringing core on the terminal that leads to ${nodeShort(context, near.end)}`,
        consequences: bellCurrent(context, bell),
      })
    }),
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
  const limit = {
    value: least,
    side: 'at-least' as const,
    unit: 'A' as const,
    source: 'sheet of this set',
    clause: 'rings from',
    grade: 'SHEET' as const,
  }
  const verdict = judge({
    check: ringingLeadToBell.id,
    subject: bell.id,
    figure: rings.figure,
    limit,
    path: [],
    says: { good: says, bad: `${lacks}, and the bell gets too little from the pair.` },
    mend: socket
      ? 'use a socket or an adapter that has a ringing lead, or give the bell a capacitor of its own to the pair'
      : 'lead a ringing core to the bell, or give it a capacitor of its own to the pair',
  })
  return verdict.state === 'holds' ? { ...verdict, remark: says } : verdict
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
    return [
      judge({
        check: ringingLeadAlone.id,
        subject: context.place.place,
        figure: worst(figures, 'at-least'),
        limit: limitOf(context.limits, 'ringing-lead-alone'),
        path: strayPath(context, lead, wires),
        says: {
          good: 'With the bell taken out, the ringing lead reaches no line wire and no handset core.',
          bad: 'The ringing lead reaches a line wire or a handset core by another way than through the bell.',
        },
        mend: 'take out what joins them: an own capacitor left in the bell path, a strap, or a core on the wrong terminal',
      }),
    ]
  },
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
  return (shortest?.nodes ?? [lead]).map((node) => net.nodes[node] ?? '')
}
