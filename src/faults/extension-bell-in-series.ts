/** An extension bell of the old wiring: the ringing current or the line current still flows through a second bell. */
import { type CheckContext, nodeShort, roleBranches, when, wireAt } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { bellReturn } from '../checks/wiring/bell-return.ts'
import { conducting, linksOf, without } from '../netlist/conduct.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import { joinedTo } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'
import {
  become,
  becomeAll,
  bellCurrent,
  bellDirect,
  loopNow,
  milliamps,
  ownBellCurrents,
  SILENT,
  tells,
} from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { completed, firstThatMends, mendOf, mendWords, moved, type Tried } from './try-mend.ts'
import { coreAt, fitStrap, ids } from './wires.ts'

const EXPLAINS = [
  bellReturn.id,
  'wiring.spares-free',
  'wiring.no-part-left-out',
  'bell.rings-alone',
  'bell.rings-with-all',
]
const SHOWS = EXPLAINS.slice(0, 3)

/** One current through two bells, a bell in the loop, or a bell that waits for the next one on the fourth core. */
export const extensionBellInSeries: FaultRule = {
  id: 'extension-bell-in-series',
  title: 'extension bell still in series',
  explains: EXPLAINS,
  yieldsTo: ['mirrored-numbering'],
  find(context, verdicts) {
    const bells = roleBranches(context, 'sounder')
    const inLoop = bells.filter((bell) => carriesLoop(context, bell) && !otherwiseWrong(context, verdicts))
    return [
      ...inLoop.map((bell) => bellInLoop(context, verdicts, bell)),
      ...(bells.length > 1
        ? twoInSeries(
            context,
            verdicts,
            bells.filter((bell) => !inLoop.includes(bell)),
          )
        : []),
      ...failing(verdicts, bellReturn.id).flatMap(({ subject }) => {
        const bell = bells.find(({ id }) => id === subject)
        return bell === undefined ? [] : onTheFourthCore(context, verdicts, bell)
      }),
    ]
  },
}

/** A bell carries the loop when more than half of the loop current flows through it. */
const HALF = 0.5

/** Less than this is no loop current at all, A. */
const NO_LOOP = 1e-4

function carriesLoop(context: CheckContext, bell: Branch): boolean {
  if (context.place.socket === undefined || context.net.line === undefined) return false
  const direct = bellDirect(context, bell, 'off-hook')?.value ?? 0
  return direct > NO_LOOP && direct > HALF * (loopNow(context).value ?? 0)
}

/** Whether the wiring is wrong in a way that leads the loop through a bell that is right. */
function otherwiseWrong({ place }: CheckContext, verdicts: readonly Verdict[]): boolean {
  const astray = place.cores.some(
    ({ endsIn, lands, meant }) => endsIn === 'handset' && lands !== undefined && !meant.includes(lands),
  )
  return (
    astray ||
    failing(
      verdicts,
      'wiring.loop-through-set',
      'wiring.loop-closed-off-hook',
      'wiring.loop-open-on-hook',
      'wiring.ringing-lead-alone',
      bellReturn.id,
    ).length > 0
  )
}

/** A strap in place of a part. */
function bridged(context: CheckContext, { part, from, to }: Branch): readonly Move[] {
  return [{ do: 'lift part', what: part.name }, fitStrap(context, { from, to })]
}

/** A list of moves tried and judged as a whole. */
function triedWhole(
  context: CheckContext,
  verdicts: readonly Verdict[],
  moves: readonly Move[],
): Tried | undefined {
  const tried = moved(context, moves)
  return tried && completed(context, verdicts, tried)
}

function bellInLoop(context: CheckContext, verdicts: readonly Verdict[], bell: Branch): Finding {
  const tried = triedWhole(context, verdicts, bridged(context, bell))
  const direct = bellDirect(context, bell, 'off-hook')
  return {
    subject: bell.id,
    condition: when(context, 'off-hook'),
    says: `The line current flows through the ${bell.part.name}: ${milliamps(direct)} off-hook, in series with the set.`,
    path: ids(context, [bell.from, bell.to]),
    consequences: [
      ...become(loopNow(context), tried && loopNow(tried.after)),
      ...become(direct),
      ...becomeAll(otherCurrents(context, bell), tried && otherCurrents(tried.after, bell)),
    ],
    ...(tried === undefined
      ? { mend: `with the set unplugged, take the ${bell.part.name} out of the loop` }
      : mendOf(tried)),
  }
}

function otherCurrents(context: CheckContext, { id }: Branch): ReturnType<typeof ownBellCurrents> {
  return ownBellCurrents(context).filter(({ subject }) => subject !== id)
}

/** Bells that are silent when another one is lifted; the one that returns to the wire is the extension. */
function twoInSeries(
  context: CheckContext,
  verdicts: readonly Verdict[],
  bells: readonly Branch[],
): readonly Finding[] {
  const [first] = bells.filter((bell) =>
    bells.some((other) => other !== bell && inSeries(context, bell, other)),
  )
  if (first === undefined) return []
  const chain = bells.filter((bell) => bell === first || inSeries(context, first, bell))
  const extra = chain.find((bell) => returnsDirectly(context, bell)) ?? first
  const tried = triedWhole(context, verdicts, bridged(context, extra))
  const kept = chain.filter((bell) => bell !== extra)
  const figures = (one: CheckContext) => kept.flatMap((bell) => bellCurrent(one, bell) ?? [])
  return [
    {
      subject: extra.id,
      condition: when(context, 'on-hook/ringing'),
      says: `The ringing current flows through ${chain.map(({ part }) => part.name).join(' and ')} one after the other: each gets ${milliamps(bellCurrent(context, first))}, less than the bells of other sets.`,
      path: ids(context, new Set(chain.flatMap(({ from, to }) => [from, to]))),
      consequences: becomeAll(figures(context), tried && figures(tried.after)),
      ...(tried === undefined
        ? { mend: `with the set unplugged, take the ${extra.part.name} out of the bell path` }
        : {
            mend: `${mendWords(tried)}; the extension bell can come back as a bellset in a socket of its own`,
            moves: tried.moves,
          }),
    },
  ]
}

function inSeries(context: CheckContext, bell: Branch, other: Branch): boolean {
  const now = bellCurrent(context, bell)?.value ?? 0
  const left = bellCurrent(context, bell, { lifted: [other.index] })?.value ?? 0
  return now > SILENT && left < SILENT
}

function returnsDirectly(context: CheckContext, { from, to, index }: Branch): boolean {
  const a = wireAt(context, 'a')
  const links = linksOf(without(conducting(context.net, when(context, 'on-hook'), 'direct'), [index]))
  const joined = a === undefined ? new Set<number>() : joinedTo(context.net, links, a)
  return joined.has(from) || joined.has(to)
}

/** The far end of the bell on a core of the plug that is no line wire: there the next bell of the house once followed. */
function onTheFourthCore(
  context: CheckContext,
  verdicts: readonly Verdict[],
  bell: Branch,
): readonly Finding[] {
  const a = coreAt(context, wireAt(context, 'a'))
  const fourth = fourthCore(context, bell)
  if (a === undefined || fourth?.lands === undefined) return []
  const onto = nodeShort(context, fourth.lands)
  const moves: readonly Move[] = [
    { do: 'park core', what: fourth.name },
    { do: 'land core', what: a.name, onto },
  ]
  const tried = firstThatMends(context, verdicts, [moves], SHOWS)
  if (tried === undefined) return []
  return [
    {
      subject: bell.id,
      condition: when(context, 'on-hook/ringing'),
      says: `The ${bell.part.name} lies between the ringing lead and the core ${fourth.name}, by which the old wiring went on to the next bell; here it leads nowhere, and the bell is silent.`,
      path: ids(context, [bell.from, bell.to, fourth.lands, fourth.far, a.far]),
      consequences: becomeAll(ownBellCurrents(context), ownBellCurrents(tried.after)).filter(tells),
      ...mendOf(tried),
    },
  ]
}

/** A core on an end of the bell, whose plug contact is neither of the pair nor the ringing lead. */
function fourthCore(context: CheckContext, bell: Branch): NetCore | undefined {
  const wires = (['a', 'b', 'ringing'] as const).map((wire) => wireAt(context, wire))
  const links = linksOf(without(conducting(context.net, when(context, 'on-hook'), 'direct'), [bell.index]))
  const ends = [bell.from, bell.to].map((end) => joinedTo(context.net, links, end))
  return context.place.cores.find(
    ({ endsIn, far, lands }) =>
      endsIn === 'plug' && !wires.includes(far) && lands !== undefined && ends.some((end) => end.has(lands)),
  )
}
