/** A core that lies on a terminal of another circuit, and a strap that joins what belongs apart: what no nearer name fits. */
import { type CheckContext, nodeShort, when } from '../checks/context.ts'
import type { Consequence, Verdict } from '../checks/rule.ts'
import { WIRING } from '../checks/wiring/index.ts'
import { speechFigures } from '../checks/wiring/landing.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import { become, becomeAll, leakageNow, loopNow, ownBellCurrents, tells } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf, type Tried } from './try-mend.ts'
import { astrayCores, ids, landCore, ownBranches, takeStrapOff } from './wires.ts'

const EXPLAINS = [...WIRING.map(({ id }) => id), 'speech.sends', 'speech.receives']

/** A core off its terminal, which mends as soon as it is landed where the set's sheets land it. */
export const coreOnWrongTerminal: FaultRule = {
  id: 'core-on-wrong-terminal',
  title: 'core on the wrong terminal',
  explains: EXPLAINS,
  find(context, verdicts, told) {
    if (failing(verdicts, ...EXPLAINS).length === 0) return []
    const fresh = astrayCores(context).filter(({ far }) => !told.has(context.net.nodes[far] ?? ''))
    return fresh.flatMap((core) => {
      const lists = core.meant.map((terminal) => [landCore(context, core, terminal)])
      const tried = firstThatMends(context, verdicts, lists, EXPLAINS)
      return tried === undefined ? [] : [astray(context, verdicts, core, tried)]
    })
  },
}

function astray(
  context: CheckContext,
  verdicts: readonly Verdict[],
  { name, far, lands, meant }: NetCore,
  tried: Tried,
): Finding {
  const [here, home] = [lands, meant[0]].map((node) => nodeShort(context, node ?? 0))
  const [first] = failing(verdicts, ...EXPLAINS)
  return {
    subject: name,
    condition: first?.condition ?? when(context, 'off-hook'),
    says: `The core ${name} lies on ${here} and belongs on ${home}. ${first?.says ?? ''}`.trim(),
    path: ids(context, [far, lands]),
    consequences: everyFigure(context, tried.after),
    ...mendOf(tried),
  }
}

/** A strap without which less fails, and nothing else. */
export const strapTooMany: FaultRule = {
  id: 'strap-too-many',
  title: 'strap too many',
  explains: EXPLAINS,
  lastResort: true,
  find(context, verdicts) {
    // with a core astray it is that, whatever strap lies beside it
    if (failing(verdicts, ...EXPLAINS).length === 0 || astrayCores(context).length > 0) return []
    return ownBranches(context)
      .filter(({ part }) => part.sort === 'strap')
      .flatMap((strap) => {
        const tried = firstThatMends(context, verdicts, [[takeStrapOff(context, strap)]], EXPLAINS)
        return tried === undefined ? [] : [tooMany(context, verdicts, strap, tried)]
      })
  },
}

function tooMany(context: CheckContext, verdicts: readonly Verdict[], strap: Branch, tried: Tried): Finding {
  const [first] = failing(verdicts, ...EXPLAINS)
  return {
    subject: strap.part.name,
    condition: first?.condition ?? when(context, 'off-hook'),
    says: `The strap ${strap.part.name} joins what belongs apart. ${first?.says ?? ''}`.trim(),
    path: ids(context, [strap.from, strap.to]),
    consequences: everyFigure(context, tried.after),
    ...mendOf(tried),
  }
}

/** What may follow from a core or a strap in the wrong place. */
function everyFigure(context: CheckContext, after: CheckContext): readonly Consequence[] {
  return [
    ...become(loopNow(context), loopNow(after)),
    ...become(leakageNow(context), leakageNow(after)),
    ...becomeAll(ownBellCurrents(context), ownBellCurrents(after)),
    ...becomeAll(speechFigures(context), speechFigures(after)),
  ].filter(tells)
}
