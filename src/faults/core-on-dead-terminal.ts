/** A core that has work to do and lies on a terminal on which nothing else lies, or on none at all. */
import { type CheckContext, nodeShort, when, wireAt } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { speechFigures } from '../checks/wiring/landing.ts'
import type { NetCore } from '../netlist/netlist.ts'
import type { Move } from '../sheet/model.ts'
import { becomeAll, loopNow, ownBellCurrents, tells } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf, type Tried } from './try-mend.ts'
import { ids, isWired, landCore, terminalGroups } from './wires.ts'

const EXPLAINS = [
  'wiring.cores-reach-parts',
  'wiring.loop-through-set',
  'wiring.loop-closed-off-hook',
  'wiring.ringing-lead-to-bell',
  'wiring.bell-return',
  'wiring.no-part-left-out',
]

/** A handset core, a line wire or the ringing core on a dead terminal; a line wire also where it is parked. */
export const coreOnDeadTerminal: FaultRule = {
  id: 'core-on-dead-terminal',
  title: 'core on a dead terminal',
  explains: EXPLAINS,
  yieldsTo: ['mirrored-numbering', 'extension-bell-in-series'],
  find(context, verdicts) {
    if (failing(verdicts, ...EXPLAINS).length === 0) return []
    return context.place.cores
      .filter((core) => isDead(context, core))
      .flatMap((core) => dead(context, verdicts, core))
  },
}

function isDead(context: CheckContext, { endsIn, far, lands, meant }: NetCore): boolean {
  // it lies where it belongs, and what should lie beside it is missing
  if (lands !== undefined && meant.every((terminal) => terminal === lands)) return false
  const pair = [wireAt(context, 'a'), wireAt(context, 'b')].includes(far)
  // what is parked on purpose in a handset or at the ringing lead goes by another name
  if (lands === undefined) return pair
  return !isWired(context, lands) && (endsIn === 'handset' || pair || wireAt(context, 'ringing') === far)
}

function dead(context: CheckContext, verdicts: readonly Verdict[], core: NetCore): readonly Finding[] {
  const tried = landElsewhere(context, verdicts, core)
  // a core that is missed nowhere is no fault: a bellset needs no b wire
  if (tried === undefined) return []
  const { lands, endsIn } = core
  const where =
    lands === undefined
      ? 'is parked, on nothing'
      : `lies on ${nodeShort(context, lands)}, on which nothing else lies`
  const what = endsIn === 'handset' ? 'its part of the handset is out of the circuit' : 'its wire ends there'
  const figures = (one: CheckContext) =>
    endsIn === 'handset' ? speechFigures(one) : [loopNow(one), ...ownBellCurrents(one)]
  return [
    {
      subject: core.name,
      condition: when(context, 'off-hook/speech'),
      says: `The core ${core.name} ${where}: ${what}.`,
      path: ids(context, [core.far, lands]),
      consequences: becomeAll(figures(context), figures(tried.after)).filter(tells),
      ...mendOf(tried),
    },
  ]
}

/** Where the core belongs: the landings of the set's sheets first, then one terminal of each group that links join. */
function landElsewhere(
  context: CheckContext,
  verdicts: readonly Verdict[],
  core: NetCore,
): Tried | undefined {
  const others = terminalGroups(context).flatMap(([first]) => (first === undefined ? [] : [first]))
  const terminals = [...new Set([...core.meant, ...others])].filter((one) => one !== core.lands)
  const lists = terminals.map((terminal): readonly Move[] => [landCore(context, core, terminal)])
  return firstThatMends(context, verdicts, lists, [
    ...EXPLAINS,
    'wiring.cores-separate',
    'wiring.ringing-lead-alone',
    'wiring.loop-open-on-hook',
  ])
}
