import { compileCircuit } from 'ringproof/netlist/compile'
import { type Netlist, nodeOf } from 'ringproof/netlist/netlist'
import { type Problem, ProblemError } from 'ringproof/problem'
import { readSheet } from 'ringproof/sheet/read'
import type { Question } from 'ringproof/solver/question'
import { type Complex, currentIn, type Solution, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { assertClose, type Tolerance } from '../../support/close.ts'
import { shelfOf } from '../../support/sheets.ts'

/** A few roundings of a small, well-conditioned system. */
export const ROUNDING: Tolerance = { relative: 1e-13, absolute: 1e-18 }

/** A free circuit of these parts, one a line, called `net`. */
export function circuit(parts: string): Netlist {
  const lines = parts
    .trim()
    .split('\n')
    .map((one) => `  ${one.trim()}\n`)
  const text = `ringproof: 1\nsheet: circuit\nname: net\nparts:\n${lines.join('')}`
  const { sheet, problems } = readSheet({ file: 'net.yaml', text }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return compileCircuit(sheet)
}

export const DIRECT: Question = { analysis: 'direct', condition: { line: 'idle', sets: {} } }
/** Alternating current of so many Hz. */
export function alternating(frequency: number): Question {
  return { analysis: 'alternating', frequency, condition: { line: 'idle', sets: {} } }
}

/** The index of a node of the circuit, `earth` among them. */
export function node(net: Netlist, name: string): number {
  return nodeOf(net, name === 'earth' ? name : `net/${name}`)
}

/** The index of a branch of the circuit. */
export function branch(net: Netlist, name: string): number {
  const found = net.branchIndex.get(`net/${name}`)
  if (found === undefined) throw new Error(`no branch ${name}`)
  return found
}

/** A solution with its figures by the names of the circuit. */
export interface Reading {
  readonly solution: Solution
  readonly i: (name: string) => Complex
  readonly v: (p: string, q?: string) => Complex | undefined
}

/** Solves a question about a circuit. */
export function ask(net: Netlist, question: Question = DIRECT): Reading {
  const solution = solve(net, question)
  return {
    solution,
    i: (name) => currentIn(solution, branch(net, name)),
    v: (p, q = 'earth') => voltageBetween(solution, node(net, p), node(net, q)),
  }
}

/** Asserts that each of these parts carries and holds the same in two solutions. */
export function assertSame(
  one: Reading,
  two: Reading,
  parts: readonly string[],
  nodes: readonly string[] = [],
): void {
  for (const name of parts) assertClose(one.i(name), two.i(name), ROUNDING, `current of ${name}`)
  for (const name of nodes) {
    const expected = two.v(name)
    if (expected === undefined) throw new Error(`no voltage of ${name}`)
    assertClose(one.v(name), expected, ROUNDING, `voltage of ${name}`)
  }
}

/** The problems that a question is refused with. */
export function problemsOf(net: Netlist, question: Question = DIRECT): readonly Problem[] {
  try {
    solve(net, question)
  } catch (thrown) {
    if (thrown instanceof ProblemError) return thrown.problems
    throw thrown
  }
  throw new Error('was not refused')
}
