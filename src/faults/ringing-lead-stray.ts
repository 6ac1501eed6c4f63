/** The ringing lead strays: straight to a wire or a handset core, or through a capacitor that was left in the set. */
import { type CheckContext, plugLinks, roleBranches, when, wireAt } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { ringingLeadAlone, ringingLeadToBell } from '../checks/wiring/bell.ts'
import { oneRingingCapacitor } from '../checks/wiring/ringing-capacitor.ts'
import { capacitive, conducting, without } from '../netlist/conduct.ts'
import { type Path, pathBetween } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'
import { become, becomeAll, bellCurrent, ownBellCurrents, ringsFrom, SILENT } from './measure.ts'
import { type FaultRule, failing } from './named-fault.ts'
import { ownCapacitors, reachBell } from './reach-bell.ts'
import { firstThatMends, judged, mendOf, type Tried } from './try-mend.ts'
import { coreAt, fitStrap, homeMoves, ids, takeStrapOff } from './wires.ts'

const EXPLAINS = [
  ringingLeadAlone.id,
  ringingLeadToBell.id,
  oneRingingCapacitor.id,
  'bell.rings-alone',
  'bell.rings-with-all',
]
const SHOWS = [...EXPLAINS.slice(0, 3), 'wiring.bell-return', 'wiring.no-part-left-out']

/** The ringing lead reaches a line wire or a handset core without a capacitor between. */
export const ringingLeadTouching: FaultRule = {
  id: 'ringing-lead-touching',
  title: 'ringing lead touching the loop',
  explains: EXPLAINS,
  yieldsTo: ['mirrored-numbering'],
  find(context, verdicts) {
    const [first] = failing(verdicts, ringingLeadAlone.id)
    const stray = first && strayWay(context)
    if (first === undefined || stray === undefined) return []
    const tried = freed(context, verdicts, stray.path)
    return [
      {
        subject: first.subject,
        condition: when(context, stray.written),
        says: `The ringing lead reaches ${stray.what} without a capacitor between, ${stray.written}: there the capacitor of the socket is shorted or lies across the pair, and bells fall silent or bridge it for direct current.`,
        path: ids(context, stray.path.nodes),
        consequences: [
          ...become(first.figure ?? undefined, tried && aloneAfter(tried)),
          ...becomeAll(ownBellCurrents(context), tried && ownBellCurrents(tried.after)),
        ],
        ...(tried === undefined
          ? {
              mend: 'with the set unplugged, take off what joins the ringing lead to the loop along the path',
            }
          : mendOf(tried)),
      },
    ]
  },
}

function aloneAfter({ after }: Tried): ReturnType<CheckContext['figure']> | undefined {
  return judged(after, [ringingLeadAlone.id])[0]?.figure ?? undefined
}

interface Stray {
  readonly path: Path
  readonly written: string
  readonly what: string
}

/** The shortest way from the ringing lead to a wire or a handset core, past the bell, through no capacitor. */
function strayWay(context: CheckContext): Stray | undefined {
  const { net, place } = context
  const lead = wireAt(context, 'ringing')
  if (lead === undefined) return undefined
  const bells = roleBranches(context, 'sounder').map(({ index }) => index)
  const handset = place.cores.filter(({ endsIn }) => endsIn === 'handset')
  const wires = [
    ...(['a', 'b'] as const).map((wire) => ({ node: wireAt(context, wire), what: `the ${wire} wire` })),
    ...handset.map(({ far, name }) => ({ node: far, what: `the handset core ${name}` })),
  ]
  const found = ['on-hook', 'off-hook'].flatMap((written) => {
    const condition = when(context, written)
    const stores = capacitive(net, condition)
    const all = without(conducting(net, condition, 'alternating'), [...bells, ...plugLinks(context)])
    return wires.flatMap(({ node, what }): readonly Stray[] => {
      const path =
        node === undefined ? undefined : pathBetween(net, (one) => all(one) && !stores(one), lead, node)
      return path === undefined ? [] : [{ path, written, what }]
    })
  })
  return found.sort((p, q) => p.path.nodes.length - q.path.nodes.length)[0]
}

/** A core that is astray goes home, a part on the way goes, the core lands elsewhere, or a strap on the way comes off. */
function freed(context: CheckContext, verdicts: readonly Verdict[], { branches }: Path): Tried | undefined {
  const { net } = context
  const way = branches.map((index) => net.branches[index]).filter((one) => one !== undefined)
  const home = firstThatMends(context, verdicts, homeMoves(context), SHOWS)
  if (home !== undefined) return home
  const parts = way.filter(({ part }) => part.sort === 'part')
  const lifts = parts.map(({ part }): readonly Move[] => [{ do: 'lift part', what: part.name }])
  const lifted = firstThatMends(context, verdicts, lifts, SHOWS)
  if (lifted !== undefined) return lifted
  const core = coreAt(context, wireAt(context, 'ringing'))
  const [bell] = roleBranches(context, 'sounder')
  const landedElsewhere = core && bell && reachBell(context, verdicts, bell, core)
  if (landedElsewhere !== undefined) return landedElsewhere
  const straps = way.filter(({ part }) => part.sort === 'strap')
  return firstThatMends(
    context,
    verdicts,
    straps.map((one) => [takeStrapOff(context, one)]),
    SHOWS,
  )
}

/** Whether every bell of the set gets what rings it; what silences a bell mends nothing. */
function rings(after: CheckContext): boolean {
  return roleBranches(after, 'sounder').every(
    (bell) => (bellCurrent(after, bell)?.value ?? Number.POSITIVE_INFINITY) >= (ringsFrom(bell) ?? SILENT),
  )
}

/** A capacitor of the set's own, from its days on two wires, besides the one in the socket. */
export const ownCapacitorLeftIn: FaultRule = {
  id: 'own-capacitor-left-in',
  title: 'own capacitor left in the bell path',
  explains: EXPLAINS,
  yieldsTo: ['mirrored-numbering', 'ringing-lead-touching'],
  find(context, verdicts) {
    const shows = failing(verdicts, ringingLeadAlone.id, oneRingingCapacitor.id)
    if (shows.length === 0 || wireAt(context, 'ringing') === undefined) return []
    return ownCapacitors(context).flatMap((one) => {
      const out: Move = { do: 'lift part', what: one.part.name }
      const lists: readonly (readonly Move[])[] = [[out], [out, fitStrap(context, one)]]
      const checks = [...SHOWS, 'wiring.quench-present', 'wiring.loop-open-on-hook']
      const tried = firstThatMends(context, verdicts, lists, checks, rings)
      if (tried === undefined) return []
      const counts = (context: CheckContext) =>
        judged(context, [oneRingingCapacitor.id]).flatMap(({ figure }) => (figure === null ? [] : [figure]))
      return [
        {
          subject: one.id,
          condition: when(context, 'on-hook/ringing'),
          says: `The set has kept a capacitor of its own (${one.part.name}), though the ringing lead brings the capacitor of the socket: two capacitors share the work of one, and the set loads the line differently from its neighbours.`,
          path: ids(context, [one.from, one.to]),
          consequences: [
            ...becomeAll(counts(context), counts(tried.after)),
            ...become(
              shows[0]?.check === ringingLeadAlone.id ? (shows[0].figure ?? undefined) : undefined,
              aloneAfter(tried),
            ),
            ...becomeAll(ownBellCurrents(context), ownBellCurrents(tried.after)),
          ],
          ...mendOf(tried),
        },
      ]
    })
  },
}
