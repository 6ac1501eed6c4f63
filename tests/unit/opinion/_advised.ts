import type { Netlist } from 'ringproof/netlist/netlist'
import { compare } from 'ringproof/opinion/compare'
import type { Adviser, Opinion } from 'ringproof/opinion/opinion'
import type { Question } from 'ringproof/solver/question'
import { solve } from 'ringproof/solver/solve'

/** Solves, gets the second opinion, and compares; throws where they disagree. */
export function advised(
  net: Netlist,
  question: Partial<Question>,
  advise: Adviser,
): { opinion: Opinion; relative: number } {
  const { frequency } = question
  const ours = solve(net, {
    analysis: frequency === undefined ? 'direct' : 'alternating',
    condition: { line: 'idle', sets: {} },
    ...question,
  })
  const opinion = advise(net, ours)
  return { opinion, relative: compare(net, ours, opinion).largest?.relative ?? 0 }
}
