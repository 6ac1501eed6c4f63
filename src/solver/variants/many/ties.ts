/**
 * What is joined to what in a variant, and what must be left in place so that its matrix keeps one solution: where a
 * change cuts an island off, one of the cut branches stays as it was, since nothing can flow in it; where a change joins
 * islands, the gauge that tied one of them is taken away, since something could flow in it. Union-find throughout.
 */
import {
  createUnionFind,
  findRoot,
  resetUnionFind,
  type UnionFind,
  union,
} from '../../../algebra/union-find.ts'
import type { Laws } from '../../laws.ts'
import type { Topology } from '../../topology.ts'
import type { Row } from './row.ts'

/** So little, A, is no current: tangents taken as level are off by up to this much (see `solve.ts`). */
const NOTHING = 1e-12

export class Ties {
  /** Island of each node of the variant, and of the unchanged network. */
  readonly island: Int32Array
  readonly before: Int32Array
  /** Whether the variant's islands are others than before. */
  moved = false
  /** Gauges that are to be taken away, 1 each. */
  readonly loose: Uint8Array
  readonly #laws: Laws
  readonly #gauges: readonly number[]
  readonly #joins: Uint8Array
  readonly #drivers: readonly number[]
  readonly #ideal: readonly number[]
  /** Union of what joins, and the same with gauges and cut branches. */
  readonly #groups: UnionFind
  readonly #tied: UnionFind
  readonly #changed: Int32Array
  #tick = 0

  constructor(nodes: number, laws: Laws, topology: Topology) {
    this.#laws = laws
    this.before = topology.island
    this.island = new Int32Array(nodes)
    this.#gauges = topology.gauges
    this.loose = new Uint8Array(topology.gauges.length)
    this.#joins = Uint8Array.from({ length: laws.count }, (_, k) => (laws.joins(k) ? 1 : 0))
    this.#drivers = Array.from({ length: laws.count }, (_, k) => k).filter(
      (k) => laws.drives(k) && Math.hypot(laws.offset[2 * k]!, laws.offset[2 * k + 1]!) > NOTHING,
    )
    this.#ideal = Array.from({ length: laws.count }, (_, k) => k).filter((k) => laws.ideal(k))
    this.#groups = createUnionFind(nodes)
    this.#tied = createUnionFind(nodes)
    this.#changed = new Int32Array(laws.count)
  }

  /** Whether a driven current has no way back in the unchanged network. */
  get contradicts(): boolean {
    return this.#drivers.some((k) => this.#apart(this.before, k))
  }

  #apart(island: Int32Array, k: number): boolean {
    return island[this.#laws.from[k]!] !== island[this.#laws.to[k]!]
  }

  /**
   * Finds the islands of the variant of these rows; rows that must stay as they were are marked in `kept`.
   * @returns whether its sources leave it a solution
   */
  find(rows: readonly Row[], count: number, kept: Uint8Array): boolean {
    kept.fill(0, 0, count)
    this.moved = false
    if (!this.#mayMove(rows, count)) return true
    this.#join(rows, count)
    const { island, before } = this
    for (let node = 0; node < island.length; node += 1) {
      island[node] = findRoot(this.#groups, node)
      if (island[node] !== before[node]) this.moved = true
    }
    if (!this.moved) return true
    this.#tie(rows, count, kept)
    return this.#hasWayBack(rows, count)
  }

  /** Whether a change closes a loop in which nothing limits the current: what flows there no matrix says. */
  closesIdealLoop(rows: readonly Row[], count: number): boolean {
    let some = false
    for (let k = 0; k < count; k += 1) if (rows[k]!.isIdeal) some = true
    if (!some) return false
    const groups = this.#groups
    resetUnionFind(groups)
    this.#tick += 1
    for (let k = 0; k < count; k += 1) {
      const row = rows[k]!
      if (row.branch >= 0) this.#changed[row.branch] = this.#tick
      if (row.isIdeal && !union(groups, row.p, row.q)) return true
    }
    const { from, to } = this.#laws
    return this.#ideal.some((k) => this.#changed[k] !== this.#tick && !union(groups, from[k]!, to[k]!))
  }

  #mayMove(rows: readonly Row[], count: number): boolean {
    for (let k = 0; k < count; k += 1) {
      const row = rows[k]!
      if (row.joinsBefore && !row.joinsAfter) return true
      if (!row.joinsBefore && row.joinsAfter && this.before[row.p] !== this.before[row.q]) return true
    }
    return false
  }

  #join(rows: readonly Row[], count: number): void {
    const { from, to } = this.#laws
    const groups = this.#groups
    resetUnionFind(groups)
    this.#tick += 1
    for (let k = 0; k < count; k += 1) {
      const row = rows[k]!
      if (row.branch >= 0) this.#changed[row.branch] = this.#tick
      if (row.joinsAfter) union(groups, row.p, row.q)
    }
    for (let k = 0; k < this.#joins.length; k += 1)
      if (this.#joins[k] === 1 && this.#changed[k] !== this.#tick) union(groups, from[k]!, to[k]!)
  }

  #tie(rows: readonly Row[], count: number, kept: Uint8Array): void {
    const tied = this.#tied
    tied.parent.set(this.#groups.parent)
    this.#gauges.forEach((node, k) => {
      this.loose[k] = union(tied, node, 0) ? 0 : 1
    })
    for (let k = 0; k < count; k += 1) {
      const row = rows[k]!
      if (row.joinsBefore && !row.joinsAfter && union(tied, row.p, row.q)) kept[k] = 1
    }
  }

  #hasWayBack(rows: readonly Row[], count: number): boolean {
    const { island } = this
    for (const k of this.#drivers) if (this.#changed[k] !== this.#tick && this.#apart(island, k)) return false
    for (let k = 0; k < count; k += 1) {
      const row = rows[k]!
      const drives = !row.joinsAfter && Math.abs(row.eRe) + Math.abs(row.eIm) > NOTHING
      if (drives && island[row.p] !== island[row.q]) return false
    }
    return true
  }
}
