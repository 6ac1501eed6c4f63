/** `solve`: the whole of a network's voltages and currents in one condition. */
import { freshSupplier } from '../figures/read.ts'
import { compileCircuit } from '../netlist/compile.ts'
import type { Condition } from '../netlist/condition.ts'
import { type Netlist, nodeName } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import type { CircuitSheet } from '../sheet/model.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { Solution } from '../solver/solution.ts'
import type { Amount, SolveAnswer } from './answer.ts'
import { conditionAsAsked, conditionIn } from './condition-of-request.ts'
import { envelope } from './envelope.ts'
import { readSound } from './find.ts'
import type { Supply } from './supply.ts'

/** How a network is to be solved. */
export interface SolveOptions {
  /** Hz; direct current when absent. */
  readonly frequency?: number
  /** `off-hook/make`; on-hook when absent. */
  readonly condition?: string
  readonly file?: string
}

/** A solved network as an answer. */
export function solveAnswer(
  net: Netlist,
  condition: Condition,
  frequency: number | undefined,
  request: Readonly<Record<string, unknown>>,
  supply: Supply = freshSupplier,
): SolveAnswer {
  const analysis = frequency === undefined ? 'direct' : 'alternating'
  const solution = supply(net)({
    analysis,
    condition,
    ...(frequency === undefined ? {} : { frequency }),
  })
  const states: Record<string, string> = {}
  const voltages: Record<string, Amount> = {}
  net.nodes.forEach((id, node) => {
    const known = solution.island[node] === solution.island[0]
    voltages[id] = known ? amount(solution, solution.voltages, node) : null
    if (!known) states[id] = 'undetermined'
  })
  const currents: Record<string, Amount> = {}
  for (const branch of net.branches) currents[branch.id] = amount(solution, solution.currents, branch.index)
  const reasons = [...solution.standIns.keys()]
  return {
    ...envelope('solve', request),
    outcome: 'answered',
    analysis,
    frequency: frequency ?? null,
    condition: conditionAsAsked(condition),
    voltages,
    currents,
    units: { voltages: 'V', currents: 'A' },
    states,
    islands: islandIds(net, solution),
    shared: solution.shared.map((k) => net.branches[k]?.id ?? ''),
    residual: solution.residual,
    ...(reasons.length === 0 ? {} : { approximate: reasons.join('; ') }),
  }
}

function amount(solution: Solution, values: Float64Array, k: number): Amount {
  const re = values[2 * k] ?? 0
  return solution.question.analysis === 'direct' ? re : { re, im: values[2 * k + 1] ?? 0 }
}

function islandIds(net: Netlist, solution: Solution): readonly (readonly string[])[] {
  const islands = new Map<number, string[]>()
  net.nodes.forEach((_, node) => {
    const own = solution.island[node] ?? node
    islands.set(own, [...(islands.get(own) ?? []), nodeName(net, node)])
  })
  return [...islands.values()]
}

/** A frequency that can be asked for. */
export function checkFrequency(frequency: number | undefined): void {
  if (frequency === undefined || (Number.isFinite(frequency) && frequency > 0 && frequency <= 1e9)) return
  refuse({
    code: 'request-wrong',
    found: `the frequency ${frequency}`,
    expected: 'more than 0 Hz and at most 1 GHz',
    mend: 'leave the frequency out for direct current',
  })
}

/** Solves a circuit sheet. */
export function solveCircuitSheet(
  sheet: CircuitSheet,
  options: SolveOptions,
  request: Readonly<Record<string, unknown>>,
  supply: Supply = freshSupplier,
): SolveAnswer {
  checkFrequency(options.frequency)
  const net = compileCircuit(sheet)
  const condition = conditionIn(net, sheet.name, options.condition, 'on-hook')
  const answer = solveAnswer(net, condition, options.frequency, request, supply)
  return {
    ...answer,
    ...(sheet.source === undefined ? {} : { source: sheet.source }),
    ...(sheet.grade === undefined ? {} : { grade: sheet.grade }),
  }
}

const EMPTY_SHELF: Shelf = { find: () => undefined, names: () => [] }

/**
 * Solves the text of a circuit sheet.
 * @throws ProblemError with every problem of the sheet, or the one of its network.
 */
export function solveCircuit(text: string, options: SolveOptions = {}): SolveAnswer {
  const file = options.file ?? 'circuit.yaml'
  const { sheet } = readSound({ file, text }, EMPTY_SHELF, 'circuit')
  return solveCircuitSheet(sheet, options, { solve: sheet.name, ...options })
}
