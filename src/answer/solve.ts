/** `solve`: a circuit, or a set where it stands. */
import { freshSupplier } from '../figures/read.ts'
import { compileCircuit } from '../netlist/compile.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { CircuitSheet } from '../sheet/model.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { SolveAnswer } from './answer.ts'
import { conditionOfRequest, findTarget, readSound } from './find.ts'
import { checkFrequency, solveAnswer, solveCircuitSheet } from './solve-answer.ts'
import { stand, type Where } from './standing.ts'
import type { Supply } from './supply.ts'

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

/** A network to solve or to follow: a circuit, or what stands somewhere, with the place that a condition is about. */
export function networkOf(
  request: Where,
  shelf: Shelf,
): { net: Netlist; place: string; name: string; circuit?: CircuitSheet } {
  const circuit = circuitOf(request, shelf)
  if (circuit !== undefined)
    return { net: compileCircuit(circuit), place: circuit.name, name: circuit.name, circuit }
  const standing = stand(request, shelf)
  return { net: standing.net, place: standing.places[0] ?? '', name: standing.name }
}

/** Solves a circuit or what stands somewhere, in one condition. */
export function solve(request: SolveRequest, shelf: Shelf, supply: Supply = freshSupplier): SolveAnswer {
  const { net, place, name, circuit } = networkOf(request, shelf)
  const frequency = request.frequency ?? circuit?.frequency?.value
  checkFrequency(frequency)
  const words = { solve: name, frequency: frequency ?? null, condition: request.condition ?? 'on-hook' }
  const options = {
    ...(frequency === undefined ? {} : { frequency }),
    ...(request.condition === undefined ? {} : { condition: request.condition }),
  }
  if (circuit !== undefined) return solveCircuitSheet(circuit, options, words, supply)
  const written = conditionOfRequest(request.condition, 'on-hook')
  return solveAnswer(net, place, written, frequency, words, supply)
}
