/** Variants of a question: one small change of a network each, as every fault, move or tolerance is one. */
import type { PartSpec } from '../../parts/kind.ts'
import type { Question } from '../question.ts'

/** One small change. */
export type Change =
  /** Nothing flows in a branch. */
  | { readonly lifted: number }
  /** So many ohms between two nodes; 0 Ω is an ideal link. */
  | { readonly bridge: { readonly from: number; readonly to: number; readonly ohms: number } }
  /** So many ohms in series with a branch. */
  | { readonly within: { readonly branch: number; readonly ohms: number } }
  /** Other values for the part of this index. */
  | { readonly instead: { readonly part: number; readonly spec: PartSpec } }

/** The question with these changes made. */
export function changed(question: Question, changes: readonly Change[]): Question {
  const lifted = [...(question.lifted ?? [])]
  const bridges = [...(question.bridges ?? [])]
  const within = [...(question.within ?? [])]
  const instead = [...(question.instead ?? [])]
  for (const change of changes) {
    if ('lifted' in change) lifted.push(change.lifted)
    else if ('bridge' in change) bridges.push(change.bridge)
    else if ('within' in change) within.push(change.within)
    else instead.push(change.instead)
  }
  return { ...question, lifted, bridges, within, instead }
}
