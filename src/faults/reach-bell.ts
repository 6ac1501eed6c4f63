/** How the ringing core comes to the bell: where it lands, and what must go or come with it. */
import { type CheckContext, when } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { landed } from '../checks/wiring/landing.ts'
import { CAPACITOR_SHARE } from '../figures/ringing.ts'
import { capacitive } from '../netlist/conduct.ts'
import type { Branch, NetCore } from '../netlist/netlist.ts'
import type { Move } from '../sheet/model.ts'
import { bellCurrent, ownBellCurrents, ringsFrom, SILENT } from './measure.ts'
import { failing } from './named-fault.ts'
import { quenchFor } from './quench-lost.ts'
import { completed, judged, mends, moved, type Tried } from './try-mend.ts'
import { landCore, ownBranches, terminalGroups } from './wires.ts'

const CHECKS = [
  'wiring.ringing-lead-to-bell',
  'wiring.ringing-lead-alone',
  'wiring.bell-return',
  'wiring.one-ringing-capacitor',
  'wiring.quench-present',
  'wiring.spares-free',
  'wiring.loop-open-on-hook',
]

/** So many parts may have to go or come with one landing. */
const ROUNDS = 4

/** The moves that bring a core to a bell, tried; undefined where none was found. */
export function reachBell(
  context: CheckContext,
  before: readonly Verdict[],
  bell: Branch,
  core: NetCore,
): Tried | undefined {
  const own = ownCapacitors(context)
  const groups = terminalGroups(context, 'on-hook').flatMap(([first]) => (first === undefined ? [] : [first]))
  const terminals = [...new Set([...core.meant, ...groups])].filter((one) => one !== core.lands)
  const lifts = own.map((one) => [one])
  // a bell that rings already has a capacitor of its own, which goes when the ringing lead comes
  const now = bellCurrent(context, bell)?.value ?? 0
  const already = now >= (ringsFrom(bell) ?? Number.POSITIVE_INFINITY)
  for (const lifted of already ? lifts : [[], ...lifts]) {
    for (const terminal of terminals) {
      if (!rings(context, bell, core, terminal, lifted)) continue
      const gone = lifted.map(({ part }): Move => ({ do: 'lift part', what: part.name }))
      const tried = followUp(context, before, [...gone, landCore(context, core, terminal)])
      if (tried !== undefined) return tried
    }
  }
  return undefined
}

/** Whether the bell would ring from there, by a question that changes the wiring without compiling it anew. */
function rings(
  context: CheckContext,
  bell: Branch,
  core: NetCore,
  terminal: number,
  lifted: readonly Branch[],
): boolean {
  const change = landed(core, terminal)
  const out = [...(change.lifted ?? []), ...lifted.map(({ index }) => index)]
  const value = bellCurrent(context, bell, { ...change, lifted: out })?.value ?? 0
  return value >= (ringsFrom(bell) ?? Number.POSITIVE_INFINITY)
}

/** Capacitors of the set that carry a good part of the ringing current of one of its bells. */
export function ownCapacitors(context: CheckContext): readonly Branch[] {
  const bells = ownBellCurrents(context).map(({ value }) => value ?? 0)
  const least = Math.max(SILENT, CAPACITOR_SHARE * Math.max(0, ...bells))
  const stores = capacitive(context.net, when(context, 'on-hook/ringing'))
  return ownBranches(context).filter(
    (branch) =>
      branch.part.sort === 'part' &&
      branch.part.role === undefined &&
      stores(branch) &&
      (bellCurrent(context, branch)?.value ?? 0) >= least,
  )
}

/** Moves, and what they make necessary: parts that now tie the ringing lead to a wire go, a lost quench comes. */
function followUp(
  context: CheckContext,
  before: readonly Verdict[],
  first: readonly Move[],
): Tried | undefined {
  let moves = first
  for (let round = 0; round < ROUNDS; round += 1) {
    const tried = moved(context, moves)
    if (tried === undefined) return undefined
    if (mends(before, tried.after, CHECKS)) return completed(context, before, tried)
    const next = necessary(tried.after, judged(tried.after, CHECKS))
    if (next === undefined) return undefined
    moves = [...moves, next]
  }
  return undefined
}

function necessary(after: CheckContext, verdicts: readonly Verdict[]): Move | undefined {
  const [stray] = failing(verdicts, 'wiring.ringing-lead-alone')
  const tying = stray && partOnPath(after, stray.path)
  if (tying !== undefined) return { do: 'lift part', what: tying.part.name }
  const [quench] = failing(verdicts, 'wiring.quench-present')
  return quench === undefined ? undefined : quenchFor(after, quench.subject)
}

/** The first part of the set between two neighbours of a path. */
export function partOnPath(context: CheckContext, path: readonly string[]): Branch | undefined {
  const parts = ownBranches(context).filter(({ part }) => part.sort === 'part')
  const steps = path.slice(1).map((id, k) => [path[k], id] as const)
  for (const [p, q] of steps) {
    const found = parts.find(({ from, to }) => {
      const ends = [context.net.nodes[from], context.net.nodes[to]]
      return ends.includes(p) && ends.includes(q)
    })
    if (found !== undefined) return found
  }
  return undefined
}
