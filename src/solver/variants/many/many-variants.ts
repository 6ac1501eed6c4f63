/**
 * Many readings of many variants of one netlist. Readings are grouped by the network in which their questions are asked;
 * each network is factored once, all variants are updates of it, and the few that an update cannot be trusted with are
 * solved afresh (design 5, "Variants").
 */

import { sameStates } from '../../../netlist/line-state.ts'
import type { Netlist } from '../../../netlist/netlist.ts'
import { ProblemError } from '../../../problem.ts'
import { type Answerer, answererOf } from '../../answerer.ts'
import { isBent } from '../../laws.ts'
import type { Question } from '../../question.ts'
import { currentIn, type Solution, voltageBetween } from '../../solution.ts'
import { type Change, changed } from '../change.ts'
import type { Reading } from '../tables.ts'
import { hangsOnSource, makeBase, statedOf } from './base.ts'
import { NetworkTable, type PointOf } from './network-table.ts'
import { type Came, readInto } from './readings.ts'
import { VariantPoint } from './variant-point.ts'

/** A reading of the answer to a question. */
export interface Asked {
  readonly question: Question
  readonly reading: Reading
}

/** How a reading of a variant came out. */
export const READ = 0
/** A probe stands between two islands: nothing can flow. */
export const NO_WAY = 1
/** Nothing fixes the voltage. */
export const APART = 2
/** No point was found at which the laws agree. */
export const UNSETTLED = 3
/** The variant contradicts itself. */
export const REFUSED = 4

/** Variants of a network by how they were found. */
export interface Counts {
  updated: number
  fresh: number
  refused: number
}

/** A source of a network, with what is read of it. */
interface Group {
  readonly question: Question
  readonly readings: readonly Reading[]
  /** Where each reading goes. */
  readonly places: readonly number[]
}

interface Part {
  readonly table: NetworkTable | undefined
  readonly groups: readonly Group[]
}

export class ManyVariants {
  readonly counts: Counts = { updated: 0, fresh: 0, refused: 0 }
  readonly #net: Netlist
  readonly #changes: readonly Change[]
  readonly #parts: readonly Part[]
  readonly #points = new Map<string, VariantPoint>()
  #answerer: Answerer | undefined
  #tick = 0

  /** Solves every network once. What an unchanged question is refused with is met again when it is read. */
  constructor(net: Netlist, asked: readonly Asked[], changes: readonly Change[]) {
    this.#net = net
    this.#changes = changes
    this.#parts = [...this.#grouped(asked).values()].map((groups): Part => {
      const table = this.#tableOf(groups.map(({ question }) => question))
      return { table, groups }
    })
  }

  /** Readings by network, then by source. */
  #grouped(asked: readonly Asked[]): Map<string, readonly Group[]> {
    const states = sameStates(this.#net)
    const networks = new Map<
      string,
      Map<string, { question: Question; readings: Reading[]; places: number[] }>
    >()
    asked.forEach(({ question, reading }, place) => {
      const { line, sets } = question.condition
      const settled = { ...question, condition: { line: states[line], sets } }
      const whole = JSON.stringify(settled)
      const key = hangsOnSource(this.#net, question) ? whole : JSON.stringify(statedOf(settled))
      const network = networks.get(key) ?? new Map()
      networks.set(key, network)
      const group = network.get(whole) ?? { question: settled, readings: [], places: [] }
      network.set(whole, group)
      group.readings.push(reading)
      group.places.push(place)
    })
    return new Map([...networks].map(([key, groups]) => [key, [...groups.values()]]))
  }

  #tableOf(questions: readonly Question[]): NetworkTable | undefined {
    const [first] = questions
    if (first === undefined) return undefined
    if (isPoint(first)) return this.#pointOf(first, false).table
    try {
      const base = makeBase(this.#net, statedOf(first), questions)
      return base && new NetworkTable(base, this.#changes, this.#pointFor(first, base.stating !== 'rest'))
    } catch (error) {
      if (error instanceof ProblemError || error instanceof RangeError) return undefined
      throw error
    }
  }

  /** Where the bent parts of an alternating question stand; nothing where it has none, or finds the point itself. */
  #pointFor(question: Question, hangs: boolean): PointOf | undefined {
    const { analysis, small } = question
    if (!hangs || small === true || !this.#net.parts.some(isBent)) return undefined
    if (small === 'fed') return this.#pointOf(question, true)
    return analysis === 'direct' ? undefined : this.#pointOf(question, false)
  }

  /** The point of a question's network in direct current, found once a variant for all who ask. */
  #pointOf(
    { condition, lifted, added, bridges, within, instead }: Question,
    valuesOnly: boolean,
  ): VariantPoint {
    const whole: Question = {
      analysis: 'direct',
      condition,
      ...(valuesOnly ? {} : given({ lifted, added, bridges, within })),
      ...given({ instead }),
    }
    const key = JSON.stringify([valuesOnly, whole])
    const known = this.#points.get(key)
    if (known !== undefined) return known
    const made = new VariantPoint(this.#net, whole, this.#changes, valuesOnly)
    this.#points.set(key, made)
    return made
  }

  /**
   * All readings with these changes made at once, in the order in which they were asked.
   * @param out re and im of each; overwritten, without meaning where it did not come out
   * @param came how each came out, by the codes above; overwritten
   */
  read(made: readonly number[], out: Float64Array, came: Uint8Array): void {
    this.#tick += 1
    this.#answerer = undefined
    for (const part of this.#parts) this.#readPart(part, made, out, came)
  }

  #readPart({ table, groups }: Part, made: readonly number[], out: Float64Array, came: Uint8Array): void {
    const begun = table?.begin(made, this.#tick) === true
    let fresh = false
    for (let s = 0; s < groups.length; s += 1) {
      const group = groups[s]!
      if (begun && table !== undefined && update(table, s, group, out, came)) continue
      fresh = true
      this.#afresh(group, made, out, came)
    }
    if (fresh) this.counts.fresh += 1
    else this.counts.updated += 1
  }

  #afresh(
    { question, readings, places }: Group,
    made: readonly number[],
    out: Float64Array,
    came: Uint8Array,
  ): void {
    this.#answerer ??= answererOf(this.#net)
    const asked = changed(
      question,
      made.flatMap((c) => this.#changes.slice(c, c + 1)),
    )
    for (let t = 0; t < places.length; t += 1) {
      const place = places[t]!
      const reading = readings[t]!
      const solution = this.#solved(this.#answerer, asked, reading)
      if (typeof solution === 'number') {
        came[place] = solution
        continue
      }
      const read = solution.probeOpen
        ? undefined
        : 'current' in reading
          ? currentIn(solution, reading.current)
          : voltageBetween(solution, ...reading.voltage)
      came[place] = solution.probeOpen ? NO_WAY : read === undefined ? APART : READ
      out[2 * place] = read?.re ?? 0
      out[2 * place + 1] = read?.im ?? 0
    }
  }

  #solved(answerer: Answerer, question: Question, reading: Reading): Solution | number {
    try {
      const reads =
        'current' in reading
          ? { nodes: [], branches: [reading.current] }
          : { nodes: reading.voltage, branches: [] }
      return answerer(question, reads)
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      this.counts.refused += 1
      return error.problems.every(({ code }) => code === 'no-convergence') ? UNSETTLED : REFUSED
    }
  }
}

/** Readings of one source by an update; false where only a fresh solve tells. */
function update(
  table: NetworkTable,
  s: number,
  { readings, places, question }: Group,
  out: Float64Array,
  came: Uint8Array,
): boolean {
  const { ties, sources } = table.base
  const source = sources[s]!
  const island = ties.moved ? ties.island : ties.before
  for (const { into, outOf } of question.probes ?? []) {
    if (island[into] === island[outOf]) continue
    for (const place of places) came[place] = NO_WAY
    return true
  }
  let fine = table.isFine
  if (table.active.length > 0) table.solve(source, s)
  for (let t = 0; t < places.length; t += 1) {
    const place = places[t]!
    let how: Came = readInto(table, source, readings[t]!, fine, out, 2 * place)
    if (how === 'cancelled') {
      table.solve(source, s, true)
      fine = true
      how = readInto(table, source, readings[t]!, true, out, 2 * place)
    }
    came[place] = how === 'apart' ? APART : READ
  }
  return true
}

/** Whether a question is that for the point itself. */
function isPoint({ analysis, small, sources, probes, series }: Question): boolean {
  return (
    analysis === 'direct' &&
    small === undefined &&
    sources !== 'none' &&
    probes === undefined &&
    series === undefined
  )
}

/** What of these is there. */
function given<T extends object>(all: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(all).filter(([, one]) => one !== undefined)) as never
}
