/** A plug or a socket made up by the mirrored numbering: contact k where 7 − k belongs. */
import { type CheckContext, when } from '../checks/context.ts'
import type { Figure } from '../figures/figure.ts'
import { earthLeakage } from '../figures/loop.ts'
import type { PremisesSheet } from '../sheet/model.ts'
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
const EXPLAINS = [...SHOWS, 'wiring.loop-through-set', 'wiring.loop-open-on-hook']

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
    return [mirrored(context, after)]
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

function mirrored(context: CheckContext, after: CheckContext): Finding {
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
        ? 'with the set unplugged, make up the plug anew by the other numbering: each core from contact k to contact 7 − k'
        : `make up socket ${socket} anew by the other numbering, each wire from contact k to contact 7 − k; ` +
          'its wires are live, and on the line side of the master socket local codes and licensed practice decide who may do it',
  }
}
