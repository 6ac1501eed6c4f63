/** `follow`: the path that carries a current in a condition, from terminal to terminal. */
import { branchAt, type Netlist, nodeName } from '../netlist/netlist.ts'
import { pathBetween } from '../netlist/paths.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { currentIn, type Solution, sizeOf } from '../solver/solution.ts'
import { solve } from '../solver/solve.ts'
import type { FollowAnswer } from './answer.ts'
import { conditionAsAsked, conditionIn } from './condition-of-request.ts'
import { envelope } from './envelope.ts'
import { networkOf, type SolveRequest } from './solve.ts'
import { checkFrequency } from './solve-answer.ts'
import { whereAsked } from './where-asked.ts'

/** What is followed. Without ends: from the a wire at the exchange to its b wire, or along the first source. */
export interface FollowRequest extends SolveRequest {
  readonly from?: string
  readonly to?: string
}

/** Currents below this are no current to follow, A. */
const LEAST = 1e-9

/** Follows the widest current between two nodes. */
export function follow(request: FollowRequest, shelf: Shelf): FollowAnswer {
  const { net, place, name, circuit, stands, warnings } = networkOf(request, shelf)
  const condition = conditionIn(net, place, request.condition, 'off-hook')
  const frequency = request.frequency ?? circuit?.frequency?.value ?? ringingOf(net, condition.line)
  checkFrequency(frequency)
  const analysis = frequency === undefined ? 'direct' : 'alternating'
  const solution = solve(net, {
    analysis,
    condition,
    ...(frequency === undefined ? {} : { frequency }),
  })
  const { from, to, left } = endsOf(net, place, request)
  const steps = widest(net, solution, from, to, left)
  const reasons = [...solution.standIns.keys()]
  return {
    ...envelope(
      'follow',
      {
        follow: name,
        ...whereAsked(request),
        condition: conditionAsAsked(condition),
        frequency: frequency ?? null,
        from: nodeName(net, from),
        to: nodeName(net, to),
      },
      warnings,
    ),
    ...(stands === undefined ? {} : { stands }),
    outcome: 'answered',
    condition: conditionAsAsked(condition),
    analysis,
    frequency: frequency ?? null,
    steps,
    ...(reasons.length === 0 ? {} : { approximate: reasons.join('; ') }),
  }
}

function ringingOf(net: Netlist, line: string): number | undefined {
  return line === 'ringing' ? net.line?.ringingFrequency : undefined
}

function endsOf(
  net: Netlist,
  place: string,
  request: FollowRequest,
): { from: number; to: number; left: ReadonlySet<number> } {
  const source = net.branches.find((branch) => branch.part.role === 'source')
  const from = request.from === undefined ? (net.line?.a ?? source?.from) : named(net, place, request.from)
  const to = request.to === undefined ? (net.line?.b ?? source?.to) : named(net, place, request.to)
  if (from === undefined || to === undefined || from === to) {
    refuse({
      code: 'request-wrong',
      found: 'no two ends',
      expected: 'two nodes to follow a current between',
      mend: 'give `--from` and `--to`',
    })
  }
  return { from, to, left: new Set(net.line?.exchange ?? (source === undefined ? [] : [source.index])) }
}

function named(net: Netlist, place: string, id: string): number {
  const found = net.nodeIndex.get(id) ?? net.nodeIndex.get(`${place}/${id}`)
  if (found !== undefined) return found
  const near = nearest(id, net.nodes)
  refuse({
    code: 'request-wrong',
    found: `the node \`${id}\``,
    expected: 'a terminal, joint, core or socket wire of this network',
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** The path whose smallest current is largest: branches join by falling current until both ends meet. */
function widest(
  net: Netlist,
  solution: Solution,
  from: number,
  to: number,
  left: ReadonlySet<number>,
): FollowAnswer['steps'] {
  const size = (k: number): number => sizeOf(currentIn(solution, k))
  const order = net.branches
    .filter((branch) => !left.has(branch.index) && size(branch.index) > LEAST)
    .sort((p, q) => size(q.index) - size(p.index) || p.index - q.index)
  const chosen = new Set<number>()
  for (const branch of order) {
    chosen.add(branch.index)
    // branches of nearly the same current belong together: try only when the current falls
    const next = order[chosen.size]
    if (next !== undefined && size(next.index) > size(branch.index) * (1 - 1e-6)) continue
    const path = pathBetween(net, (one) => chosen.has(one.index), from, to)
    if (path === undefined) continue
    return path.nodes.map((node, k) => ({
      ...step(net, solution, node, path.branches[k]),
      ...restAt(net, solution, node, [path.branches[k - 1], path.branches[k]]),
    }))
  }
  return [{ node: nodeName(net, from) }]
}

function step(
  net: Netlist,
  solution: Solution,
  node: number,
  index: number | undefined,
): FollowAnswer['steps'][number] {
  if (index === undefined) return { node: nodeName(net, node) }
  const branch = branchAt(net, index)
  const { origin, sort } = branch.part
  return {
    node: nodeName(net, node),
    branch: branch.id,
    current: sizeOf(currentIn(solution, index)),
    sort,
    ...(origin === undefined ? {} : { origin: `${origin.file}:${origin.line}` }),
  }
}

/** A current that differs by less than this share goes on whole. */
const WHOLE = 0.01
/** So many branches beside the path are named. */
const MOST_BESIDE = 3

/** Where the rest goes at a node: the largest branches beside the path, where the path's current changes there. */
function restAt(
  net: Netlist,
  solution: Solution,
  node: number,
  [before, after]: readonly [number | undefined, number | undefined],
): Pick<FollowAnswer['steps'][number], 'rest'> {
  if (before === undefined || after === undefined) return {}
  const size = (k: number): number => sizeOf(currentIn(solution, k))
  const most = Math.max(size(before), size(after))
  if (Math.abs(size(before) - size(after)) < WHOLE * most) return {}
  const beside = net.branches
    .filter(({ index, from, to }) => index !== before && index !== after && (from === node || to === node))
    .map(({ id, index }) => ({ branch: id, current: size(index) }))
    .filter(({ current }) => current > WHOLE * most)
    .sort((p, q) => q.current - p.current)
    .slice(0, MOST_BESIDE)
  return beside.length === 0 ? {} : { rest: beside }
}
