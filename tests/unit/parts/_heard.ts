import { kindOf, PARTS } from 'ringproof/parts/index'
import type { GateState, LawPoint, LawSink, PartSpec } from 'ringproof/parts/kind'
import * as z from 'zod/mini'

/** A complex number as the laws state it. */
export interface Pair {
  readonly re: number
  readonly im: number
}

/** One branch's law as it was stated. */
export type Heard =
  | { readonly form: 'admittance'; readonly y: Pair; readonly s: Pair }
  | { readonly form: 'equation'; readonly a: number; readonly z: Pair; readonly e: Pair }

/** The laws of a part, branch by branch, and its mutual terms by `branch,other`. */
export interface Laws {
  readonly branches: readonly Heard[]
  readonly mutuals: Readonly<Record<string, Pair>>
}

/** Direct current. */
export const DIRECT: LawPoint = { analysis: 'direct', omega: 0 }

/** Alternating current of ω rad/s. */
export function alternating(omega: number): LawPoint {
  return { analysis: 'alternating', omega }
}

/** What a part's own schema makes of a part as a sheet writes it. */
export function spec(written: { readonly kind: string; readonly [key: string]: unknown }): PartSpec {
  const kind = PARTS.get(written.kind)
  if (kind === undefined) throw new Error(`no kind ${written.kind}`)
  return z.parse(kind.schema, written)
}

/** Whether a part's own schema accepts it. */
export function accepts(written: { readonly kind: string; readonly [key: string]: unknown }): boolean {
  return z.safeParse(PARTS.get(written.kind)?.schema ?? z.never(), written).success
}

/** A law's statements, written down; a branch that is stated twice is an error. */
export function hear(state: (sink: LawSink) => void): Laws {
  const branches: Heard[] = []
  const mutuals: Record<string, Pair> = {}
  const note = (branch: number, heard: Heard): void => {
    if (branches[branch] !== undefined) throw new Error(`branch ${branch} stated twice`)
    branches[branch] = heard
  }
  state({
    admittance: (branch, re, im, sRe = 0, sIm = 0) =>
      note(branch, { form: 'admittance', y: { re, im }, s: { re: sRe, im: sIm } }),
    equation: (branch, a, re, im, eRe = 0, eIm = 0) =>
      note(branch, { form: 'equation', a, z: { re, im }, e: { re: eRe, im: eIm } }),
    mutual: (branch, other, re, im) => {
      mutuals[`${branch},${other}`] = { re, im }
    },
  })
  return { branches, mutuals }
}

/** The law of a part as a sheet writes it. */
export function lawOf(
  written: { readonly kind: string; readonly [key: string]: unknown },
  at: LawPoint,
  gate: GateState = 'closed',
): Laws {
  const one = spec(written)
  const laws = hear((sink) => kindOf(one).law(one, at, gate, sink))
  const forms = kindOf(one)
    .branches(one)
    .map(({ form }) => form)
  if (laws.branches.some(({ form }, k) => form !== forms[k]))
    throw new Error('a law in a form that its plan does not name')
  return laws
}

/** The law of a part with one branch. */
export function single(
  written: { readonly kind: string; readonly [key: string]: unknown },
  at: LawPoint,
  gate: GateState = 'closed',
): Heard {
  const { branches } = lawOf(written, at, gate)
  const [only] = branches
  if (only === undefined || branches.length !== 1) throw new Error('not one branch')
  return only
}
