/** Which branches conduct in an analysis and condition, for questions that need no numbers. */
import type { GateState, LawPoint, LawSink } from '../parts/kind.ts'
import { type Condition, gateState, ON_HOOK } from './condition.ts'
import type { Branch, Netlist, NetPart } from './netlist.ts'

/** Which branches take part in a graph question. */
export type Choice = (branch: Branch) => boolean

/** The state of a part in a condition: its contact's, or open when the line's state leaves it out. */
export function stateOf(part: NetPart, condition: Condition): GateState {
  if (part.during !== undefined && !part.during.includes(condition.line)) return 'open'
  if (part.gate === undefined) return 'closed'
  const own = Object.hasOwn(condition.sets, part.place) ? condition.sets[part.place] : undefined
  return gateState(part.gate, own ?? ON_HOOK)
}

/** Frequency at which a question without a frequency asks for alternating current: 1 kHz, rad/s. */
const ASKING_OMEGA = 2000 * Math.PI

/** A swing at which every part that hangs on one has come to life, V rms. */
const ASKING_SWING = 1e3

/** The point of a graph question: at rest in direct current, in full swing in alternating. */
function asking(analysis: LawPoint['analysis']): LawPoint {
  if (analysis === 'direct') return { analysis, omega: 0 }
  return { analysis, omega: ASKING_OMEGA, swing: () => ASKING_SWING }
}

/** Hears of each law only whether it joins the branch's two ends. */
class JoinSink implements LawSink {
  readonly joins: boolean[] = []
  readonly stores: boolean[] = []
  admittance(branch: number, yRe: number, yIm: number): void {
    this.joins[branch] = yRe !== 0 || yIm !== 0
    this.stores[branch] = yIm > 0
  }
  equation(branch: number, a: number): void {
    this.joins[branch] = a !== 0
  }
  mutual(): void {
    // magnetic coupling joins nothing
  }
}

/** The branches that store charge in a condition: capacitors, leaky or not. */
export function capacitive(net: Netlist, condition: Condition): Choice {
  const stores = remembered(net, `stores ${JSON.stringify(condition)}`, () => storesIn(net, condition))
  return (branch) => stores[branch.index] === 1
}

function storesIn(net: Netlist, condition: Condition): Uint8Array {
  const at = asking('alternating')
  const stores = new Uint8Array(net.branches.length)
  for (const part of net.parts) {
    const sink = new JoinSink()
    part.law.law(part.spec, at, stateOf(part, condition), sink)
    sink.stores.forEach((yes, k) => {
      if (yes) stores[part.first + k] = 1
    })
  }
  return stores
}

/** Answers of one netlist that are kept at the same time. */
const KEPT = 256

const known = new WeakMap<Netlist, Map<string, Uint8Array>>()

/** What every branch does in a condition is asked again and again: once is enough. */
function remembered(net: Netlist, key: string, make: () => Uint8Array): Uint8Array {
  let answers = known.get(net)
  if (answers === undefined || answers.size >= KEPT) {
    answers = new Map()
    known.set(net, answers)
  }
  const before = answers.get(key)
  if (before !== undefined) return before
  const made = make()
  answers.set(key, made)
  return made
}

/**
 * The branches that conduct: contacts that are open do not, whatever they leak;
 * capacitors only for alternating current.
 */
export function conducting(net: Netlist, condition: Condition, analysis: LawPoint['analysis']): Choice {
  const key = `${analysis} ${JSON.stringify(condition)}`
  const conducts = remembered(net, key, () => conductsIn(net, condition, analysis))
  return (branch) => conducts[branch.index] === 1
}

function conductsIn(net: Netlist, condition: Condition, analysis: LawPoint['analysis']): Uint8Array {
  const at = asking(analysis)
  const conducts = new Uint8Array(net.branches.length)
  for (const part of net.parts) {
    const state = stateOf(part, condition)
    if (state === 'open') continue
    const sink = new JoinSink()
    part.law.law(part.spec, at, state, sink)
    for (let k = 0; k < part.count; k += 1) conducts[part.first + k] = sink.joins[k] === true ? 1 : 0
  }
  return conducts
}

/**
 * Only links among a choice: straps, cores, contacts and plug contacts, which join their ends to one point,
 * those that a sheet or a move puts among the parts included. The wires of a cable are a way of some length.
 */
export function linksOf(choice: Choice): Choice {
  return (branch) => branch.part.role === 'link' && branch.part.sort !== 'cable' && choice(branch)
}

/** A choice without some branches. */
export function without(choice: Choice, left: Iterable<number>): Choice {
  const out = new Set(left)
  return (branch) => !out.has(branch.index) && choice(branch)
}
