/** Where else a core could land: its sheets' own landings first, then every terminal of the set. */

import type { Changes, Figure, FigurePlan } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { speechPlans } from '../../figures/speech.ts'
import { tableVariants } from '../../figures/table-variants.ts'
import type { Change } from '../../figures/variants.ts'
import { conducting, linksOf, without } from '../../netlist/conduct.ts'
import type { NetCore } from '../../netlist/netlist.ts'
import { joinedTo } from '../../netlist/paths.ts'
import { type CheckContext, nodeShort, roleBranches, when } from '../context.ts'
import { limitOf } from '../limits.ts'

/** Resistance of the strap that a trial puts between two nodes, ohms; as the solver's own. Common practice, no source. */
const ADDED_STRAP = 0.01
/** Fewer trials are solved each by itself. */
const WORTH_A_TABLE = 4

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
  return plansOf(context, changes).map((plan) => context.figure(plan))
}

function plansOf(context: CheckContext, changes: Changes = {}): readonly FigurePlan[] {
  const [sender] = roleBranches(context, 'sender')
  const [receiver] = roleBranches(context, 'receiver')
  const { line } = context.net
  if (sender === undefined || receiver === undefined || line === undefined) return []
  return speechPlans({ line, sender, receiver }, when(context, 'off-hook/speech'), changes)
}

/** What landing a core on a terminal changes in a question. */
export function landed(core: NetCore, terminal: number): Changes {
  return {
    ...(core.branch === undefined ? {} : { lifted: [core.branch] }),
    added: [{ from: core.far, to: terminal }],
  }
}

/** Least of send and receive, relative to the best seen: how much of the speech is left. */
function worth(amounts: readonly number[], best: readonly number[]): number {
  return Math.min(...[0, 1].map((k) => (amounts[k] ?? 0) / (best[k] || 1)))
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
  const [ours, theirs] = [amounts(one), amounts(home)]
  const best = [0, 1].map((k) => Math.max(ours[k] ?? 0, theirs[k] ?? 0))
  const enough = limitOf(context.limits, 'joined-cores').value
  return worth(ours, best) >= worth(theirs, best) * enough ? one : home
}

function amounts({ figures }: Landing): readonly number[] {
  return figures.map(amountOf)
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
  const landings = candidates.filter(
    ({ core, terminal }) => terminal !== core.lands && apart(context, links, cores, core, terminal),
  )
  const tried = speechOfLandings(context, landings)
  const best = [0, 1].map((k) => Math.max(0, ...tried.map((one) => one[k] ?? 0)))
  let chosen: CoreOnTerminal | undefined
  let most = 0
  landings.forEach((landing, k) => {
    const own = worth(tried[k] ?? [], best)
    if (chosen !== undefined && own <= most * (1 + 1e-9)) return
    chosen = landing
    most = own
  })
  if (chosen === undefined) return undefined
  const figures = speechFigures(context, landed(chosen.core, chosen.terminal))
  return figures.length === 0 ? undefined : { moves: [chosen], figures }
}

/**
 * Send and receive with each of these landings. Of a dozen trials only one is wanted in full, so they are small changes
 * of the network as it is; the figures of the chosen one are solved by themselves.
 */
export function speechOfLandings(
  context: CheckContext,
  landings: readonly CoreOnTerminal[],
): readonly (readonly number[])[] {
  if (landings.length < WORTH_A_TABLE)
    return landings.map(({ core, terminal }) =>
      speechFigures(context, landed(core, terminal)).map((figure) => amountOf(figure)),
    )
  const plans = plansOf(context).filter(({ id }) => id !== 'speech.sidetone')
  if (plans.length === 0) return []
  const changes: Change[] = []
  const lifted = new Map<NetCore, number>()
  for (const { core } of landings) {
    if (core.branch !== undefined && !lifted.has(core))
      lifted.set(core, changes.push({ lifted: core.branch }) - 1)
  }
  const made = landings.map(({ core, terminal }) => [
    ...[lifted.get(core) ?? []].flat(),
    changes.push({ bridge: { from: core.far, to: terminal, ohms: ADDED_STRAP } }) - 1,
  ])
  const table = tableVariants(context.net, plans, changes)
  const out = new Float64Array(plans.length)
  return made.map((those) => {
    table.read(those, out)
    return Array.from(out, (amount) => (Number.isFinite(amount) ? amount : 0))
  })
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
