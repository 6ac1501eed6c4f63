/** `solve`: a circuit, or a set where it stands. */
import { freshSupplier } from '../figures/read.ts'
import { compileCircuit } from '../netlist/compile.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { Problem } from '../problem.ts'
import type { CircuitSheet } from '../sheet/model.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { SolveAnswer } from './answer.ts'
import { conditionIn } from './condition-of-request.ts'
import { findTarget, readSound } from './find.ts'
import { checkFrequency, solveAnswer, solveCircuitSheet } from './solve-answer.ts'
import { refuseSpot } from './spot.ts'
import { stand, type Where } from './standing.ts'
import { type Stands, standsOf } from './stands.ts'
import type { Supply } from './supply.ts'
import { whereAsked } from './where-asked.ts'

/** What is solved. */
export interface SolveRequest extends Where {
  /** Hz; absent: the circuit's own, else direct current. */
  readonly frequency?: number
  readonly condition?: string
}

/** The circuit that a request means, if it means one. */
export function circuitOf(request: Where, shelf: Shelf): CircuitSheet | undefined {
  if (request.text !== undefined) {
    const { sheet } = readSound(request.text, shelf)
    return sheet.sheet === 'circuit' ? sheet : undefined
  }
  const { sheet } = findTarget(request.target, ['set', 'rewire', 'premises', 'circuit'], shelf)
  return sheet.sheet === 'circuit' ? sheet : undefined
}

/** What is solved, and what stands there unless it is a circuit. */
export interface Network {
  readonly net: Netlist
  readonly place: string
  readonly name: string
  readonly circuit?: CircuitSheet
  readonly stands?: Stands
  readonly warnings: readonly Problem[]
}

/** A network to solve or to follow: a circuit, or what stands somewhere, with the place that a condition is about. */
export function networkOf(request: Where, shelf: Shelf): Network {
  const circuit = circuitOf(request, shelf)
  if (circuit !== undefined) {
    refuseSpot(request, `the circuit ${circuit.name}`)
    return { net: compileCircuit(circuit), place: circuit.name, name: circuit.name, circuit, warnings: [] }
  }
  const standing = stand(request, shelf)
  const { net, places, name, warnings } = standing
  return { net, place: places[0] ?? '', name, stands: standsOf(standing), warnings }
}

/** Solves a circuit or what stands somewhere, in one condition. */
export function solve(request: SolveRequest, shelf: Shelf, supply: Supply = freshSupplier): SolveAnswer {
  const { net, place, name, circuit, stands, warnings } = networkOf(request, shelf)
  const frequency = request.frequency ?? circuit?.frequency?.value
  checkFrequency(frequency)
  const words = {
    solve: name,
    ...whereAsked(request),
    frequency: frequency ?? null,
    condition: request.condition ?? 'on-hook',
  }
  const options = {
    ...(frequency === undefined ? {} : { frequency }),
    ...(request.condition === undefined ? {} : { condition: request.condition }),
  }
  if (circuit !== undefined) return solveCircuitSheet(circuit, options, words, supply)
  const condition = conditionIn(net, place, request.condition, 'on-hook')
  const answer = solveAnswer(net, condition, frequency, words, supply)
  return { ...answer, problems: warnings, ...(stands === undefined ? {} : { stands }) }
}
