/** Two handset cores joined, so that speech is lost. */
import { type CheckContext, when } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { coresSeparate } from '../checks/wiring/cores.ts'
import { bestLanding, speechFigures } from '../checks/wiring/landing.ts'
import { conducting, linksOf } from '../netlist/conduct.ts'
import { branchAt, type NetCore } from '../netlist/netlist.ts'
import { pathBetween } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'
import { becomeAll } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf } from './try-mend.ts'
import { landCore, takeStrapOff, whereLies } from './wires.ts'

const EXPLAINS = ['wiring.cores-separate', 'wiring.cores-reach-parts']

/** Two handset cores joined by straps, contacts or a shared terminal. A joining that costs nothing is no fault. */
export const coresJoined: FaultRule = {
  id: 'cores-joined',
  title: 'handset cores joined',
  explains: [...EXPLAINS, 'speech.sends', 'speech.receives'],
  find: (context, verdicts) =>
    failing(verdicts, coresSeparate.id).flatMap((verdict) => {
      const pair = verdict.subject.split(', ').map((name) => coreNamed(context, name))
      const [first, second] = pair
      return first === undefined || second === undefined
        ? []
        : [joined(context, verdicts, verdict, first, second)]
    }),
}

function coreNamed({ place }: CheckContext, name: string): NetCore | undefined {
  return place.cores.find((core) => core.name === name)
}

function joined(
  context: CheckContext,
  verdicts: readonly Verdict[],
  { subject, path, says, mend }: Verdict & { readonly mend?: string },
  first: NetCore,
  second: NetCore,
): Finding {
  const straps = strapsBetween(context, first, second)
  const moves = (bestLanding(context, [first, second])?.moves ?? []).map(({ core, terminal }) =>
    landCore(context, core, terminal),
  )
  const astray = [first, second].some(({ lands, meant }) => lands !== meant[0])
  const lifts = straps.map((move) => [move])
  const lists: readonly (readonly Move[])[] = astray ? [moves, ...lifts] : [...lifts, moves]
  const tried = firstThatMends(
    context,
    verdicts,
    lists.filter((one) => one.length > 0),
    EXPLAINS,
  )
  const how = straps.length === 0 ? '' : `, joined by ${straps.map(({ what }) => what).join(' and ')}`
  return {
    subject,
    condition: when(context, 'off-hook/speech'),
    says: `${whereLies(context, first)} and ${whereLies(context, second)}${how}. ${says}`,
    path,
    consequences: becomeAll(speechFigures(context), tried && speechFigures(tried.after)),
    ...(tried === undefined
      ? { mend: mend ?? 'land the handset cores as the sheet of this set shows' }
      : mendOf(tried)),
  }
}

/** The moves that would take off the straps between two cores. */
function strapsBetween(context: CheckContext, first: NetCore, second: NetCore): readonly Move[] {
  const { net } = context
  const links = linksOf(conducting(net, when(context, 'off-hook/speech'), 'direct'))
  const path = pathBetween(net, links, first.far, second.far)
  return (path?.branches ?? [])
    .map((index) => branchAt(net, index))
    .filter(({ part }) => part.sort === 'strap')
    .map((branch) => takeStrapOff(context, branch))
}
