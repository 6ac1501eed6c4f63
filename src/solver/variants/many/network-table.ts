/**
 * The variants of one network: any number of elementary changes at once, for all its sources, by an update of any rank.
 * Islands that come apart or together are part of the update (see `ties.ts`); where laws bend, their rows are stated anew
 * until all agree (see `settling.ts`). What an update cannot be trusted with is left to a fresh solve.
 */
import { ProblemError } from '../../../problem.ts'
import type { Change } from '../change.ts'
import { addDriven, addEntryFine, putDriven, putEntry } from './applied.ts'
import type { Base, Source } from './base.ts'
import { Hanging } from './hanging.ts'
import { gaugeRow, Preparing } from './prepared.ts'
import type { Row } from './row.ts'
import { type Searched, settleRows } from './settling.ts'
import { LEAST_PIVOT, MOST_ROWS, SmallSystem } from './small-system.ts'

/** Below this smallest pivot of the scaled small matrix an update takes twice the digits. */
const PLAIN = 1e-5

/** Where a variant's bent parts stand; of a network of direct current. */
export interface PointOf {
  /**
   * Puts the point of a variant into `voltage` and `current`, by branch.
   * @returns whether there is one
   */
  find(made: readonly number[], tick: number): boolean
  readonly voltage: Float64Array
  readonly current: Float64Array
}

const scratch = new Float64Array(4)

export class NetworkTable implements Searched {
  readonly base: Base
  readonly system: SmallSystem = new SmallSystem()
  /** Rows of the variant at hand: those of its changes, of hanging parts, then those that count in its matrix. */
  readonly rows: Row[] = []
  count = 0
  readonly active: Row[] = []
  readonly hanging: readonly Hanging[]
  /** The point of the variant at hand, by branch. */
  readonly voltage: Float64Array
  readonly current: Float64Array
  readonly #preparing: Preparing
  readonly #changes: readonly Change[]
  readonly #kept: Uint8Array = new Uint8Array(4 * MOST_ROWS)
  readonly #gauges: readonly Row[]
  readonly #own: (Row | undefined)[]
  readonly #stamps: Int32Array
  readonly #given: Int32Array
  readonly #drivenOf = new Map<Row, (Float64Array | undefined)[]>()
  readonly #point: PointOf | undefined
  #tick = 0
  #begun = 0
  #isGood = false
  #fine = false
  #hasTails = false

  /** @param point where the bent parts stand that this network takes as they are */
  constructor(base: Base, changes: readonly Change[], point?: PointOf) {
    this.base = base
    this.#changes = changes
    this.#point = point
    const parts = hangingParts(base)
    this.#preparing = new Preparing(base, changes, new Set(parts))
    this.hanging = parts.map((part) => new Hanging(base, part, this.#preparing.alone(part)))
    this.#gauges = base.gauges.map((node) => gaugeRow(base, node))
    this.#own = base.net.branches.map(() => undefined)
    this.#stamps = new Int32Array(base.net.branches.length)
    this.#given = new Int32Array(base.net.parts.length)
    const { voltage, current } = base.about.direct ?? {}
    this.voltage = Float64Array.from(base.net.branches, (_, k) => voltage?.[k] ?? 0)
    this.current = Float64Array.from(base.net.branches, (_, k) => current?.[k] ?? 0)
  }

  /** The row that gives a branch another law in the variant at hand. */
  ownRow(branch: number): Row | undefined {
    return this.#stamps[branch] === this.#tick ? this.#own[branch] : undefined
  }

  /** Whether the update is done with twice the digits. */
  get isFine(): boolean {
    return this.#fine
  }

  /**
   * Makes the small matrix of a variant and factors it.
   * @returns whether it can be trusted; a fresh solve is due where not
   */
  begin(made: readonly number[], tick: number): boolean {
    // whoever asks where the bent parts stand has begun it already
    if (tick !== this.#begun) {
      this.#begun = tick
      this.#isGood = this.#begin(made, tick)
    }
    return this.#isGood
  }

  #begin(made: readonly number[], tick: number): boolean {
    this.#fine = false
    this.#hasTails = false
    if (!this.#collect(made) || this.base.ties.closesIdealLoop(this.rows, this.count)) return false
    try {
      if (!this.#hang(made, tick)) return false
    } catch (error) {
      if (error instanceof ProblemError || error instanceof RangeError) return false
      throw error
    }
    if (this.base.settles) {
      if (this.count === 0 && this.hanging.every((one) => one.isSound)) return this.#stay()
      return settleRows(this) && this.#trusts(this.system.factor())
    }
    return this.tie() && this.#trusts(this.fill())
  }

  /** Nothing befalls the network: all stays where it is. */
  #stay(): boolean {
    this.active.length = 0
    const { direct } = this.base.about
    if (direct === undefined) return true
    this.voltage.set(direct.voltage.subarray(0, this.voltage.length))
    this.current.set(direct.current.subarray(0, this.current.length))
    return this.tie()
  }

  #trusts(pivot: number): boolean {
    if (this.active.length === 0) return true
    if (!(pivot >= LEAST_PIVOT)) return false
    this.#fine = pivot < PLAIN
    return true
  }

  /** Rows of the changes; of several of one part together where they meet in a branch. */
  #collect(made: readonly number[]): boolean {
    this.#tick += 1
    this.count = 0
    let meets = false
    for (const c of made) {
      const one = this.#preparing.of(c)
      if (one.fresh || this.#isTwice(c)) return false
      for (const row of one.rows) if (!this.take(row)) meets = true
    }
    if (meets) return this.#collectByPart(made)
    return this.count <= MOST_ROWS
  }

  /** Whether the part of a change has been given other values already in the variant at hand. */
  #isTwice(c: number): boolean {
    const change = this.#changes[c]
    if (change === undefined || !('instead' in change)) return false
    const { part } = change.instead
    const before = this.#given[part] === this.#tick
    this.#given[part] = this.#tick
    return before
  }

  /** Adds a row to the variant at hand; false where its branch has one already. */
  take(row: Row): boolean {
    this.rows[this.count] = row
    this.count += 1
    if (row.branch < 0) return true
    if (this.#stamps[row.branch] === this.#tick) return false
    this.#stamps[row.branch] = this.#tick
    this.#own[row.branch] = row
    return true
  }

  #collectByPart(made: readonly number[]): boolean {
    this.#tick += 1
    this.count = 0
    const byPart = new Map<number, number[]>()
    for (const c of made) {
      const part = this.#preparing.partOf(c)
      if (part === -1) for (const row of this.#preparing.of(c).rows) this.take(row)
      else byPart.set(part, [...(byPart.get(part) ?? []), c])
    }
    for (const all of byPart.values()) {
      const one = this.#preparing.together(all)
      if (one.fresh) return false
      for (const row of one.rows) this.take(row)
    }
    return this.count <= MOST_ROWS
  }

  /** Rows of the parts that hang on a point, where the variant moves it or befalls them. */
  #hang(made: readonly number[], tick: number): boolean {
    if (this.hanging.length === 0) return true
    for (const one of this.hanging) {
      const own = made.filter((c) => this.#preparing.partOf(c) === one.part)
      one.begin(own, this.#changes)
    }
    if (this.#point !== undefined && !this.#findPoint(made, tick, this.#point)) return false
    if (this.base.settles) return true
    for (const one of this.hanging) {
      if (one.isSound && !this.#hasMoved(one)) continue
      one.place(this.voltage, this.current)
      one.state()
      for (const row of one.rows) if (!row.isSame) this.take(row)
    }
    return this.count <= MOST_ROWS
  }

  #findPoint(made: readonly number[], tick: number, point: PointOf): boolean {
    if (!point.find(made, tick)) return false
    this.voltage.set(point.voltage)
    this.current.set(point.current)
    return true
  }

  #hasMoved({ first, count }: Hanging): boolean {
    const { direct } = this.base.about
    if (direct === undefined) return true
    for (let k = first; k < first + count; k += 1) {
      if (this.voltage[k] !== direct.voltage[k] || this.current[k] !== direct.current[k]) return true
    }
    return false
  }

  /** Finds out which rows count: without those that stay as they were, with those of gauges that go. */
  tie(): boolean {
    const { ties } = this.base
    if (!ties.find(this.rows, this.count, this.#kept)) return false
    let n = 0
    for (let k = 0; k < this.count; k += 1) {
      if (this.#kept[k] === 1) continue
      this.active[n] = this.rows[k]!
      n += 1
    }
    if (ties.moved) {
      for (let k = 0; k < this.#gauges.length; k += 1) {
        if (ties.loose[k] === 0) continue
        this.active[n] = this.#gauges[k]!
        n += 1
      }
    }
    this.active.length = n
    return n <= MOST_ROWS
  }

  /** Fills the small matrix and factors it; gives its smallest pivot. */
  fill(): number {
    const { active, system } = this
    const n = active.length
    system.n = n
    if (n === 0) return 1
    const { columns } = this.base
    const { m, made } = system
    for (let i = 0; i < n; i += 1) {
      const row = active[i]!
      made[i] = row.size
      for (let j = 0; j < n; j += 1) {
        const at = 2 * (i * MOST_ROWS + j)
        if (i === j) {
          m[at] = row.diagonal[0]!
          m[at + 1] = row.diagonal[1]!
        } else putEntry(row, columns.at(active[j]!.column), m, at)
      }
    }
    return system.factor()
  }

  /** g for a source, with its tails where the update is done with twice the digits. */
  solve(source: Source, s: number, fine: boolean = this.#fine): void {
    const { active, system } = this
    const { r, rTail } = system
    for (let i = 0; i < active.length; i += 1) {
      const row = active[i]!
      if (!fine && this.#isPlain(row)) {
        putDriven(row, source.x, source.series, r, 2 * i)
        continue
      }
      const driven = this.#driven(row, source, s)
      r[2 * i] = driven[0]!
      r[2 * i + 1] = driven[1]!
      rTail[2 * i] = driven[2]!
      rTail[2 * i + 1] = driven[3]!
    }
    system.solve()
    if (!fine) return
    this.#fillTails()
    system.refine()
  }

  /** What drives a row; kept for those that are the same in every variant. */
  #driven(row: Row, source: Source, s: number): Float64Array {
    if (this.#hangs(row)) {
      scratch.fill(0)
      addDriven(row, source.x, source.series, scratch)
      return scratch
    }
    let all = this.#drivenOf.get(row)
    if (all === undefined) {
      all = []
      this.#drivenOf.set(row, all)
    }
    const known = all[s]
    if (known !== undefined) return known
    const made = new Float64Array(4)
    addDriven(row, source.x, source.series, made)
    all[s] = made
    return made
  }

  /** Whether a row is stated anew in every variant and has no tails. */
  #isPlain(row: Row): boolean {
    return row.form === 'equation' && row.others.length === 0 && this.#hangs(row)
  }

  #hangs(row: Row): boolean {
    if (row.branch < 0) return false
    for (const one of this.hanging)
      if (row.branch >= one.first && row.branch < one.first + one.count) return true
    return false
  }

  #fillTails(): void {
    if (this.#hasTails) return
    this.#hasTails = true
    const { active, system } = this
    const { columns } = this.base
    for (let i = 0; i < active.length; i += 1) {
      const row = active[i]!
      for (let j = 0; j < active.length; j += 1) {
        const at = 2 * (i * MOST_ROWS + j)
        if (i === j) {
          const x = columns.at(row.column)
          if (this.#isPlain(row)) row.measure(x)
          scratch.set(row.diagonal)
        } else {
          scratch.fill(0)
          addEntryFine(row, columns.at(active[j]!.column), scratch)
        }
        system.m[at] = scratch[0]!
        system.m[at + 1] = scratch[1]!
        system.mTail[at] = scratch[2]!
        system.mTail[at + 1] = scratch[3]!
      }
    }
  }
}

/** Parts that are stated about a point: those that bend in this question. */
function hangingParts({ net, laws, stating, stated }: Base): readonly number[] {
  if (stating === 'rest') return []
  const bent = new Set([...laws.bent.direct, ...laws.bent.swing])
  return net.parts.flatMap((part, index) => {
    const own = Array.from({ length: part.count }, (_, k) => part.first + k)
    const fed = stated.small !== undefined && part.role !== 'source' && bendsAtAll(part)
    return fed || own.some((k) => bent.has(k)) ? [index] : []
  })
}

function bendsAtAll({ law, spec }: Base['net']['parts'][number]): boolean {
  return law.bends?.(spec).includes('direct') === true
}
