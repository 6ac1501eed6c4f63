/** What each change comes to in one network: rows of the small matrix, made once for all variants that hold it. */
import type { NetPart } from '../../../netlist/netlist.ts'
import { ProblemError } from '../../../problem.ts'
import type { Change } from '../change.ts'
import type { Base } from './base.ts'
import { PartAlone, type PartCase, stateCase } from './part-alone.ts'
import { Row } from './row.ts'

/** A change in one network. */
export interface Prepared {
  /** Its rows; none where it changes nothing here, or where the part is stated anew for every variant. */
  readonly rows: readonly Row[]
  /** Index of the part that it befalls; −1 for a bridge. */
  readonly part: number
  /** The part's law hangs on a point. */
  readonly hangs: boolean
  /** Only a fresh solve answers it. */
  readonly fresh: boolean
}

/** A row of a branch of the network, its law still the old one. */
export function rowOf({ laws, columns }: Base, branch: number): Row {
  const from = laws.from[branch]!
  const to = laws.to[branch]!
  const row =
    laws.equations[branch] === 1
      ? new Row('equation', branch, columns.ofEquation(branch), from, to, columns.positionOf(branch))
      : new Row('admittance', branch, columns.ofNodes(from, to), from, to, 0)
  row.isCoupled = laws.mutuals.some((one) => one.branch === branch)
  row.joinsBefore = laws.joins(branch)
  row.joinsAfter = row.joinsBefore
  return row
}

/** A row that takes a gauge away. */
export function gaugeRow({ columns }: Base, node: number): Row {
  const row = new Row('admittance', -1, columns.ofNodes(node, 0), node, 0, 0)
  row.dRe = -1
  row.measure(columns.at(row.column))
  return row
}

export class Preparing {
  readonly #base: Base
  readonly #changes: readonly Change[]
  readonly #hanging: ReadonlySet<number>
  readonly #made: (Prepared | undefined)[]
  readonly #parts: Int32Array
  readonly #together = new Map<string, Prepared>()
  readonly #alone = new Map<number, PartAlone>()

  /** @param hanging parts that are stated anew for every variant, by their index */
  constructor(base: Base, changes: readonly Change[], hanging: ReadonlySet<number>) {
    this.#base = base
    this.#changes = changes
    this.#hanging = hanging
    this.#made = changes.map(() => undefined)
    this.#parts = new Int32Array(base.net.branches.length)
    base.net.parts.forEach(({ first, count }, index) => {
      this.#parts.fill(index, first, first + count)
    })
  }

  /** A change by its index. */
  of(c: number): Prepared {
    const known = this.#made[c]
    if (known !== undefined) return known
    const made = this.#prepare([c])
    this.#made[c] = made
    return made
  }

  /** Several changes of one part, which are more than each by itself. */
  together(all: readonly number[]): Prepared {
    const key = all.join()
    const known = this.#together.get(key)
    if (known !== undefined) return known
    const made = this.#prepare(all)
    this.#together.set(key, made)
    return made
  }

  /** The part that a change befalls; −1 for a bridge. */
  partOf(c: number): number {
    const change = this.#changes[c]
    if (change === undefined || 'bridge' in change) return -1
    if ('lifted' in change) return this.#parts[change.lifted] ?? -1
    return 'within' in change ? (this.#parts[change.within.branch] ?? -1) : change.instead.part
  }

  /** A part by itself, made once. */
  alone(part: number): PartAlone {
    const { net, stated } = this.#base
    const known = this.#alone.get(part) ?? new PartAlone(net, stated, part)
    this.#alone.set(part, known)
    return known
  }

  #prepare(all: readonly number[]): Prepared {
    const changes = all.flatMap((c) => this.#changes.slice(c, c + 1))
    const part = this.partOf(all[0] ?? -1)
    const [first] = changes
    if (first !== undefined && 'bridge' in first)
      return { rows: this.#link(first), part, hangs: false, fresh: false }
    const own = this.#base.net.parts[part]
    if (own === undefined || bendsOtherwise(own, changes))
      return { rows: [], part, hangs: false, fresh: true }
    if (this.#hanging.has(part)) return { rows: [], part, hangs: true, fresh: false }
    try {
      return { rows: this.#rows(part, changes), part, hangs: false, fresh: false }
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      return { rows: [], part, hangs: false, fresh: true }
    }
  }

  #link({ bridge: { from, to, ohms } }: Extract<Change, { bridge: unknown }>): readonly Row[] {
    if (from === to || !Number.isFinite(ohms)) return []
    const { columns } = this.#base
    const row = new Row('link', -1, columns.ofNodes(from, to), from, to, 0)
    row.re = ohms
    row.joinsAfter = true
    row.measure(columns.at(row.column))
    return [row]
  }

  #rows(part: number, changes: readonly Change[]): readonly Row[] {
    const alone = this.alone(part)
    const one = alone.after(changes)
    stateCase(one, 'rest')
    const rows: Row[] = []
    for (let k = 0; k < alone.count; k += 1) {
      const row = rowOf(this.#base, alone.first + k)
      takeLaw(this.#base, row, one, k)
      if (row.isSame) continue
      row.measure(this.#base.columns.at(row.column))
      rows.push(row)
    }
    return rows
  }
}

/** Gives a row the law that its branch has in a case. */
export function takeLaw(base: Base, row: Row, { laws }: PartCase, k: number): void {
  row.take(base.laws, laws, k, (branch) => base.columns.positionOf(branch))
  row.joinsAfter = laws.joins(k)
}

/** Whether a part with other values hangs on something that it does not hang on with its own. */
function bendsOtherwise({ law, spec }: NetPart, changes: readonly Change[]): boolean {
  const own = law.bends?.(spec) ?? []
  return changes.some(
    (one) => 'instead' in one && law.bends?.(one.instead.spec).some((bend) => !own.includes(bend)) === true,
  )
}
