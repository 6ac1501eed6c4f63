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

/** The direct voltage and current of one branch, V and A. */
export interface Working {
  readonly voltage: number
  readonly current: number
}

/** The point at which a law is asked for. */
export interface LawPoint {
  readonly analysis: 'direct' | 'alternating'
  /** Angular frequency in rad/s; 0 for direct current. */
  readonly omega: number
  /**
   * What each of the part's own branches carries in direct current, for laws that bend: in direct current the
   * law is stated as its tangent there, in alternating current by what that point leaves to small signals.
   * At rest, 0 V and 0 A, when absent.
   */
  readonly direct?: (branch: number) => Working
  /**
   * Alternating voltage across each of the part's own branches, V rms, for laws that hang on the size of
   * what they carry (describing functions). Small signals when absent.
   */
  readonly swing?: (branch: number) => number
}

/** On what a law depends besides its values: the direct-current point, the size of the alternating voltage. */
export type Bend = 'direct' | 'swing'

/** Takes the laws of one part, branch by branch; indices count the part's own branches. */
export interface LawSink {
  /** i = y·v + s, in siemens and amperes. */
  admittance(branch: number, yRe: number, yIm: number, sRe?: number, sIm?: number): void
  /** a·v − z·i = e, in volts when a is 1. `a = 0, z = 1, e = 0` is an open branch. */
  equation(branch: number, a: number, zRe: number, zIm: number, eRe?: number, eIm?: number): void
  /** Takes m·i(other) from the left side of `branch`'s equation, in ohms. */
  mutual(branch: number, other: number, mRe: number, mIm: number): void
}

/**
 * Takes the same laws once more as plain elements by the sheet's own values, for the second opinion, which
 * computes with them in as many digits as it is asked for. Ohms may be 0; `Infinity` ohms is no resistor at all.
 */
export interface ElementSink {
  /** i = 0. */
  open(branch: number): void
  /** v = (R + jωL)·i + e, in ohms, henries and volts. */
  series(branch: number, ohms: number, henries: number, eRe?: number, eIm?: number): void
  /** i = (1/R + jωC)·v + s, in ohms, farads and amperes. */
  beside(branch: number, ohms: number, farads: number, sRe?: number, sIm?: number): void
  /** Adds jω·k·√(L·L′)·i(other) to the voltage of `branch`. */
  coupled(branch: number, other: number, k: number, henries: number, otherHenries: number): void
}

/**
 * What a fault does to a part. `open`: nothing flows in the branch. `across`: so many ohms stand beside it.
 * `within`: so many ohms stand in series with it. `instead`: the part has these values in place of its own.
 */
export type FaultChange =
  | { readonly open: true }
  | { readonly across: number }
  | { readonly within: number }
  | { readonly instead: PartSpec }

/** In what way a part is wrong, whatever the part: modes of one family are mended alike. */
export type FaultFamily =
  | 'open'
  | 'resists'
  | 'shorted'
  | 'leaky'
  | 'lost-value'
  | 'drifted'
  | 'shorted-turns'
  | 'packed'
  | 'weak-magnet'
  | 'stuck'
  | 'damp'
  | 'turned'

/** One way in which a part goes wrong. */
export interface FaultMode {
  /** Unique among the part's modes: `open`, `shorted`, `leaky`, `lost-value`, `packed` … */
  readonly mode: string
  readonly family: FaultFamily
  /** Which of the part's own branches it befalls; all when absent. */
  readonly branch?: number
  /** Of what within the part it is said, where not of the whole: "winding a". */
  readonly of?: string
  /** What is wrong, for a person, after the part's name: "is open". */
  readonly says: string
  /** What eye, hand or ear would find. */
  readonly sign: string
  /** What mends it, an order to a person; as others of its family are mended when absent. */
  readonly mend?: string
  /** How often among a thousand parts of this kind of that age, and where the figure is from. */
  readonly weight: number
  readonly source: string
  readonly change: FaultChange
}

/** A stroke of a symbol on a unit grid; y points down. */
export type Stroke =
  | { readonly line: readonly (readonly [x: number, y: number])[]; readonly closed?: true }
  | { readonly arc: readonly [x: number, y: number, radius: number, fromDegrees: number, toDegrees: number] }
  | { readonly dot: readonly [x: number, y: number] }
  | { readonly letters: string; readonly at: readonly [x: number, y: number] }

/** A symbol as IEC 60617 draws it, as data; whoever draws pictures draws it. */
export interface Outline {
  readonly width: number
  readonly height: number
  /** Where each end (as `branches` names them) meets the symbol. */
  readonly pins: Readonly<Record<string, readonly [x: number, y: number]>>
  readonly strokes: readonly Stroke[]
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

/** How a resistor tells its value. */
export interface PartMarking {
  /** ohms */
  readonly value: number
  /** Its bands by IEC 60062, the first one first; absent where no bands can tell the value or its tolerance. */
  readonly bands?: readonly string[]
  /** The preferred value of E24 that is nearest, where the value is none itself, ohms. */
  readonly preferred?: number
}

/** What a netlist needs of a part: its branches and their laws. Lines and sockets bring such parts of their own. */
export interface PartLaw<Spec extends PartSpec = PartSpec> {
  readonly kind: string
  /** One sentence for the reference. */
  readonly says: string
  readonly role?: Role
  branches(spec: Spec): readonly BranchPlan[]
  /** States every branch's law once. Pure: same spec, point and gate give the same laws. */
  law(spec: Spec, at: LawPoint, gate: GateState, sink: LawSink): void
  /** On what the law of such a part depends; on nothing when absent. */
  bends?(spec: Spec): readonly Bend[]
  /**
   * Newton's next point for one branch of a law that bends: the tangent's answer `next`, held back where the law
   * is too steep to be believed so far from `before`. The tangent's answer itself when absent.
   */
  settle?(spec: Spec, branch: number, next: Working, before: Working): Working
  /** The laws once more as plain elements; absent where they are none. */
  elements?(spec: Spec, at: LawPoint, gate: GateState, sink: ElementSink): void
  /** Present for kinds that a set's condition switches. */
  gate?(spec: Spec): Gate
  /** Why a figure that rests on this part in this analysis is approximate; undefined when it is not. */
  standIn?(spec: Spec, at: LawPoint): string | undefined
  /** Least current and its frequency at which a sounder sounds, A rms and Hz. */
  sounds?(spec: Spec): {
    readonly current: number
    readonly frequency: number
    /** Why no current makes it sound, and what mends that; `current` is then beyond any line. */
    readonly never?: { readonly because: string; readonly mend: string }
  }
  /** What its body is marked with, where parts of this kind are: whoever looks for it or replaces it looks for that. */
  marking?(spec: Spec): PartMarking
  /** How it goes wrong; a part that cannot, such as an ideal source, has none. */
  modes?(spec: Spec): readonly FaultMode[]
  /** Its symbol. */
  outline?(spec: Spec): Outline
  /** What a meter cannot show of it, for a person: "holds off hundreds of volts; no range reaches them". */
  readonly meterBlind?: string
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
