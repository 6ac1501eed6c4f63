/** The ringing lead does not reach the bell: its core is parked or astray, or no lead comes to the socket. */
import { type CheckContext, roleBranches, when, wireAt } from '../checks/context.ts'
import { thirdWireWords, withLead, withThirdWire } from '../checks/mends.ts'
import type { Verdict } from '../checks/rule.ts'
import { ringingLeadToBell } from '../checks/wiring/bell.ts'
import type { Figure } from '../figures/figure.ts'
import type { Installation } from '../netlist/compile.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import { thenFails } from './judge-whole.ts'
import { becomeAll, milliamps, ownBellCurrents, ringsFrom, SILENT } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { reachBell } from './reach-bell.ts'
import { mendOf, mends } from './try-mend.ts'
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
  return {
    subject: core.name,
    condition: when(context, 'on-hook/ringing'),
    says: `The ringing lead does not reach the ${bell.part.name} (${whereLies(context, core)}): ${gets(now, bell)}.`,
    path: ids(context, [core.far, core.lands]),
    consequences: becomeAll(now, tried && ownBellCurrents(tried.after)),
    ...(tried === undefined
      ? { mend: 'bring the ringing core to the bell, as the sheet of this set shows' }
      : mendOf(tried)),
  }
}

/** What a bell gets that the ringing lead does not reach. */
function gets(now: readonly Figure[], bell: Branch): string {
  const own = now.find(({ subject }) => subject === bell.id)
  return (own?.value ?? 0) < SILENT
    ? 'no ringing current reaches it'
    : `it gets ${milliamps(own)}, too little to ring`
}

function noneComes(context: CheckContext, verdicts: readonly Verdict[], bell: Branch): readonly Finding[] {
  const { socket } = context.place
  if (socket === undefined) return []
  const third = withThirdWire(context)
  const wired = third && afterInstallation(context, verdicts, third.installation)
  const adapted = afterInstallation(context, verdicts, withLead(context.installation, context.place.place))
  const ways = [
    ...(third !== undefined && wired !== undefined ? [thirdWireWords(third)] : []),
    ...(adapted === undefined
      ? []
      : [
          `put an adapter lead with a ringing capacitor of its own between socket ${socket.name} and the set`,
        ]),
    'plug the set into a socket to which the ringing lead comes',
    ...(adapted === undefined && wired === undefined
      ? ['give the bell a capacitor of its own to the pair']
      : []),
  ]
  const after = wired ?? adapted
  return [
    {
      subject: bell.id,
      condition: when(context, 'on-hook/ringing'),
      says: `No ringing lead comes to socket ${socket.name}, and the ${bell.part.name} hangs on one: it is silent.`,
      path: ids(context, [context.place.plug[3]]),
      consequences: becomeAll(ownBellCurrents(context), after && ownBellCurrents(after)),
      mend: ways.join('; or ') + (after === undefined ? '' : thenFails(context, verdicts, after)),
    },
  ]
}

/** The set in another installation that lets the ringing lead reach its bell; undefined where it mends nothing. */
function afterInstallation(
  context: CheckContext,
  verdicts: readonly Verdict[],
  installation: Installation | undefined,
): CheckContext | undefined {
  if (installation === undefined) return undefined
  const after = context.trial(installation)
  const checks = [ringingLeadToBell.id, 'wiring.ringing-lead-alone', 'wiring.bell-return']
  return mends(verdicts, after, checks) ? after : undefined
}
