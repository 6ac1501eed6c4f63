/** `now`: what flows in a set and on its way to the exchange, in one condition. */
import type { Condition } from '../netlist/condition.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { circuitOf, gateOf } from '../picture/circuit/circuit-of.ts'
import { carriedBy, flowsOf } from '../picture/circuit/flows.ts'
import { branchesOf, scopeOf } from '../picture/circuit/scope.ts'
import type { CircuitShown } from '../picture/circuit/shown.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { currentIn } from '../solver/solution.ts'
import { solve } from '../solver/solve.ts'
import { conditionIn } from './condition-of-request.ts'
import { networkOf, type SolveRequest } from './solve.ts'
import { checkFrequency } from './solve-answer.ts'

/** The frequency that is looked at when none is asked for: that of the ringing while the line rings, else none. */
export function frequencyNow(net: Netlist, condition: Condition): number | undefined {
  return condition.line === 'ringing' ? net.line?.ringingFrequency : undefined
}

/**
 * The circuit about the set at a place in a condition, with what flows, solved once.
 * @param condition as it is written: `off-hook`, `on-hook/ringing`; on-hook when absent
 * @param frequency Hz; direct current, or the ringing while the line rings, when absent
 * @throws ProblemError for a condition or a frequency that is none
 */
export function circuitShown(
  net: Netlist,
  place: string,
  condition: string | undefined,
  frequency?: number,
): CircuitShown {
  checkFrequency(frequency)
  return shownIn(net, place, conditionIn(net, place, condition, 'on-hook'), frequency)
}

function shownIn(net: Netlist, place: string, condition: Condition, asked: number | undefined): CircuitShown {
  const frequency = asked ?? frequencyNow(net, condition)
  const analysis = frequency === undefined ? 'direct' : 'alternating'
  const solution = solve(net, { analysis, condition, ...(frequency === undefined ? {} : { frequency }) })
  const currents = (branch: number): { re: number; im: number } => currentIn(solution, branch)
  const { parts, together } = scopeOf(net, place)
  const shown = [
    ...parts.flatMap((part) => branchesOf(net, part)),
    ...together.flatMap(({ branches }) => branches),
  ]
  const flows = flowsOf(
    net,
    currents,
    shown.map(({ index }) => index),
  )
  const reasons = [...solution.standIns.keys()]
  return {
    circuit: circuitOf(net, place, { condition, currents }),
    condition,
    analysis,
    frequency: frequency ?? null,
    carries: carriedBy(net, place, flows, (part) => gateOf(part, condition) === 'open'),
    ...(reasons.length === 0 ? {} : { approximate: reasons.join('; ') }),
  }
}

/** The same for a set, a rewire or a circuit that a request names, where it stands. */
export function now(request: SolveRequest, shelf: Shelf): CircuitShown {
  const { net, place, circuit } = networkOf(request, shelf)
  return circuitShown(net, place, request.condition, request.frequency ?? circuit?.frequency?.value)
}
