/** Where the bent parts of a variant stand in direct current: by an update, or by a search of its own. */
import type { Netlist } from '../../../netlist/netlist.ts'
import { ProblemError } from '../../../problem.ts'
import { operatingPoint } from '../../points/operating-point.ts'
import type { Question } from '../../question.ts'
import { type Change, changed } from '../change.ts'
import { type Base, makeBase } from './base.ts'
import { NetworkTable, type PointOf } from './network-table.ts'

/** A point that has moved by less than this share of itself has not moved. */
const STILL = 1e-13
const NOTHING = 1e-20

export class VariantPoint implements PointOf {
  readonly voltage: Float64Array
  readonly current: Float64Array
  /** The network in which it is found; none where only a search of its own finds it. */
  readonly table: NetworkTable | undefined
  readonly #net: Netlist
  readonly #question: Question
  readonly #changes: readonly Change[]
  readonly #valuesOnly: boolean
  #tick = 0
  #found = false

  /** @param valuesOnly only other values of parts count, as for a meter that finds parts as the line leaves them */
  constructor(net: Netlist, question: Question, changes: readonly Change[], valuesOnly: boolean) {
    this.#net = net
    this.#question = question
    this.#changes = changes
    this.#valuesOnly = valuesOnly
    this.voltage = new Float64Array(net.branches.length)
    this.current = new Float64Array(net.branches.length)
    const base = baseOf(net, question)
    this.table = base && new NetworkTable(base, changes)
  }

  find(made: readonly number[], tick: number): boolean {
    if (tick !== this.#tick) {
      this.#tick = tick
      this.#found = this.#search(made, tick)
    }
    return this.#found
  }

  #search(made: readonly number[], tick: number): boolean {
    const all = this.#valuesOnly ? made.filter((c) => this.#isOfValues(c)) : made
    if (this.table?.begin(all, tick) === true) {
      this.#take(this.table)
      return true
    }
    return this.#searchAfresh(all)
  }

  #isOfValues(c: number): boolean {
    const change = this.#changes[c]
    return change !== undefined && 'instead' in change
  }

  #take({ voltage, current, base }: NetworkTable): void {
    const { direct } = base.about
    for (let k = 0; k < voltage.length; k += 1) {
      this.voltage[k] = near(voltage[k]!, direct?.voltage[k] ?? 0)
      this.current[k] = near(current[k]!, direct?.current[k] ?? 0)
    }
  }

  #searchAfresh(made: readonly number[]): boolean {
    const changes = made.flatMap((c) => this.#changes.slice(c, c + 1))
    try {
      const point = operatingPoint(this.#net, changed(this.#question, changes))
      for (let k = 0; k < this.voltage.length; k += 1) {
        this.voltage[k] = point?.voltage[k] ?? 0
        this.current[k] = point?.current[k] ?? 0
      }
      return true
    } catch (error) {
      if (error instanceof ProblemError) return false
      throw error
    }
  }
}

function near(now: number, then: number): number {
  return Math.abs(now - then) <= STILL * Math.abs(then) + NOTHING ? then : now
}

function baseOf(net: Netlist, question: Question): Base | undefined {
  try {
    return makeBase(net, question, [question])
  } catch (error) {
    if (error instanceof ProblemError || error instanceof RangeError) return undefined
    throw error
  }
}
