/** The bell of a set whose pair is right, returned to the b wire inside the set. */
import { type CheckContext, nodeShort, roleBranches, when, wireAt } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { bellReturn } from '../checks/wiring/bell-return.ts'
import { conducting, linksOf, without } from '../netlist/conduct.ts'
import type { Branch } from '../netlist/netlist.ts'
import { joinedTo, pathBetween } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'
import { become, bellCurrent, leakageNow } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf, type Tried } from './try-mend.ts'
import { fitStrap, ids, nearestStrap, takeStrapOff } from './wires.ts'

const EXPLAINS = [bellReturn.id, 'wiring.loop-open-on-hook', 'bell.rings-alone', 'line.leakage']
const SHOWS = [
  ...EXPLAINS.slice(0, 2),
  'wiring.ringing-lead-to-bell',
  'wiring.ringing-lead-alone',
  'wiring.no-part-left-out',
]

/** A strap or a part brings the far end of the bell to the b wire in place of the a wire. */
export const bellReturnedWrong: FaultRule = {
  id: 'bell-returned-wrong',
  title: 'bell returned to the wrong wire',
  explains: EXPLAINS,
  yieldsTo: ['mirrored-numbering', 'reversed-at-cord'],
  find: (context, verdicts) =>
    failing(verdicts, bellReturn.id).flatMap(({ subject }) => {
      const bell = roleBranches(context, 'sounder').find(({ id }) => id === subject)
      return bell === undefined ? [] : wrong(context, verdicts, bell)
    }),
}

function wrong(context: CheckContext, verdicts: readonly Verdict[], bell: Branch): readonly Finding[] {
  const b = wireAt(context, 'b')
  if (b === undefined) return []
  for (const end of [bell.to, bell.from]) {
    const way = wayTo(context, bell, end, b)
    const tried = way && strapElsewhere(context, verdicts, bell, end, way.straps)
    if (way === undefined || tried === undefined) continue
    return [
      {
        subject: bell.id,
        condition: when(context, 'on-hook/ringing'),
        says: `The ${bell.part.name} goes from ${nodeShort(context, end)} back to the b wire, from which the ringing capacitor comes, and lies across it in place of across the line.`,
        path: ids(context, way.nodes),
        consequences: [
          ...become(bellCurrent(context, bell), bellCurrent(tried.after, bell)),
          ...become(leakageNow(context), leakageNow(tried.after)),
        ],
        ...mendOf(tried),
      },
    ]
  }
  return []
}

/** The links from an end of the bell to a wire. */
function wayTo(
  context: CheckContext,
  bell: Branch,
  end: number,
  wire: number,
): { readonly nodes: readonly number[]; readonly straps: readonly Branch[] } | undefined {
  const { net } = context
  const links = linksOf(without(conducting(net, when(context, 'on-hook'), 'direct'), [bell.index]))
  const path = pathBetween(net, links, end, wire)
  if (path === undefined) return undefined
  const straps = path.branches.map((k) => net.branches[k]).filter((one) => one?.part.sort === 'strap')
  return { nodes: path.nodes, straps: straps.filter((one) => one !== undefined) }
}

/** One of the straps on the way comes off, and the bell's end goes to the a wire by a strap. */
function strapElsewhere(
  context: CheckContext,
  verdicts: readonly Verdict[],
  bell: Branch,
  end: number,
  straps: readonly Branch[],
): Tried | undefined {
  const { net, place } = context
  const a = wireAt(context, 'a')
  if (a === undefined) return undefined
  const links = linksOf(conducting(net, when(context, 'on-hook'), 'direct'))
  const terminals = (nodes: Iterable<number>) => [...nodes].filter((node) => place.terminals.includes(node))
  const goal = terminals(joinedTo(net, links, a))
  const lists = straps.flatMap((strap): readonly (readonly Move[])[] => {
    const left = without(links, [strap.index, bell.index])
    const from = terminals(joinedTo(net, left, end))
    const to = nearestStrap(context, from.length > 0 ? from : [end], goal)
    return to === undefined ? [] : [[takeStrapOff(context, strap), fitStrap(context, to)]]
  })
  return firstThatMends(context, verdicts, lists, SHOWS)
}
