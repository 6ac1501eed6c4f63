/** Direct current: the loop, the voltage at the set, and what flows where it should or should not. */
import type { Condition } from '../netlist/condition.ts'
import { type Branch, type Netlist, type NetPlace, nodeName } from '../netlist/netlist.ts'
import type { Changes, Question } from '../solver/question.ts'
import { modulus } from './between.ts'
import type { FigureId, FigurePlan } from './figure.ts'

function direct(condition: Condition, changes: Changes): Question {
  return { analysis: 'direct', condition, ...changes }
}

/** Direct current in a branch, A, as a size. */
export function directCurrent(
  id: FigureId,
  branch: Branch,
  condition: Condition,
  changes: Changes = {},
): FigurePlan {
  const question = direct(condition, changes)
  return {
    id,
    subject: branch.id,
    condition,
    unit: 'A',
    taps: [{ question, current: branch.index }],
    value: modulus,
  }
}

/** The link between a plug contact and its socket, by wiring number: 5 a wire, 2 b wire, 3 ringing lead. */
export function plugBranch(net: Netlist, place: NetPlace, number: 2 | 3 | 4 | 5): Branch | undefined {
  // its link is called by the number that the contact has in the plug
  const own = place.socket?.mirrored === true ? 7 - number : number
  const index = net.branchIndex.get(`${place.place}/plug.${own}`)
  return index === undefined ? undefined : net.branches[index]
}

/** Loop current: the smaller of what the two line wires of the set carry, A. */
export function loopCurrent(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  id: FigureId = 'loop.current',
  changes: Changes = {},
): FigurePlan {
  const question = direct(condition, changes)
  const wires = [plugBranch(net, place, 5), plugBranch(net, place, 2)].filter((one) => one !== undefined)
  return {
    id,
    subject: place.place,
    condition,
    unit: 'A',
    taps: wires.map((branch) => ({ question, current: branch.index })),
    value: (readings) =>
      wires.length < 2 ? 'open' : Math.min(Math.abs(readings[0] ?? 0), Math.abs(readings[2] ?? 0)),
  }
}

/** Direct current that a set draws on-hook: the larger of what its two line wires carry, A. */
export function onHookLeakage(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  changes: Changes = {},
): FigurePlan {
  const plan = loopCurrent(net, place, condition, 'leakage.on-hook', changes)
  return {
    ...plan,
    value: (readings) =>
      readings.length < 4 ? 'open' : Math.max(Math.abs(readings[0] ?? 0), Math.abs(readings[2] ?? 0)),
  }
}

/** Direct current that a set draws on-hook while the line rings: the larger of what its two line wires carry, A. */
export function leakageRinging(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  changes: Changes = {},
): FigurePlan {
  return { ...onHookLeakage(net, place, condition, changes), id: 'leakage.ringing' }
}

/** Voltage between the line wires at the set's socket, V. */
export function loopVoltage(
  place: NetPlace,
  condition: Condition,
  changes: Changes = {},
): FigurePlan | undefined {
  if (place.socket === undefined) return undefined
  const question = direct(condition, changes)
  return {
    id: 'loop.voltage',
    subject: place.place,
    condition,
    unit: 'V',
    taps: [{ question, voltage: [place.socket.a, place.socket.b] }],
    value: modulus,
  }
}

/** Resistance of the set between its line wires, ohms: voltage at the socket over the loop current. */
export function loopResistance(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  changes: Changes = {},
): FigurePlan | undefined {
  const a = plugBranch(net, place, 5)
  if (place.socket === undefined || a === undefined) return undefined
  const question = direct(condition, changes)
  return {
    id: 'loop.resistance',
    subject: place.place,
    condition,
    unit: 'Ω',
    taps: [
      { question, voltage: [place.socket.a, place.socket.b] },
      { question, current: a.index },
    ],
    value: (readings) => {
      const current = Math.abs(readings[2] ?? 0)
      // beyond 10 GΩ nothing but rounding is left
      return current === 0 || current * 1e10 < Math.abs(readings[0] ?? 0)
        ? 'open'
        : Math.abs(readings[0] ?? 0) / current
    },
  }
}

/** Direct current from the set to earth, A: what its own connection to earth carries, summed. */
export function earthLeakage(
  net: Netlist,
  place: NetPlace,
  condition: Condition,
  changes: Changes = {},
): FigurePlan {
  const question = direct(condition, changes)
  const touching = net.branches.filter(
    (branch) =>
      branch.part.place === place.place &&
      (branch.from === 0 || branch.to === 0) &&
      branch.from !== branch.to,
  )
  return {
    id: 'leakage.earth',
    subject: `${place.place} – ${nodeName(net, 0)}`,
    condition,
    unit: 'A',
    taps: touching.map((branch) => ({ question, current: branch.index })),
    value: (readings) => readings.reduce((sum, value) => sum + Math.abs(value), 0),
  }
}
