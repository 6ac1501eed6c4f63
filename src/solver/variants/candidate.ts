/**
 * What a change does to the laws: which branch's law it replaces, and whether that changes which nodes are joined.
 * A change that does more than replace one law, or that moves the point of parts whose law bends, is left to a
 * fresh solve.
 */
import type { Netlist } from '../../netlist/netlist.ts'
import { type About, Laws, type LawTable, type Mutual } from '../laws.ts'
import type { Question } from '../question.ts'
import { type Solution, voltageBetween } from '../solution.ts'
import { type Change, changed } from './change.ts'

/** One branch's law in numbers. */
export interface BranchLaw {
  readonly a: number
  /** z of an equation, y of an admittance. */
  readonly slope: readonly [re: number, im: number]
  /** e of an equation, s of an admittance. */
  readonly offset: readonly [re: number, im: number]
  /** m of the other branches in an equation. */
  readonly mutuals: readonly Mutual[]
}

/** A change that one branch's law, or one added link, is all of. */
export type Candidate =
  | {
      readonly does: 'law'
      readonly branch: number
      readonly law: BranchLaw
      readonly joins: readonly [before: boolean, after: boolean]
    }
  | { readonly does: 'link'; readonly from: number; readonly to: number; readonly ohms: number }
  /** Nothing changes at this point. */
  | { readonly does: 'none' }
  /** More changes than a table of updates holds. */
  | { readonly does: 'fresh' }

/** The laws of a question and the point about which they are stated. */
export interface Stated {
  readonly laws: Laws
  readonly about: About
  /** Whether some law hangs on its point. */
  readonly bent: boolean
  /** The direct current that such laws rest on, for an alternating question. */
  readonly direct?: Solution | undefined
}

/** A branch that carries less than this, A, and nodes that differ by less, V, change nothing when opened or joined. */
const QUIET = 1e-12

const FRESH: Candidate = { does: 'fresh' }

/** What a change comes to beside the laws of the unchanged question. */
export function candidateOf(net: Netlist, question: Question, stated: Stated, change: Change): Candidate {
  if (stated.bent && movesPoint(net, question, stated, change)) return FRESH
  if ('bridge' in change) {
    const { from, to, ohms } = change.bridge
    return from === to ? { does: 'none' } : { does: 'link', from, to, ohms }
  }
  const after = lawsOf(net, changed(question, [change]), stated.about)
  return difference(stated.laws, after)
}

function lawsOf(net: Netlist, question: Question, about: About): Laws {
  const laws = new Laws(net, question)
  laws.fill(net, question, about)
  return laws
}

/** Whether a change touches direct current, on which the point of bent parts rests. */
function movesPoint(net: Netlist, question: Question, stated: Stated, change: Change): boolean {
  const { about, direct } = stated
  if (about.swing !== undefined) return true
  if (direct !== undefined && isQuiet(direct, change)) return false
  if ('bridge' in change) return true
  const asked: Question = { ...question, analysis: 'direct' }
  const point = { direct: about.direct }
  const same = difference(lawsOf(net, asked, point), lawsOf(net, changed(asked, [change]), point))
  return same.does !== 'none'
}

/** Whether nothing flows where a change opens or bridges. */
function isQuiet(direct: Solution, change: Change): boolean {
  const still = (branch: number): boolean => Math.abs(direct.currents[2 * branch]!) <= QUIET
  if ('lifted' in change) return still(change.lifted)
  if ('within' in change) return still(change.within.branch)
  if (!('bridge' in change)) return false
  const between = voltageBetween(direct, change.bridge.from, change.bridge.to)
  return between !== undefined && Math.abs(between.re) <= QUIET
}

/** The one branch whose law differs. */
function difference(before: Laws, after: Laws): Candidate {
  const branches: number[] = []
  for (let k = 0; k < before.count; k += 1) if (differs(before, after, k)) branches.push(k)
  const [branch] = branches
  if (branches.length > 1) return FRESH
  if (branch === undefined) return { does: 'none' }
  return {
    does: 'law',
    branch,
    law: lawAt(after, branch),
    joins: [before.joins(branch), after.joins(branch)],
  }
}

function differs(p: LawTable, q: LawTable, k: number): boolean {
  if (p.a[k] !== q.a[k]) return true
  if ([2 * k, 2 * k + 1].some((at) => p.slope[at] !== q.slope[at] || p.offset[at] !== q.offset[at]))
    return true
  const [m, n] = [mutualsOf(p, k), mutualsOf(q, k)]
  return m.length !== n.length || m.some((one, at) => one.re !== n[at]?.re || one.im !== n[at]?.im)
}

function mutualsOf({ mutuals }: LawTable, k: number): readonly Mutual[] {
  return mutuals.filter(({ branch }) => branch === k)
}

/** The law of one branch. */
export function lawAt(laws: LawTable, k: number): BranchLaw {
  return {
    a: laws.a[k]!,
    slope: [laws.slope[2 * k]!, laws.slope[2 * k + 1]!],
    offset: [laws.offset[2 * k]!, laws.offset[2 * k + 1]!],
    mutuals: mutualsOf(laws, k),
  }
}
