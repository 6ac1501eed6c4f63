/** Currents of zero-ohm loops: shared as equal resistances would share them. */
import { createDense } from '../algebra/dense.ts'
import type { Laws } from './laws.ts'

/**
 * Redistributes the currents of all shorts in each group that has a loop.
 * `shorts` are the links taken as zero-ohm, those that close loops included; `currents` is changed in place.
 * What flows into a group from outside is kept; inside, a network of 1 Ω links decides.
 */
export function shareLoops(
  laws: Laws,
  shorts: readonly number[],
  closing: readonly number[],
  currents: Float64Array,
): readonly number[] {
  const groups = groupsOf(laws, shorts)
  const marked: number[] = []
  for (const group of groups) {
    if (!group.some((k) => closing.includes(k))) continue
    marked.push(...shareGroup(laws, group, currents))
  }
  return marked.sort((p, q) => p - q)
}

function groupsOf(laws: Laws, shorts: readonly number[]): readonly (readonly number[])[] {
  const groups: { nodes: Set<number>; links: number[] }[] = []
  for (const k of shorts) {
    const ends = [laws.from[k]!, laws.to[k]!]
    const met = groups.filter((group) => ends.some((node) => group.nodes.has(node)))
    const merged = { nodes: new Set(ends), links: [k] }
    for (const group of met) {
      for (const node of group.nodes) merged.nodes.add(node)
      merged.links.push(...group.links)
      groups.splice(groups.indexOf(group), 1)
    }
    groups.push(merged)
  }
  return groups.map((group) => group.links.sort((p, q) => p - q))
}

function shareGroup(laws: Laws, links: readonly number[], currents: Float64Array): readonly number[] {
  const nodes = [...new Set(links.flatMap((k) => [laws.from[k]!, laws.to[k]!]))]
  const n = nodes.length - 1
  const at = (node: number): number => nodes.indexOf(node) - 1 // the first node is the group's own reference
  const rows: number[] = []
  const columns: number[] = []
  const values: number[] = []
  const through = new Float64Array(2 * (n + 1)) // net current that enters each node from outside the group
  for (const k of links) {
    const p = at(laws.from[k]!)
    const q = at(laws.to[k]!)
    for (const [row, column, value] of [
      [p, p, 1],
      [q, q, 1],
      [p, q, -1],
      [q, p, -1],
    ] as const) {
      if (row < 0 || column < 0) continue
      rows.push(row)
      columns.push(column)
      values.push(value)
    }
    for (const part of [0, 1]) {
      through[2 * (p + 1) + part]! += currents[2 * k + part]!
      through[2 * (q + 1) + part]! -= currents[2 * k + part]!
    }
  }
  const potentials = new Float64Array(2 * (n + 1))
  const system = createDense({ order: n, rows, columns }, false)
  system.clear()
  values.forEach((value, k) => {
    system.add(system.slots[k]!, value, 0)
  })
  system.factor()
  for (const part of [0, 1]) {
    const b = Float64Array.from({ length: n }, (_, k) => through[2 * (k + 1) + part]!)
    system.solve(b, 1)
    b.forEach((value, k) => {
      potentials[2 * (k + 1) + part] = value
    })
  }
  const changed: number[] = []
  for (const k of links) {
    const p = at(laws.from[k]!) + 1
    const q = at(laws.to[k]!) + 1
    if (p === q) continue
    for (const part of [0, 1]) currents[2 * k + part] = potentials[2 * p + part]! - potentials[2 * q + part]!
    changed.push(k)
  }
  return changed
}
