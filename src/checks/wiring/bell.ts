/** The bell: fed by the ringing lead, which touches nothing else, and returned to the a wire, through one capacitor. */
import { between } from '../../figures/between.ts'
import type { Figure } from '../../figures/figure.ts'
import { ringingCapacitors, ringingCurrent } from '../../figures/ringing.ts'
import { type Choice, capacitive, conducting, without } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { joinedTo, pathBetween } from '../../netlist/paths.ts'
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
import type { Consequence, Verdict } from '../rule.ts'
import { noLine } from './loop.ts'

function perBell(
  context: CheckContext,
  check: string,
  judgeOne: (bell: Branch) => Verdict,
): readonly Verdict[] {
  const bells = roleBranches(context, 'sounder')
  if (bells.length > 0) return bells.map(judgeOne)
  return [{ ...noLine(context, check), reason: 'undetermined', says: 'The set has no bell.' }]
}

function bellCurrent(context: CheckContext, bell: Branch): readonly Consequence[] {
  const { line } = context.net
  if (line?.ringingFrequency === undefined || context.place.socket === undefined) return []
  const condition = when(context, 'on-hook/ringing')
  return [
    {
      figure: context.figure(ringingCurrent(bell, condition, line.ringingFrequency, line.ringingHarmonics)),
    },
  ]
}

/** Resistance from a node to each end of the bell, set alone and on-hook, bell taken out. */
function toEnds(
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

/** A bell that gets less than this is silent, A: it leaks through open contacts. */
const SILENT = 1e-6

const OPEN = Number.POSITIVE_INFINITY

function nearest(
  ends: readonly { end: number; figure: Figure }[],
): { end: number; figure: Figure } | undefined {
  return [...ends].sort((p, q) => (p.figure.value ?? OPEN) - (q.figure.value ?? OPEN))[0]
}

function trace(context: CheckContext, bell: Branch, from: number | undefined, to: number): readonly string[] {
  if (from === undefined) return []
  const choice = without(conducting(context.net, when(context, 'on-hook'), 'direct'), [
    bell.index,
    ...plugLinks(context),
  ])
  return (pathBetween(context.net, choice, from, to)?.nodes ?? [from]).map(
    (node) => context.net.nodes[node] ?? '',
  )
}

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
    if (lead === undefined || pair.length < 2) return [noLine(context, ringingLeadAlone.id)]
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

/** Does the bell return to the a wire, the one on the other side of the capacitor? */
export const bellReturn: Rule = {
  id: 'wiring.bell-return',
  asks: 'Does the bell return to the a wire?',
  run: (context) =>
    perBell(context, bellReturn.id, (bell) => {
      const a = wireAt(context, 'a')
      const b = wireAt(context, 'b')
      if (a === undefined || b === undefined) return noLine(context, bellReturn.id)
      const lead = wireAt(context, 'ringing') ?? context.place.plug[3]
      const fed = lead === undefined ? undefined : nearest(toEnds(context, bell, lead))
      const feeds = fed?.figure.value != null && fed.figure.value < 1e6
      const ends = toEnds(context, bell, a).filter(({ end }) => !feeds || end !== fed?.end)
      const back = nearest(ends)
      if (back === undefined) return noLine(context, bellReturn.id)
      const toB = toEnds(context, bell, b).find(({ end }) => end === back.end)?.figure.value ?? OPEN
      const where =
        toB < 1e6 ? 'the b wire, so that it lies across the ringing capacitor' : 'neither line wire'
      return judge({
        check: bellReturn.id,
        subject: bell.id,
        figure: back.figure,
        limit: limitOf(context.limits, 'bell-return'),
        path: trace(context, bell, back.end, (back.figure.value ?? OPEN) < 1e6 ? a : b),
        says: { good: 'The bell returns to the a wire.', bad: `The bell returns to ${where}.` },
        mend:
          toB < 1e6
            ? 'exchange the two line cores at the terminals of the set'
            : 'join the far end of the bell to the a wire',
        consequences: bellCurrent(context, bell),
      })
    }),
}

/** Whether a socket's capacitor feeds the ringing lead to which this set is plugged; others carry others' current. */
function onItsLead({ net, place }: CheckContext, branch: Branch): boolean {
  const lead = place.socket?.ringing
  if (branch.part.sort !== 'socket' || lead === undefined) return false
  const wires: Choice = ({ part, form }) =>
    form === 'equation' && (part.sort === 'cable' || (part.sort === 'socket' && part.role === 'link'))
  const joined = joinedTo(net, wires, lead)
  return joined.has(branch.from) || joined.has(branch.to)
}

/** Which of two capacitors can go: the set's own where it has one that a socket's stands in for. */
function spareMend(context: CheckContext, carrying: readonly Branch[]): string {
  const own = carrying.some(({ part }) => part.place === context.place.place)
  const lead = context.place.socket?.ringing !== undefined
  if (own && lead) return 'take the set’s own ringing capacitor out; its socket has one'
  return 'let one capacitor only lie in the way of this bell’s current, and take the other out'
}

/** Does exactly one capacitor carry the bell's ringing current? */
export const oneRingingCapacitor: Rule = {
  id: 'wiring.one-ringing-capacitor',
  asks: 'Is there one ringing capacitor, not two?',
  run: (context) =>
    perBell(context, oneRingingCapacitor.id, (bell) => {
      const { net, place } = context
      if (net.line?.ringingFrequency === undefined || place.socket === undefined)
        return noLine(context, oneRingingCapacitor.id)
      const condition = when(context, 'on-hook/ringing')
      const stores = capacitive(net, condition)
      const candidates = net.branches.filter(
        (branch) =>
          stores(branch) &&
          branch.part.role === undefined &&
          (branch.part.place === place.place || onItsLead(context, branch)),
      )
      const [rings] = bellCurrent(context, bell)
      const count = context.figure(
        ringingCapacitors(net, bell, candidates, condition, ringingFrequency(context), stores(bell)),
      )
      if ((rings?.figure.value ?? 0) < SILENT) {
        const says = 'The bell gets no ringing current, so no capacitor carries any.'
        return {
          ...noLine(context, oneRingingCapacitor.id),
          subject: bell.id,
          reason: 'undetermined',
          says,
          figure: count,
        }
      }
      const carrying = candidates.filter((one) => {
        const alone = ringingCapacitors(net, bell, [one], condition, ringingFrequency(context))
        return context.figure(alone).value === 1
      })
      const limit = limitOf(context.limits, 'one-capacitor')
      return judge({
        check: oneRingingCapacitor.id,
        subject: bell.id,
        figure: count,
        // none at all is as wrong as two
        limit: count.value === 0 ? { ...limit, side: 'at-least' } : limit,
        path: carrying.map((branch) => branch.id),
        says: {
          good: 'No second capacitor carries ringing current.',
          bad:
            count.value === 0
              ? 'No capacitor carries the ringing current of this bell.'
              : 'More than one capacitor carries the ringing current of this bell.',
        },
        mend:
          count.value === 0
            ? 'put one capacitor into the way of the ringing current'
            : spareMend(context, carrying),
        consequences: bellCurrent(context, bell),
      })
    }),
}
