/** Disjoint groups of 0 … n - 1. The root of a group is its smallest member, so the outcome never depends on the order of joining. */
export interface UnionFind {
  /** `parent[k]` is nearer to the root of k, or k itself at the root */
  readonly parent: Int32Array
}

/** n groups of one. */
export function createUnionFind(n: number): UnionFind {
  const groups = { parent: new Int32Array(n) }
  resetUnionFind(groups)
  return groups
}

/** Parts all groups again, without allocating. */
export function resetUnionFind({ parent }: UnionFind): void {
  for (let k = 0; k < parent.length; k++) parent[k] = k
}

/** The smallest member of k's group. Halves the path on the way, so that later questions are short. */
export function findRoot({ parent }: UnionFind, k: number): number {
  let at = k
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]!]!
    at = parent[at]!
  }
  return at
}

/** Joins two groups; `false` where they were one already, so that the joining edge closes a loop. */
export function union(groups: UnionFind, a: number, b: number): boolean {
  const first = findRoot(groups, a)
  const second = findRoot(groups, b)
  if (first === second) return false
  if (first < second) groups.parent[second] = first
  else groups.parent[first] = second
  return true
}

/** Number of groups. */
export function countGroups({ parent }: UnionFind): number {
  let count = 0
  for (let k = 0; k < parent.length; k++) if (parent[k] === k) count++
  return count
}
