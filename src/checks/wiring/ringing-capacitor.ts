/** One capacitor in the way of a bell's current: the socket's on a ringing lead, the set's own on the pair. */

import type { Changes, Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { onHookLeakage } from '../../figures/loop.ts'
import { ringingCapacitors } from '../../figures/ringing.ts'
import { type Choice, capacitive } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { joinedTo } from '../../netlist/paths.ts'
import { type CheckContext, type Rule, ringingFrequency, when } from '../context.ts'
import { limitOf } from '../limits.ts'
import { judgeAndMend, type Mended } from '../mends.ts'
import { bellCurrent, perBell } from './bell-ends.ts'
import { leadMeetsBell } from './bell-feed.ts'
import { noLine } from './loop.ts'

/** A bell that gets less than this is silent, A: it leaks through open contacts. */
const SILENT = 1e-6

/** Whether a socket's capacitor feeds the ringing lead to which this set is plugged; others carry others' current. */
function onItsLead({ net, place }: CheckContext, branch: Branch): boolean {
  const lead = place.socket?.ringing
  if (branch.part.sort !== 'socket' || lead === undefined) return false
  const wires: Choice = ({ part, form }) =>
    form === 'equation' && (part.sort === 'cable' || (part.sort === 'socket' && part.role === 'link'))
  const joined = joinedTo(net, wires, lead)
  return joined.has(branch.from) || joined.has(branch.to)
}

/** A capacitor that may go, and what stands in its place. */
interface Going {
  readonly mend: string
  readonly changes: Changes
}

/** How each of several capacitors could go: the set's own first, out or with a strap in its place; then a socket's. */
function waysOut(context: CheckContext, carrying: readonly Branch[]): readonly Going[] {
  const mine = ({ part }: Branch): boolean => part.place === context.place.place
  const own = carrying.filter((one) => mine(one) && one.part.sort === 'part')
  return [
    ...own.flatMap(({ part, index, from, to }): readonly Going[] => [
      {
        mend: `with the set unplugged, take ${part.name} out: the bell then rings on the capacitor that is left`,
        changes: { lifted: [index] },
      },
      {
        mend: `with the set unplugged, take ${part.name} out and put a strap or a bell resistor in its place: the bell then rings on the capacitor that is left`,
        changes: { lifted: [index], added: [{ from, to }] },
      },
    ]),
    ...carrying
      .filter(({ part }) => part.sort === 'socket')
      .map(({ id, index }): Going => {
        const socket = id.split('/')[0] ?? id
        return {
          mend: `let the ringing lead begin in one socket only: without the capacitor of ${socket} the bell still rings; the wires of a socket are live, and local codes and licensed practice decide who may work there`,
          changes: { lifted: [index] },
        }
      }),
  ]
}

/** The capacitor that can go so that the bell still rings and no direct current flows that did not before; tried. */
function spareMend(
  context: CheckContext,
  bell: Branch,
  carrying: readonly Branch[],
  count: (changes: Changes) => Figure,
): Mended {
  const least = bell.part.law.sounds?.(bell.part.spec)?.current ?? SILENT
  const leak = (changes: Changes): number =>
    amountOf(context.figure(onHookLeakage(context.net, context.place, when(context, 'on-hook'), changes)))
  const most = Math.max(SILENT, leak({}))
  for (const { mend, changes } of waysOut(context, carrying)) {
    const [rings] = bellCurrent(context, bell, changes)
    const left = count(changes)
    if (left.value !== 1 || amountOf(rings?.figure) < least || leak(changes) > most) continue
    return { mend, consequences: [{ figure: count({}), mended: left }] }
  }
  return {
    mend: 'none of them can go by itself, which was tried: the bell would be silent or direct current would flow; see which way the current is meant to take, by the ringing lead or from the pair, and undo the other',
  }
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
      const byLead = leadMeetsBell(context, bell)
      const candidates = net.branches.filter(
        (branch) =>
          stores(branch) &&
          branch.part.role === undefined &&
          // a bell on the pair has nothing of what the socket's capacitor passes to others
          (branch.part.place === place.place || (byLead && onItsLead(context, branch))),
      )
      const [rings] = bellCurrent(context, bell)
      const counted = (changes: Changes): Figure =>
        context.figure(
          ringingCapacitors(
            net,
            bell,
            candidates,
            condition,
            ringingFrequency(context),
            stores(bell),
            changes,
          ),
        )
      const count = counted({})
      if (amountOf(rings?.figure) < SILENT) {
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
      return judgeAndMend(
        {
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
          tight: '',
          consequences: bellCurrent(context, bell),
        },
        () =>
          count.value === 0
            ? { mend: 'put one capacitor into the way of the ringing current' }
            : spareMend(context, bell, carrying, counted),
      )
    }),
}
