/** What all checks of a sheet share: where problems go, and the questions asked again and again. */

import { PARTS } from '../parts/index.ts'
import type { PartProblem, PartSpec } from '../parts/kind.ts'
import type { Place, Problem, ProblemCode } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { entriesOf, plainOf, type Raw, type RawMap, type RawScalar, textOf, under } from './raw.ts'
import type { Shelf } from './shelf.ts'
import { oneOf, ticked, write, wrong } from './wording.ts'

/** One sheet under examination. Checks read the raw tree, so that they also work where a schema has complained. */
export class Checker {
  readonly problems: Problem[] = []
  readonly root: RawMap
  readonly shelf: Shelf
  readonly file: string
  readonly #blamed: ReadonlySet<Raw>

  constructor(root: RawMap, shelf: Shelf, file: string, blamed: ReadonlySet<Raw>) {
    this.root = root
    this.shelf = shelf
    this.file = file
    this.#blamed = blamed
  }

  report(code: ProblemCode, place: Place, found: string, expected: string, mend?: string): void {
    this.problems.push(wrong(code, place, found, expected, mend))
  }

  /** The text of a scalar about which nothing has been said yet. */
  word(raw: Raw | undefined): RawScalar | undefined {
    if (raw?.shape !== 'scalar' || textOf(raw) === undefined || this.#blamed.has(raw)) return undefined
    return raw
  }

  /** A word must be one of these names. */
  known(raw: Raw | undefined, names: Iterable<string>, what: string, none = `the name of a ${what}`): void {
    const word = this.word(raw)
    if (word === undefined) return
    const all = [...names]
    if (all.includes(word.text)) return
    this.report(
      'name-unknown',
      word.place,
      `the ${what} ${ticked(word.text)}`,
      oneOf(all, none),
      write(nearest(word.text, all)),
    )
  }

  /** A word must be the name of a sheet in reach. */
  onShelf(raw: Raw | undefined, sheet: Parameters<Shelf['find']>[0]): void {
    const word = this.word(raw)
    if (word === undefined || this.shelf.find(sheet, word.text, this.file) !== undefined) return
    this.known(raw, this.shelf.names(sheet, this.file), sheet, `the name of a ${sheet} sheet in reach`)
  }

  /** Items of a list of names, each once. */
  once(items: readonly RawScalar[], what: string): void {
    const seen = new Map<string, Place>()
    for (const item of items) {
      const first = seen.get(item.text)
      if (first === undefined) seen.set(item.text, item.place)
      else this.twice(item.text, what, item.place, first)
    }
  }

  twice(text: string, what: string, place: Place, first: Place): void {
    const found = `the ${what} ${ticked(text)} a second time, first in line ${first.line}, column ${first.column}`
    this.report('key-doubled', place, found, 'each name once', 'rename or delete one of the two')
  }
}

/** A part of a sheet with its raw tree. */
export interface SheetPart {
  readonly name: string
  readonly place: Place
  readonly raw: Raw
  /** Undefined when its schema refuses it. */
  readonly spec: PartSpec | undefined
}

/** The parts of a map of parts. */
export function partsOf(raw: Raw | undefined): readonly SheetPart[] {
  return [...entriesOf(raw)].map(([name, { place, value }]) => partOf(name, place, value))
}

/** A part by its raw tree. */
export function partOf(name: string, place: Place, raw: Raw): SheetPart {
  const schema = PARTS.get(textOf(under(raw, 'kind')) ?? '')?.schema
  return { name, place, raw, spec: schema?.safeParse(plainOf(raw)).data }
}

/** What each part's own kind finds wrong with it, at its place. */
export function checkSpecs(check: Checker, parts: readonly SheetPart[]): void {
  for (const { spec, raw, place } of parts) {
    if (spec === undefined) continue
    for (const problem of PARTS.get(spec.kind)?.check?.(spec) ?? []) {
      check.report(problem.code, placeIn(raw, problem, place), problem.found, problem.expected, problem.mend)
    }
  }
}

function placeIn(raw: Raw, { at = [] }: PartProblem, place: Place): Place {
  let here = raw
  let found = place
  for (const key of at) {
    const entry = entriesOf(here).get(key)
    if (entry === undefined) return found
    here = entry.value
    found = entry.value.shape === 'scalar' ? entry.value.place : entry.place
  }
  return found
}
