/** Metal that a hand can touch, on a line wire. */
import { type CheckContext, nodeShort } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { touchableFree } from '../checks/wiring/free.ts'
import type { Move } from '../sheet/model.ts'
import { become } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, judged, mendWords } from './try-mend.ts'
import { ids, landCore, ownBranches, takeStrapOff } from './wires.ts'

const SHOWS = [
  touchableFree.id,
  'wiring.loop-through-set',
  'wiring.loop-closed-off-hook',
  'wiring.ringing-lead-to-bell',
  'wiring.bell-return',
]

/** A base, a cradle or a dial ring that a hand touches while the line rings. */
export const touchableLive: FaultRule = {
  id: 'touchable-live',
  title: 'something touchable on a line wire',
  explains: [touchableFree.id],
  find: (context, verdicts) =>
    failing(verdicts, touchableFree.id).map((verdict) => {
      const node = context.place.touchable.find(({ name }) => name === verdict.subject)?.node
      return live(context, verdicts, verdict, node)
    }),
}

function live(
  context: CheckContext,
  verdicts: readonly Verdict[],
  { subject, figure, condition }: Verdict,
  node: number | undefined,
): Finding {
  const lists = node === undefined ? [] : waysOff(context, node)
  const tried = firstThatMends(context, verdicts, lists, SHOWS)
  const after = tried && judged(tried.after, [touchableFree.id]).find((one) => one.subject === subject)
  const lies = node === undefined ? [] : thereOn(context, node)
  const where = node === undefined ? '' : ` at ${nodeShort(context, node)} (${lies.join(', ')})`
  return {
    subject,
    condition: figure?.condition ?? condition,
    says: `The ${subject} can be touched and is joined to a line wire${where}. The line is live and ringing voltage can hurt: unplug the set now, and touch nothing before it is unplugged.`,
    path: ids(context, [node, ...lastOf(context, node)]),
    consequences: become(figure ?? undefined, after?.figure ?? undefined),
    ...(tried === undefined
      ? {
          mend: 'unplug the set, free the metal from the line, and measure it before the set is plugged in again; local codes and licensed practice come first',
        }
      : {
          mend: `${mendWords(tried)}; measure before the set is plugged in again, local codes and licensed practice come first`,
          moves: tried.moves,
        }),
  }
}

/** Names of cores and straps that lie on a terminal. */
function thereOn(context: CheckContext, node: number): readonly string[] {
  return ownBranches(context)
    .filter(({ from, to }) => from === node || to === node)
    .map(({ part }) => part.name)
}

/** The other ends of what lies on a terminal. */
function lastOf(context: CheckContext, node: number | undefined): readonly number[] {
  return ownBranches(context)
    .filter(({ from, to }) => from === node || to === node)
    .map(({ from, to }) => (from === node ? to : from))
}

/** What could be done: cores home, straps off, both; parts out. */
function waysOff(context: CheckContext, node: number): readonly (readonly Move[])[] {
  const cores = context.place.cores
    .filter(({ lands }) => lands === node)
    .map((core): Move => {
      const home = core.meant.find((terminal) => terminal !== node)
      return home === undefined ? { do: 'park core', what: core.name } : landCore(context, core, home)
    })
  const there = ownBranches(context).filter(({ from, to }) => from === node || to === node)
  const straps = there.filter(({ part }) => part.sort === 'strap').map((one) => takeStrapOff(context, one))
  const parts = there
    .filter(({ part }) => part.sort === 'part')
    .map(({ part }): Move => ({ do: 'lift part', what: part.name }))
  return [cores, straps, [...cores, ...straps], [...cores, ...straps, ...parts]].filter(
    (one) => one.length > 0,
  )
}
