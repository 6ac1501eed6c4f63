/** Which changes, alone and in pairs, change which nodes are joined. Union-find throughout. */
import { createUnionFind, findRoot, resetUnionFind, type UnionFind, union } from '../../algebra/union-find.ts'
import type { Laws } from '../laws.ts'
import type { Topology } from '../topology.ts'
import type { Candidate } from './candidate.ts'

/** Of each candidate and of each pair of candidates, whether the islands stay what they are. */
export interface Joined {
  /** 1 where the change alone changes the islands. */
  readonly alone: Uint8Array
  /** 1 where the two together do although neither does alone; row-major. */
  readonly pairs: Uint8Array
}

/** Counts the islands of every change and of every pair of cuts. */
export function joinedBy(
  nodes: number,
  laws: Laws,
  topology: Topology,
  candidates: readonly Candidate[],
): Joined {
  const n = candidates.length
  const alone = new Uint8Array(n)
  const pairs = new Uint8Array(n * n)
  const groups = createUnionFind(nodes)
  const cuts: { readonly index: number; readonly branch: number }[] = []
  candidates.forEach((one, index) => {
    if (one.does === 'link') {
      alone[index] = topology.island[one.from] === topology.island[one.to] ? 0 : 1
    } else if (one.does === 'law' && one.joins[0] !== one.joins[1]) {
      const { branch } = one
      if (one.joins[1]) alone[index] = apart(topology, laws, branch) ? 1 : 0
      else {
        alone[index] = splits(groups, laws, [branch]) ? 1 : 0
        if (alone[index] === 0) cuts.push({ index, branch })
      }
    }
  })
  cuts.forEach((p, k) => {
    for (const q of cuts.slice(k + 1)) {
      if (p.branch === q.branch || !splits(groups, laws, [p.branch, q.branch])) continue
      pairs[p.index * n + q.index] = 1
      pairs[q.index * n + p.index] = 1
    }
  })
  return { alone, pairs }
}

function apart(topology: Topology, laws: Laws, branch: number): boolean {
  return topology.island[laws.from[branch]!] !== topology.island[laws.to[branch]!]
}

/** Whether the ends of the first of these branches come apart without them all. */
function splits(groups: UnionFind, laws: Laws, without: readonly number[]): boolean {
  resetUnionFind(groups)
  for (let k = 0; k < laws.count; k += 1) {
    if (laws.joins(k) && !without.includes(k)) union(groups, laws.from[k]!, laws.to[k]!)
  }
  return without.some((k) => findRoot(groups, laws.from[k]!) !== findRoot(groups, laws.to[k]!))
}
