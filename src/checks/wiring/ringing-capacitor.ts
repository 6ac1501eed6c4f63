import { ringingCapacitors } from '../../figures/ringing.ts'
import { type Choice, capacitive } from '../../netlist/conduct.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { joinedTo } from '../../netlist/paths.ts'
import { type CheckContext, type Rule, ringingFrequency, when } from '../context.ts'
import { judge } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { bellCurrent, perBell } from './bell-ends.ts'
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
