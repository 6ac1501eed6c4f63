/** Transmitter or receiver out of the loop: parked, landed wrongly, bridged, or waiting for a strap. */
import { type CheckContext, when } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { coresReachParts } from '../checks/wiring/cores.ts'
import { bestLanding, speechFigures } from '../checks/wiring/landing.ts'
import { conducting, linksOf } from '../netlist/conduct.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import { pathBetween } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'
import { bestStrap, speechWorth } from './best-strap.ts'
import { becomeAll } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf } from './try-mend.ts'
import { coreAt, fitStrap, homeMoves, landCore, takeStrapOff } from './wires.ts'

const EXPLAINS = [
  coresReachParts.id,
  'wiring.loop-through-set',
  'wiring.loop-closed-off-hook',
  'wiring.no-part-left-out',
]
const ALSO = [...EXPLAINS, 'wiring.cores-separate', 'wiring.spares-free']

/** The transmitter takes no part in the loop. */
export const transmitterOut: FaultRule = partOut('transmitter-out', 'transmitter out of the loop', 'sender')
/** The receiver takes no part in what comes in. */
export const receiverOut: FaultRule = partOut('receiver-out', 'receiver out of the loop', 'receiver')

function partOut(id: string, title: string, role: 'sender' | 'receiver'): FaultRule {
  return {
    id,
    title,
    explains: [...EXPLAINS, 'speech.sends', 'speech.receives'],
    yieldsTo: ['cores-joined', 'core-on-dead-terminal', 'unit-missing', 'strap-missing-on-loop'],
    find: (context, verdicts) =>
      failing(verdicts, coresReachParts.id).flatMap((verdict) => {
        const index = context.net.branchIndex.get(verdict.subject)
        const part = index === undefined ? undefined : context.net.branches[index]
        return part?.part.role === role ? out(context, verdicts, verdict, part) : []
      }),
  }
}

function out(
  context: CheckContext,
  verdicts: readonly Verdict[],
  { subject, path, says, mend }: Verdict & { readonly mend?: string },
  part: Branch,
): readonly Finding[] {
  const cores = [coreAt(context, part.from), coreAt(context, part.to)].filter((one) => one !== undefined)
  const home = cores.every(({ lands, meant }) => lands === meant[0])
  // its own cores are right and another one is not: that goes by another name
  if (home && firstThatMends(context, verdicts, homeMoves(context), [coresReachParts.id])) return []
  // where each core lies as its sheet says, something else is missing
  const ways = home ? [strapMoves, landingMoves] : [landingMoves, strapMoves]
  const tried = firstThatMends(context, verdicts, inTurn(ways, context, part, cores), ALSO)
  const lost = part.part.role === 'sender' ? 'nobody hears this set' : 'this set hears nobody'
  return [
    {
      subject,
      condition: when(context, 'off-hook/speech'),
      says: `${says} So ${lost}.`,
      path,
      consequences: becomeAll(speechFigures(context), tried && speechFigures(tried.after)),
      ...(tried === undefined
        ? { mend: mend ?? 'land the handset cores as the sheet of this set shows' }
        : mendOf(tried)),
    },
  ]
}

/** Ways of moves, each looked for only where the one before does not mend. */
function* inTurn(
  ways: readonly ((
    context: CheckContext,
    part: Branch,
    cores: readonly NetCore[],
  ) => readonly (readonly Move[])[])[],
  context: CheckContext,
  part: Branch,
  cores: readonly NetCore[],
): Iterable<readonly Move[]> {
  for (const way of ways) yield* way(context, part, cores)
}

function landingMoves(
  context: CheckContext,
  _part: Branch,
  cores: readonly NetCore[],
): readonly (readonly Move[])[] {
  const moves = (bestLanding(context, cores)?.moves ?? []).map(({ core, terminal }) =>
    landCore(context, core, terminal),
  )
  return moves.length === 0 ? [] : [moves]
}

/** Straps that may be missing, neighbours first, or straps that bridge the part and can go. */
function strapMoves(context: CheckContext, part: Branch): readonly (readonly Move[])[] {
  const { net } = context
  const links = linksOf(conducting(net, when(context, 'off-hook/speech'), 'direct'))
  const bridge = pathBetween(net, links, part.from, part.to)
  if (bridge !== undefined) {
    const straps = bridge.branches
      .map((index) => net.branches[index])
      .filter((one) => one?.part.sort === 'strap')
    return straps.flatMap((one) => (one === undefined ? [] : [[takeStrapOff(context, one)]]))
  }
  const best = bestStrap(context, 'off-hook', speechWorth)
  return best === undefined ? [] : [[fitStrap(context, best)]]
}
