/** The ringing lead does not reach the bell: its core is parked or astray, or no lead comes to the socket. */
import { type CheckContext, roleBranches, when, wireAt } from '../checks/context.ts'
import { withLead } from '../checks/mends.ts'
import type { Verdict } from '../checks/rule.ts'
import { ringingLeadToBell } from '../checks/wiring/bell.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import { becomeAll, ownBellCurrents, ringsFrom } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { reachBell } from './reach-bell.ts'
import { inWords, mends } from './try-mend.ts'
import { coreAt, ids, whereLies } from './wires.ts'

const EXPLAINS = [
  ringingLeadToBell.id,
  'wiring.one-ringing-capacitor',
  'bell.rings-alone',
  'bell.rings-with-all',
]

/** Nothing, or the wrong terminal, lies between the ringing lead and the bell. */
export const ringingLeadMissing: FaultRule = {
  id: 'ringing-lead-missing',
  title: 'ringing lead not reaching the bell',
  explains: EXPLAINS,
  yieldsTo: [
    'mirrored-numbering',
    'core-on-dead-terminal',
    'own-capacitor-left-in',
    'ringing-lead-touching',
    'strap-missing-at-bell',
    'bell-coils-turned',
  ],
  find: (context, verdicts, told) =>
    failing(verdicts, ringingLeadToBell.id).flatMap(({ subject }) => {
      const bell = roleBranches(context, 'sounder').find(({ id }) => id === subject)
      if (bell === undefined || ringsFrom(bell) === undefined) return []
      const lead = wireAt(context, 'ringing')
      const core = coreAt(context, lead)
      // the search for a terminal is long; what is told already is not searched for
      if (told.has(context.net.nodes[lead ?? -1] ?? '')) return []
      if (core !== undefined) return [endsInTheAir(context, verdicts, bell, core)]
      const { socket } = context.place
      return socket === undefined || socket.ringing !== undefined ? [] : noneComes(context, verdicts, bell)
    }),
}

function endsInTheAir(
  context: CheckContext,
  verdicts: readonly Verdict[],
  bell: Branch,
  core: NetCore,
): Finding {
  const now = ownBellCurrents(context)
  const tried = reachBell(context, verdicts, bell, core)
  const rings = now.some(({ value }) => (value ?? 0) >= (ringsFrom(bell) ?? Number.POSITIVE_INFINITY))
  const follows = rings
    ? 'it takes its current from the pair through a capacitor of its own, and the ringing lead ends in the air'
    : 'no ringing current reaches it'
  return {
    subject: core.name,
    condition: when(context, 'on-hook/ringing'),
    says: `The ringing lead does not reach the ${bell.part.name} (${whereLies(context, core)}): ${follows}.`,
    path: ids(context, [core.far, core.lands]),
    consequences: becomeAll(now, tried && ownBellCurrents(tried.after)),
    mend:
      tried === undefined
        ? 'bring the ringing core to the bell, as the sheet of this set shows'
        : inWords(tried.moves),
  }
}

function noneComes(context: CheckContext, verdicts: readonly Verdict[], bell: Branch): readonly Finding[] {
  const { socket } = context.place
  if (socket === undefined) return []
  const adapted = adapterBefore(context, verdicts)
  return [
    {
      subject: bell.id,
      condition: when(context, 'on-hook/ringing'),
      says: `No ringing lead comes to socket ${socket.name}, and the ${bell.part.name} hangs on one: it is silent.`,
      path: ids(context, [socket.a, socket.b, wireAt(context, 'a'), wireAt(context, 'b')]),
      consequences: becomeAll(ownBellCurrents(context), adapted && ownBellCurrents(adapted)),
      mend:
        adapted === undefined
          ? 'plug the set into a socket to which the ringing lead comes, or give the bell a capacitor of its own to the pair'
          : `put an adapter lead with a ringing capacitor of its own between socket ${socket.name} and the set, or plug the set into a socket to which the ringing lead comes`,
    },
  ]
}

/** The set behind an adapter lead that makes a ringing lead of its own; undefined where that mends nothing. */
function adapterBefore(context: CheckContext, verdicts: readonly Verdict[]): CheckContext | undefined {
  const installation = withLead(context.installation, context.place.place)
  if (installation === undefined) return undefined
  const after = context.trial(installation)
  const checks = [ringingLeadToBell.id, 'wiring.ringing-lead-alone', 'wiring.bell-return']
  return mends(verdicts, after, checks) ? after : undefined
}
