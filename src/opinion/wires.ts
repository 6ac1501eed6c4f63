/** The network once more, read off the graph: every edge with its ends, and the law that its part states there. */
import { stateOf } from '../netlist/conduct.ts'
import type { Netlist, NetPart } from '../netlist/netlist.ts'
import type { GateState, LawPoint } from '../parts/kind.ts'
import type { Question } from '../solver/question.ts'
import type { Solution } from '../solver/solution.ts'
import type { Big } from './big.ts'
import { type BranchLaw, type Heard, inSeries, openBranch, plainBranch, resting } from './branch-law.ts'
import { ElementEar } from './element-ear.ts'
import { LawEar } from './law-ear.ts'
import type { Pairs } from './pair.ts'

/** One branch of the second opinion. */
export interface Wire {
  /** The graph's key; of a strap or resistance that the question adds, its ends in words. */
  readonly id: string
  readonly from: string
  readonly to: string
  readonly law: BranchLaw
}

/** All branches: the graph's edges in the order of their index, then what the question adds. */
export interface Wiring {
  readonly wires: readonly Wire[]
  /** Parts whose values enter as doubles. */
  readonly rounded: readonly string[]
  /** Parts whose law is stated about the point of the solution that is judged. */
  readonly bent: readonly string[]
}

/** Resistance of a strap that a question adds, ohms, as a sheet's. Common practice, no source. */
const ADDED_STRAP = 0.01

/** Reads the wiring of a question off the graph; laws that bend are stated about `ours`. */
export function wiringOf(net: Netlist, question: Question, ours: Solution, pairs: Pairs): Wiring {
  const omega = omegaOf(question, pairs)
  const rounded = new Set<string>()
  const bent = new Set<string>()
  const heard = new Map<NetPart, Heard>()
  const hear = (part: NetPart): Heard => {
    const known = heard.get(part)
    if (known !== undefined) return known
    const made = listen(net, part, question, ours, pairs, omega)
    if (made.heard.rounded) rounded.add(part.id)
    if (made.bent) bent.add(part.id)
    heard.set(part, made.heard)
    return made.heard
  }
  const wires: Wire[] = []
  net.graph.forEachEdge((id, { branch }, from, to) => {
    const edge = net.branches[branch]
    const law = edge && hear(edge.part).laws.get(edge.ordinal)
    if (law === undefined) throw new TypeError(`${id} states no law`)
    wires[branch] = { id, from, to, law: changed(law, branch, question, pairs) }
  })
  const name = (node: number): string => net.nodes[node] ?? ''
  const links = [
    ...(question.added ?? []).map((one) => ({ ...one, ohms: ADDED_STRAP })),
    ...(question.bridges ?? []),
  ]
  for (const { from, to, ohms } of links) {
    const id = `${name(from)} to ${name(to)}, added`
    wires.push({ id, from: name(from), to: name(to), law: plainBranch(pairs, pairs.of(ohms)) })
  }
  return { wires, rounded: [...rounded], bent: [...bent] }
}

/** ω in rad/s; 0 for direct current. */
function omegaOf({ analysis, frequency = 0 }: Question, { digits }: Pairs): Big {
  if (analysis === 'direct') return digits.of(0)
  return digits.of(2).times(digits.pi).times(digits.of(frequency))
}

/** What one part states, about our point where its law bends. */
function listen(
  net: Netlist,
  part: NetPart,
  question: Question,
  ours: Solution,
  pairs: Pairs,
  omega: Big,
): { heard: Heard; bent: boolean } {
  const state = stateOf(part, question.condition)
  const other = question.instead?.find((one) => net.parts[one.part] === part)
  const spec = other?.spec ?? part.spec
  const asleep = question.sources === 'none' && part.role === 'source'
  const bends =
    state === 'closed' && !asleep && question.small === undefined ? part.law.bends?.(spec) : undefined
  const at = pointOf(net, part, question, omega, bends === undefined ? undefined : ours)
  const heard = stated(part, spec, at, state, pairs, omega)
  if (asleep) for (const [k, law] of heard.laws) heard.laws.set(k, resting(pairs, law))
  for (const k of heard.laws.keys()) {
    const ohms = ours.chords?.get(part.first + k)
    if (ohms !== undefined) heard.laws.set(k, plainBranch(pairs, pairs.of(ohms)))
  }
  return { heard, bent: bends !== undefined && bends.length > 0 }
}

function stated(
  part: NetPart,
  spec: NetPart['spec'],
  at: LawPoint,
  state: GateState,
  pairs: Pairs,
  omega: Big,
): Heard {
  if (part.law.elements !== undefined) {
    const ear = new ElementEar(pairs, omega)
    part.law.elements(spec, at, state, ear)
    return ear
  }
  const { direct } = at
  const tangent = at.analysis === 'direct' && direct !== undefined
  const ear = new LawEar(pairs, tangent ? (branch) => direct(branch).voltage : undefined)
  part.law.law(spec, at, state, ear)
  return ear
}

/** The point at which a part is asked: ω as a double, and what our solution carries in its branches. */
function pointOf(
  net: Netlist,
  part: NetPart,
  question: Question,
  omega: Big,
  ours: Solution | undefined,
): LawPoint {
  const at = { analysis: question.analysis, omega: omega.toNumber() }
  const { point, swing } = ours ?? {}
  const { first } = part
  return {
    ...at,
    ...(point === undefined
      ? {}
      : {
          direct: (k: number) => ({
            voltage: point.voltage[first + k] ?? 0,
            current: point.current[first + k] ?? 0,
          }),
        }),
    ...(swing === undefined ? {} : { swing: (k: number) => swingOf(net, ours, first + k) }),
  }
}

/** The size of the voltage that our solution has across a branch; between two islands it has none, but kept one. */
function swingOf(net: Netlist, ours: Solution | undefined, branch: number): number {
  const { from = 0, to = 0 } = net.branches[branch] ?? {}
  if (ours === undefined || ours.island[from] !== ours.island[to]) return ours?.swing?.[branch] ?? 0
  const { voltages, voltageTails: tails } = ours
  const fall = (part: 0 | 1): number => {
    const [p, q] = [2 * from + part, 2 * to + part]
    return (voltages[p] ?? 0) - (voltages[q] ?? 0) + ((tails[p] ?? 0) - (tails[q] ?? 0))
  }
  return Math.hypot(fall(0), fall(1))
}

/** What the question changes of one branch. */
function changed(law: BranchLaw, branch: number, question: Question, pairs: Pairs): BranchLaw {
  if (question.lifted?.includes(branch) === true) return openBranch(pairs)
  let now = law
  for (const one of question.within ?? [])
    if (one.branch === branch) now = inSeries(now, pairs.of(one.ohms), pairs.zero)
  for (const one of question.series ?? [])
    if (one.branch === branch) now = inSeries(now, pairs.zero, pairs.of(one.re, one.im))
  return now
}
