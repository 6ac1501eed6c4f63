/** A plug or a socket made up by the mirrored numbering: contact k where 7 − k belongs. */
import { type CheckContext, when } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { earthLeakage } from '../figures/loop.ts'
import { bothNumbers, type ContactNumbers, NUMBERED_WIRES } from '../netlist/plug-numbers.ts'
import type { PremisesSheet } from '../sheet/model.ts'
import { curedBy, judgedHere, withLine } from './judge-whole.ts'
import { becomeAll, ownBellCurrents, tells } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { inPremises, judged, restood, standingOf, troubles } from './try-mend.ts'
import { ids } from './wires.ts'

const SHOWS = [
  'wiring.ringing-lead-to-bell',
  'wiring.ringing-lead-alone',
  'wiring.bell-return',
  'wiring.spares-free',
  'wiring.earth-free',
]
const EXPLAINS = [
  ...SHOWS,
  'wiring.one-ringing-capacitor',
  'wiring.loop-through-set',
  'wiring.loop-open-on-hook',
  'bell.rings-alone',
  'bell.rings-with-all',
]

/** The pair hides it, since speech has no polarity; ringing lead and earth change places. */
export const mirroredNumbering: FaultRule = {
  id: 'mirrored-numbering',
  title: 'plug or socket made up by the mirrored numbering',
  explains: EXPLAINS,
  find(context, verdicts) {
    const before = troubles(verdicts, SHOWS)
    const lead = ['wiring.ringing-lead-to-bell', 'wiring.earth-free', 'wiring.bell-return']
    if (failing(verdicts, ...lead).length === 0 || context.place.socket === undefined) return []
    const after = asMeant(context)
    // all that it shows in must go with it; else it was something else
    if (after === undefined || troubles(judged(after, SHOWS), SHOWS).size > 0 || before.size === 0) return []
    return [mirrored(context, verdicts, after)]
  },
}

/** The socket made up rightly where its sheet says that it is not, else the plug by the other numbering. */
function asMeant(context: CheckContext): CheckContext | undefined {
  const { socket } = context.place
  const { premises } = context.installation
  if (socket?.mirrored === true && premises !== undefined)
    return inPremises(context, unmirrored(premises, socket.name))
  const { set } = standingOf(context)
  if (set.plug === undefined) return undefined
  const turned = set.plug['numbered by'] === 'wiring' ? 'contact' : 'wiring'
  return restood(context, { set: { ...set, plug: { ...set.plug, 'numbered by': turned } } })
}

function unmirrored(premises: PremisesSheet, name: string): PremisesSheet {
  const socket = premises.sockets[name]
  return socket === undefined
    ? premises
    : { ...premises, sockets: { ...premises.sockets, [name]: { ...socket, mirrored: false } } }
}

function mirrored(context: CheckContext, verdicts: readonly Verdict[], after: CheckContext): Finding {
  const { place } = context
  const socket = place.socket?.mirrored === true ? place.socket.name : undefined
  const what = socket === undefined ? `plug of ${place.set}` : `socket ${socket}`
  const figures = (one: CheckContext): readonly Figure[] => [
    ...ownBellCurrents(one),
    ...['on-hook', 'off-hook'].map((written) =>
      one.figure(earthLeakage(one.net, one.place, when(one, written))),
    ),
  ]
  return {
    subject: socket ?? place.place,
    condition: when(context, 'on-hook/ringing'),
    says:
      `The ${what} is made up by the mirrored numbering, contact k where 7 − k belongs. ` +
      'The pair (2 and 5) only changes sides, so that speech works and hides it; ' +
      'ringing lead (3; 4 by the other numbering) and earth (4; 3 by the other) change places, and the bell is silent.',
    path: ids(context, Object.values(place.plug)),
    consequences: becomeAll(figures(context), figures(after)).filter(tells),
    mend:
      socket === undefined
        ? `with the set unplugged, make up the plug anew by the other numbering: ${coreByCore(context)}`
        : `make up socket ${socket} anew by the other numbering: ${wireByWire(context)}; ` +
          'its wires are live, and on the line side of the master socket local codes and licensed practice decide who may do it',
    explains: explained(context, verdicts, after),
  }
}

/** What shows it and fails, and what comes right with it besides, in this place and of the whole line. */
function explained(
  context: CheckContext,
  verdicts: readonly Verdict[],
  after: CheckContext,
): readonly string[] {
  const before = withLine(context, verdicts)
  const cured = curedBy(before, new Map([[context.place.place, judgedHere(after)]]))
  const shown = EXPLAINS.filter((id) => failing(before, id).length > 0)
  return [...new Set([...shown, ...cured.map(({ check }) => check)])]
}

/** `core a from contact 5 (wiring 2) to contact 2 (wiring 5)`, of every core of the plug. */
function coreByCore({ place }: CheckContext): string {
  return Object.entries(place.plug)
    .flatMap(([number, node]) => {
      const core = place.cores.find(({ endsIn, far }) => endsIn === 'plug' && far === node)
      return core === undefined ? [] : [`core ${core.core} ${fromTo(Number(number))}`]
    })
    .join('; ')
}

/** The same of the wires of a socket: each lies where its mirror belongs. */
function wireByWire({ place }: CheckContext): string {
  return NUMBERED_WIRES.filter(
    ({ wire }) =>
      wire === 'a wire' ||
      wire === 'b wire' ||
      (wire === 'ringing lead' && place.socket?.ringing !== undefined) ||
      (wire === 'earth' && place.socket?.earth === true),
  )
    .map(({ wire, contact }) => `the ${wire} ${fromTo(contact)}`)
    .join('; ')
}

/** From where it is to its mirror, by both numberings; 7 − k is the other number of the same contact. */
function fromTo(wiring: number): string {
  const words = ({ contact, wiring: other }: ContactNumbers): string => `contact ${contact} (wiring ${other})`
  const from = bothNumbers(wiring)
  return `from ${words(from)} to ${words(bothNumbers(from.contact))}`
}
