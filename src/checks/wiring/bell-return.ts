/** The way back of the bell: to the a wire, on the other side of the ringing capacitor. */
import { between } from '../../figures/between.ts'
import type { Figure } from '../../figures/figure.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { type CheckContext, plugLinks, type Rule, ringingFrequency, when, wireAt } from '../context.ts'
import { judge } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { bellCurrent, nearest, OPEN, perBell, toEnds, trace } from './bell-ends.ts'
import { noLine } from './loop.ts'

/** What counts as no way at all, ohms: open contacts leak more than this. */
const NO_WAY = 1e6

const reaches = ({ value }: Figure): boolean => (value ?? OPEN) < NO_WAY

/** Does the bell return to the a wire, the one on the other side of the capacitor? */
export const bellReturn: Rule = {
  id: 'wiring.bell-return',
  asks: 'Does the bell return to the a wire?',
  run: (context) =>
    perBell(context, bellReturn.id, (bell) => {
      const a = wireAt(context, 'a')
      const b = wireAt(context, 'b')
      if (a === undefined || b === undefined) return noLine(context, bellReturn.id)
      const toA = toEnds(context, bell, a)
      const fed = fedEnd(context, bell, toA)
      const back = nearest(toA.filter(({ end }) => end !== fed))
      if (back === undefined) return noLine(context, bellReturn.id)
      const own =
        fed === undefined && !reaches(back.figure) ? throughOwnCapacitor(context, bell, a, b) : undefined
      const end = own ?? back
      const toB = toEnds(context, bell, b).find((one) => one.end === end.end)
      const onB = toB !== undefined && reaches(toB.figure)
      const where = onB ? 'the b wire, so that it lies across the ringing capacitor' : 'neither line wire'
      return judge({
        check: bellReturn.id,
        subject: bell.id,
        figure: end.figure,
        limit: limitOf(context.limits, 'bell-return'),
        path: trace(context, bell, end.end, own === undefined && reaches(back.figure) ? a : b),
        says: {
          good:
            own === undefined
              ? 'The bell returns to the a wire.'
              : 'No ringing lead feeds the bell; it lies between the b wire and a capacitor on the a wire.',
          bad: `The bell returns to ${where}.`,
        },
        mend: onB
          ? 'exchange the two line cores at the terminals of the set'
          : 'join the far end of the bell to the a wire',
        consequences: bellCurrent(context, bell),
      })
    }),
}

/** The end of the bell that the ringing lead feeds; a lead that has strayed onto the a wire feeds none. */
function fedEnd(
  context: CheckContext,
  bell: Branch,
  toA: readonly { readonly end: number; readonly figure: Figure }[],
): number | undefined {
  const lead = wireAt(context, 'ringing') ?? context.place.meets[3]
  const fed = lead === undefined ? undefined : nearest(toEnds(context, bell, lead))
  if (fed === undefined || !reaches(fed.figure)) return undefined
  const strays = toA.some(({ end, figure }) => end === fed.end && reaches(figure))
  return strays ? undefined : fed.end
}

/** The end on the b wire of a bell whose other end meets the a wire through a capacitor: right either way round. */
function throughOwnCapacitor(
  context: CheckContext,
  bell: Branch,
  a: number,
  b: number,
): { end: number; figure: Figure } | undefined {
  const back = nearest(toEnds(context, bell, b))
  if (back === undefined || !reaches(back.figure)) return undefined
  const other = back.end === bell.from ? bell.to : bell.from
  const lifted = [bell.index, ...plugLinks(context)]
  const condition = when(context, 'on-hook')
  const frequency = ringingFrequency(context)
  const way = context.figure(between(context.net, a, other, { condition, lifted, frequency }))
  return (way.value ?? OPEN) <= limitOf(context.limits, 'bell-return').value ? back : undefined
}
