/** The pair reversed on the set's own side: the bell lies across the ringing capacitor. At the exchange it is no fault. */
import { type CheckContext, nodeShort, plugLinks, roleBranches, when, wireAt } from '../checks/context.ts'
import { limitOf } from '../checks/limits.ts'
import { namesOf } from '../checks/mends.ts'
import type { Consequence, Verdict } from '../checks/rule.ts'
import { bellReturn } from '../checks/wiring/bell-return.ts'
import type { Figure } from '../figures/figure.ts'
import { onHookLeakage } from '../figures/loop.ts'
import type { Branch } from '../netlist/netlist.ts'
import type { Move } from '../sheet/model.ts'
import { thenFails } from './judge-whole.ts'
import {
  become,
  becomeAll,
  bellCurrent,
  bellDirect,
  leakageNow,
  loopNow,
  milliamps,
  ringsFrom,
  SILENT,
  whileBroken,
} from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { inWords, mends, moved, restood, standingOf } from './try-mend.ts'
import { coreAt, ids } from './wires.ts'

const EXPLAINS = [
  bellReturn.id,
  'wiring.loop-open-on-hook',
  'wiring.ringing-lead-alone',
  'bell.rings-alone',
  'bell.rings-with-all',
  'line.leakage',
  'line.no-false-trip',
  'dial.understood',
]
const SHOWS = EXPLAINS.slice(0, 3)

/** A direct current in a bell that more than the resistor of the socket passes, A. */
const TELLING = 1e-3

/** Which way round the pair lies is the exchange's affair; that a set alone lies the other way round is a fault. */
export const reversedAtCord: FaultRule = {
  id: 'reversed-at-cord',
  title: 'pair reversed at the set’s own cord',
  explains: EXPLAINS,
  yieldsTo: ['mirrored-numbering'],
  find(context, verdicts, told) {
    const [first] = failing(verdicts, bellReturn.id)
    if (first?.path.some((id) => told.has(id)) === true) return []
    const bell = roleBranches(context, 'sounder').find(({ id }) => id === first?.subject)
    if (bell === undefined) return []
    const turned = turnedBack(context, verdicts)
    if (turned === undefined) return []
    const mend = turned.mend + thenFails(context, verdicts, turned.after)
    return [reversed(context, bell, { ...turned, mend })]
  },
}

/** The set with its pair turned, and how that is done. */
export interface Turned {
  readonly after: CheckContext
  readonly mend: string
  /** The same as moves in the set, where it is done by moves. */
  readonly moves?: readonly Move[]
  /** Where the pair crosses, in words. */
  readonly where: string
}

function turnedBack(context: CheckContext, verdicts: readonly Verdict[]): Turned | undefined {
  const ways = [betweenSocketAndSet, atTheTerminals, atThePlug]
  for (const way of ways) {
    const turned = way(context)
    if (turned !== undefined && mends(verdicts, turned.after, SHOWS)) return turned
  }
  return undefined
}

function betweenSocketAndSet(context: CheckContext): Turned | undefined {
  const { installation, place } = context
  if (standingOf(context).reversed !== true) return undefined
  const where = 'between its socket and the set'
  const others = Object.keys(installation.sets).filter(
    (name) => name !== place.place && installation.sets[name]?.reversed === true,
  )
  if (others.length === 0) {
    const mend = 'unplug the set and turn the pair back where it crosses between socket and set'
    return { after: restood(context, { reversed: false }), mend, where }
  }
  // one turned back alone would bridge the capacitor with those that are still reversed
  const sets = Object.entries(installation.sets).map(([name, one]) => [name, { ...one, reversed: false }])
  return {
    after: context.trial({ ...installation, sets: Object.fromEntries(sets) }),
    mend: `unplug this set and ${namesOf(others)}, which ${others.length === 1 ? 'is' : 'are'} reversed too, and turn the pair back in each between socket and set`,
    where,
  }
}

/** Both line cores, each on the other's terminal, where a sheet of the set lands it elsewhere. */
function atTheTerminals(context: CheckContext): Turned | undefined {
  const [a, b] = [coreAt(context, wireAt(context, 'a')), coreAt(context, wireAt(context, 'b'))]
  if (a?.lands === undefined || b?.lands === undefined) return undefined
  if (!a.meant.some((one) => one !== a.lands) && !b.meant.some((one) => one !== b.lands)) return undefined
  const moves: readonly Move[] = [
    { do: 'land core', what: a.name, onto: nodeShort(context, b.lands) },
    { do: 'land core', what: b.name, onto: nodeShort(context, a.lands) },
  ]
  const tried = moved(context, moves)
  return (
    tried && { after: tried.after, mend: inWords(moves), moves, where: 'at the terminals of its line cord' }
  )
}

/** The two cores of the pair on each other's contact of the plug; their names tell it from a bell strap astray. */
function atThePlug(context: CheckContext): Turned | undefined {
  const { set } = standingOf(context)
  if (set.plug === undefined) return undefined
  const { 2: second, 5: fifth, ...others } = set.plug.contacts
  if (second === undefined || fifth === undefined) return undefined
  const [a, b] = [coreAt(context, wireAt(context, 'a')), coreAt(context, wireAt(context, 'b'))]
  if (a?.core !== 'b' || b?.core !== 'a') return undefined
  const plug = { ...set.plug, contacts: { ...others, 2: fifth, 5: second } }
  return {
    after: restood(context, { set: { ...set, plug } }),
    mend: 'with the set unplugged, exchange the two cores of the pair in the plug (contacts 2 and 5 by either numbering)',
    where: 'in its plug',
  }
}

function reversed(context: CheckContext, bell: Branch, { after, mend, moves, where }: Turned): Finding {
  const lifted = otherPlugs(context)
  const alone = bellCurrent(context, bell, { lifted })
  const right = bellCurrent(after, bell, { lifted: otherPlugs(after) })
  const beside = lifted.length === 0 ? undefined : bellCurrent(context, bell)
  return {
    subject: context.place.place,
    condition: when(context, 'on-hook/ringing'),
    says: [
      `The pair is reversed ${where}, so that the bell returns to the b wire and lies across the ringing capacitor.`,
      `Alone it gets ${milliamps(alone)} in place of ${milliamps(right)}.`,
      ...(beside === undefined ? [] : besideOthers(context, bell, beside)),
      'Reversed at the exchange, for all sets alike, it would be no fault.',
    ].join(' '),
    path: ids(context, [bell.from, bell.to, wireAt(context, 'a'), wireAt(context, 'b')]),
    consequences: figuresOf(context, after, bell, lifted.length > 0),
    mend,
    ...(moves === undefined ? {} : { moves }),
  }
}

function besideOthers(context: CheckContext, bell: Branch, beside: Figure | undefined): readonly string[] {
  const direct = bellDirect(context, bell, 'on-hook')
  const open = whileBroken(context)
  const least = ringsFrom(bell) ?? Number.POSITIVE_INFINITY
  const rings =
    (beside?.value ?? 0) >= least
      ? `Beside the others it rings on their current (${milliamps(beside)})`
      : `Beside the others it gets ${milliamps(beside)}, which does not ring it`
  const bridges =
    (direct?.value ?? 0) > TELLING
      ? `, but its bell and theirs bridge the capacitor for direct current: ${milliamps(direct)} on-hook through ${bell.part.name}.`
      : '.'
  const drown =
    (open?.value ?? 0) > limitOf(context.limits, 'break-current').value
      ? [
          `Its own dial pulses drown: ${milliamps(open)} still flows while the pulse contact is open, ${milliamps(loopNow(context, 'off-hook/make'))} while it is closed.`,
        ]
      : []
  return [rings + bridges, ...drown]
}

function figuresOf(
  context: CheckContext,
  after: CheckContext,
  bell: Branch,
  others: boolean,
): readonly Consequence[] {
  const rings = others ? [] : become(bellCurrent(context, bell), bellCurrent(after, bell))
  return [
    ...rings,
    ...become(bellDirect(context, bell, 'on-hook'), bellDirect(after, bell, 'on-hook')),
    ...become(leakageNow(context), leakageNow(after)),
    ...become(whileBroken(context), whileBroken(after)),
    ...(others ? become(bellCurrent(context, bell), bellCurrent(after, bell)) : []),
    ...othersLeakage(context, after),
  ]
}

/** Direct current on-hook of the other sets, through whose bells it comes back. */
function othersLeakage(context: CheckContext, after: CheckContext): readonly Consequence[] {
  const leakages = (one: CheckContext): readonly Figure[] =>
    one.net.places
      .filter(({ place }) => place !== context.place.place)
      .map((place) => one.figure(onHookLeakage(one.net, place, when(one, 'on-hook'))))
  const then = leakages(after)
  return becomeAll(leakages(context), then).filter(({ figure }) => (figure.value ?? 0) > SILENT)
}

/** The plugs of all other sets; lifting them leaves this one alone. */
export function otherPlugs(context: CheckContext): readonly number[] {
  const own = new Set(plugLinks(context))
  return context.net.branches
    .filter(({ part, index }) => part.sort === 'plug' && !own.has(index))
    .map(({ index }) => index)
}
