/**
 * The contract of every kind of part. A new kind is one file that exports a `PartKind`
 * and one line in `index.ts`; no shared code ever asks for a kind by name.
 *
 * A part becomes one or several *branches*, each with two ends, a voltage `v = V(from) − V(to)`
 * and a current `i` that is positive from `from` to `to` through the part. The part states the law
 * of each branch in one of two forms, chosen once for its values:
 *
 *   admittance   i = y·v + s
 *   equation     a·v − z·i − Σ m·i(other branch of the same part) = e
 *
 * Links, windings, sources and resistances below 1 Ω are equations, with the current as an unknown;
 * larger resistances are admittances (design 5, "Trust").
 */
import type { ZodMiniType } from 'zod/mini'
import type { Problem } from '../problem.ts'

/** A part as its sheet writes it, after reading: `kind` and whatever the kind's schema says. */
export interface PartSpec {
  readonly kind: string
}

/** What figures look for, in place of kinds. */
export type Role = 'sender' | 'receiver' | 'sounder' | 'source' | 'winding' | 'quench' | 'link'

/** In which form a branch states its law. */
export type Form = 'admittance' | 'equation'

/** One branch of a part, before it has nodes. */
export interface BranchPlan {
  /** Empty for a part with one branch; else the winding's name (`coil.a`). */
  readonly suffix: string
  /** Ends as the sheet names them. */
  readonly from: string
  readonly to: string
  readonly form: Form
}

/** The point at which a law is asked for. */
export interface LawPoint {
  readonly analysis: 'direct' | 'alternating'
  /** Angular frequency in rad/s; 0 for direct current. */
  readonly omega: number
}

/** Takes the laws of one part, branch by branch; indices count the part's own branches. */
export interface LawSink {
  /** i = y·v + s, in siemens and amperes. */
  admittance(branch: number, yRe: number, yIm: number, sRe?: number, sIm?: number): void
  /** a·v − z·i = e, in volts when a is 1. `a = 0, z = 1, e = 0` is an open branch. */
  equation(branch: number, a: number, zRe: number, zIm: number, eRe?: number, eIm?: number): void
  /** Takes m·i(other) from the left side of `branch`'s equation, in ohms. */
  mutual(branch: number, other: number, mRe: number, mIm: number): void
}

/** When a branch conducts: a contact's word, and whether it closes or opens by it. */
export interface Gate {
  readonly word: GateWord
  readonly closed: boolean
}
/** What a contact answers to. */
export type GateWord = 'off-hook' | 'off-normal' | 'make' | 'break' | 'key'

/** The state of a part's contact in a condition: parts without a gate are always closed. */
export type GateState = 'closed' | 'open'

/** What a netlist needs of a part: its branches and their laws. Lines and sockets bring such parts of their own. */
export interface PartLaw<Spec extends PartSpec = PartSpec> {
  readonly kind: string
  /** One sentence for the reference. */
  readonly says: string
  readonly role?: Role
  branches(spec: Spec): readonly BranchPlan[]
  /** States every branch's law once. Pure: same spec, point and gate give the same laws. */
  law(spec: Spec, at: LawPoint, gate: GateState, sink: LawSink): void
  /** Present for kinds that a set's condition switches. */
  gate?(spec: Spec): Gate
  /** Why a figure that rests on this part in this analysis is approximate; undefined when it is not. */
  standIn?(spec: Spec, at: LawPoint): string | undefined
  /** Least current and its frequency at which a sounder sounds, A rms and Hz. */
  sounds?(spec: Spec): { readonly current: number; readonly frequency: number }
}

/** What a schema cannot see; the reader fills in the place. `at` is the key inside the part. */
export interface PartProblem extends Omit<Problem, 'place' | 'severity'> {
  readonly at?: readonly string[]
}

/** A kind of part that a sheet may name: the law, its schema and what the schema cannot see. */
export interface PartKind<Spec extends PartSpec = PartSpec> extends PartLaw<Spec> {
  readonly schema: ZodMiniType<Spec>
  check?(spec: Spec): readonly PartProblem[]
}
