/** Where else a core could land: its sheets' own landings first, then every terminal of the set. */

import type { Changes, Figure, FigurePlan } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { speechPlans } from '../../figures/speech.ts'
import { conducting, linksOf, without } from '../../netlist/conduct.ts'
import type { NetCore } from '../../netlist/netlist.ts'
import { joinedTo } from '../../netlist/paths.ts'
import { type CheckContext, nodeShort, roleBranches, when } from '../context.ts'
import { limitOf } from '../limits.ts'

/** A core and the terminal that it is thought to land on. */
export interface CoreOnTerminal {
  readonly core: NetCore
  readonly terminal: number
}

/** Cores landed elsewhere, mostly one, and the speech figures that follow. */
export interface Landing {
  readonly moves: readonly CoreOnTerminal[]
  readonly figures: readonly Figure[]
}

/** The three speech figures of the examined set, with what a question changes. Empty without a speech path. */
export function speechFigures(context: CheckContext, changes: Changes = {}): readonly Figure[] {
  const [sender] = roleBranches(context, 'sender')
  const [receiver] = roleBranches(context, 'receiver')
  const { line } = context.net
  if (sender === undefined || receiver === undefined || line === undefined) return []
  const plans: readonly FigurePlan[] = speechPlans(
    { line, sender, receiver },
    when(context, 'off-hook/speech'),
    changes,
  )
  return plans.map((plan) => context.figure(plan))
}

/** What landing a core on a terminal changes in a question. */
export function landed(core: NetCore, terminal: number): Changes {
  return {
    ...(core.branch === undefined ? {} : { lifted: [core.branch] }),
    added: [{ from: core.far, to: terminal }],
  }
}

/** Least of send and receive, relative to the best seen: how much of the speech is left. */
function worth(figures: readonly Figure[], best: readonly number[]): number {
  return Math.min(...[0, 1].map((k) => amountOf(figures[k]) / (best[k] || 1)))
}

/**
 * The landing of one of these cores elsewhere that leaves them apart and most of the speech.
 * The landings of the set's own sheets are preferred to all others; ties go to the first.
 * Where one core is not enough, since another is astray too, all handset cores are landed as the sheets mean.
 */
export function bestLanding(context: CheckContext, cores: readonly NetCore[]): Landing | undefined {
  const known = found.get(context) ?? new Map<string, Landing | undefined>()
  found.set(context, known)
  const key = cores.map(({ name }) => name).join()
  const best = known.has(key) ? known.get(key) : landingOf(context, cores)
  known.set(key, best)
  return best
}

/** Several checks, and the faults after them, ask for the same cores of one wiring: each landing is tried once. */
const found = new WeakMap<CheckContext, Map<string, Landing | undefined>>()

function landingOf(context: CheckContext, cores: readonly NetCore[]): Landing | undefined {
  const own = cores.flatMap((core) => core.meant.map((terminal) => ({ core, terminal })))
  const wired = wiredTerminals(context)
  const all = cores.flatMap((core) => wired.map((terminal) => ({ core, terminal })))
  const one = pick(context, cores, own) ?? pick(context, cores, all)
  const home = allHome(context)
  if (one === undefined || home === undefined) return one ?? home
  const best = [0, 1].map((k) => Math.max(...[one, home].map(({ figures }) => amountOf(figures[k]))))
  const enough = limitOf(context.limits, 'joined-cores').value
  return worth(one.figures, best) >= worth(home.figures, best) * enough ? one : home
}

/** Terminals that something other than a core meets, one of each group that links join. */
function wiredTerminals(context: CheckContext): readonly number[] {
  const { net, place } = context
  const met = new Set(
    net.branches
      .filter((branch) => branch.part.place === place.place && branch.part.sort !== 'core')
      .flatMap((branch) => [branch.from, branch.to]),
  )
  const seen = new Set<number>()
  const links = linksOf(conducting(net, when(context, 'off-hook/speech'), 'direct'))
  return place.terminals.filter((terminal) => {
    if (!met.has(terminal) || seen.has(terminal)) return false
    for (const node of joinedTo(net, links, terminal)) seen.add(node)
    return true
  })
}

function allHome(context: CheckContext): Landing | undefined {
  const moves = context.place.cores.flatMap((core) => {
    const [terminal] = core.meant
    return core.endsIn === 'handset' && terminal !== undefined && terminal !== core.lands
      ? [{ core, terminal }]
      : []
  })
  const changes = moves.map(({ core, terminal }) => landed(core, terminal))
  const figures = speechFigures(context, {
    lifted: changes.flatMap(({ lifted = [] }) => lifted),
    added: changes.flatMap(({ added = [] }) => added),
  })
  return moves.length === 0 || figures.length === 0 ? undefined : { moves, figures }
}

function pick(
  context: CheckContext,
  cores: readonly NetCore[],
  candidates: readonly CoreOnTerminal[],
): Landing | undefined {
  const links = linksOf(conducting(context.net, when(context, 'off-hook/speech'), 'direct'))
  const landings = candidates
    .filter(({ core, terminal }) => terminal !== core.lands && apart(context, links, cores, core, terminal))
    .map(({ core, terminal }) => ({
      moves: [{ core, terminal }],
      figures: speechFigures(context, landed(core, terminal)),
    }))
    .filter(({ figures }) => figures.length > 0)
  const best = [0, 1].map((k) => Math.max(0, ...landings.map(({ figures }) => amountOf(figures[k]))))
  let chosen: Landing | undefined
  for (const one of landings) {
    if (chosen === undefined || worth(one.figures, best) > worth(chosen.figures, best) * (1 + 1e-9))
      chosen = one
  }
  return chosen
}

function apart(
  { net }: CheckContext,
  links: ReturnType<typeof linksOf>,
  cores: readonly NetCore[],
  core: NetCore,
  terminal: number,
): boolean {
  const left = core.branch === undefined ? links : without(links, [core.branch])
  const joined = joinedTo(net, left, terminal)
  return cores.every((other) => other === core || !joined.has(other.far))
}

/** Landings as moves at the bench. */
export function landingMove(context: CheckContext, moves: readonly CoreOnTerminal[]): string {
  return moves
    .map(({ core, terminal }) => `land core ${core.name} on ${nodeShort(context, terminal)}`)
    .join(', ')
}
