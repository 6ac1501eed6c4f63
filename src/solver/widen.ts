/** An answer in a portion as an answer in the whole: what is left out is at rest, and each of its nodes an island. */
import type { Portion } from '../netlist/portion.ts'
import type { Point } from './laws.ts'
import type { Question } from './question.ts'
import type { Solution } from './solution.ts'

/** Puts a solution of a portion back where its things are in the whole netlist. */
export function widen(portion: Portion, question: Question, solution: Solution): Solution {
  const { nodes, branches, toNode, toBranch } = portion
  const branchesInAll = toBranch.length
  /** Added straps and resistances stand behind the netlist's own branches. */
  const wide = (k: number): number => branches[k] ?? branchesInAll + (k - branches.length)
  const added = solution.currents.length / 2 - branches.length
  const spread = (own: Float64Array, size: number, at: (k: number) => number): Float64Array => {
    const all = new Float64Array(2 * size)
    for (let k = 0; 2 * k < own.length; k += 1) {
      all[2 * at(k)] = own[2 * k]!
      all[2 * at(k) + 1] = own[2 * k + 1]!
    }
    return all
  }
  const island = Int32Array.from(toNode, (own, node) => (own === -1 ? -1 - node : 0))
  nodes.forEach((node, own) => {
    island[node] = nodes[solution.island[own]!]!
  })
  const { point, swing, chords } = solution
  return {
    ...solution,
    question,
    voltages: spread(solution.voltages, toNode.length, (k) => nodes[k]!),
    voltageTails: spread(solution.voltageTails, toNode.length, (k) => nodes[k]!),
    currents: spread(solution.currents, branchesInAll + added, wide),
    island,
    shared: solution.shared.map(wide),
    standIns: new Map([...solution.standIns].map(([reason, own]) => [reason, own.map(wide)])),
    ...(point && { point: pointInAll(point, branchesInAll + added, wide) }),
    ...(swing && { swing: one(swing, branchesInAll + added, wide) }),
    ...(chords && { chords: new Map([...chords].map(([k, ohms]) => [wide(k), ohms])) }),
  }
}

function one(own: Float64Array, size: number, at: (k: number) => number): Float64Array {
  const all = new Float64Array(size)
  own.forEach((value, k) => {
    all[at(k)] = value
  })
  return all
}

function pointInAll(point: Point, size: number, at: (k: number) => number): Point {
  return { voltage: one(point.voltage, size, at), current: one(point.current, size, at) }
}
