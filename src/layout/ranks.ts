/**
 * How far along its way each node of a circuit lies: 0 where it comes from the exchange, more towards the handset.
 * Between the two ends of its zone a node takes the mean of its neighbours, as a potential would; so the loop opens
 * to both sides of its load, and every symbol has a left and a right end.
 */
import type { Circuit, CircuitZone } from '../index.ts'

const ORDER: readonly CircuitZone[] = ['exchange', 'line', 'premises', 'cord', 'set', 'handset']

/** A zone's number on the way. */
export function zoneNumber(zone: CircuitZone): number {
  return ORDER.indexOf(zone)
}

const ROUNDS = 300

/** The rank of each node, by id. */
export function ranksOf(circuit: Circuit): ReadonlyMap<string, number> {
  const beside = new Map<string, string[]>(circuit.nodes.map(({ id }) => [id, []]))
  const join = (from: string, to: string): void => {
    beside.get(from)?.push(to)
    beside.get(to)?.push(from)
  }
  for (const { from, to } of circuit.links) join(from, to)
  for (const { ends } of circuit.pieces)
    ends.forEach((one, k) => {
      for (const other of ends.slice(k + 1)) join(one.node, other.node)
    })
  const zones = new Map(circuit.nodes.map(({ id, zone }) => [id, zoneNumber(zone)]))
  const zoneOf = (id: string): number => zones.get(id) ?? 0
  const ranks = new Map(circuit.nodes.map(({ id }) => [id, zoneOf(id)]))
  const free = circuit.nodes.filter(({ id, zone, looks }) => {
    if (looks === 'earth' || zone !== 'set') return false
    return (beside.get(id) ?? []).length > 1
  })
  // what the cord lands on begins the set, what the handset hangs on ends it
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const { id } of free) {
      const all = (beside.get(id) ?? []).map((other) => ranks.get(other) ?? 0)
      ranks.set(id, all.reduce((sum, one) => sum + one, 0) / all.length)
    }
  }
  // the same rank: first come, first
  return new Map(circuit.nodes.map(({ id }, k) => [id, (ranks.get(id) ?? 0) + k * 1e-7]))
}
