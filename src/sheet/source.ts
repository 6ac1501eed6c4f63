/** From a sheet's text to its raw tree: limits first, then the parser, then a walk that knows every place. */
import {
  Composer,
  type CST,
  type ErrorCode,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  Parser,
  type Scalar,
  type YAMLMap,
} from 'yaml'
import type { Place, Problem } from '../problem.ts'
import { quote } from '../quantities/fault.ts'
import { type Page, pageOf, placeAt } from './page.ts'
import type { Raw, RawEntry, RawMap } from './raw.ts'
import { doubledKey, MOST_LEVELS, tooDeep } from './refusals.ts'
import { scan } from './scan.ts'
import type { SheetText } from './shelf.ts'
import { type Objection, syntaxProblem } from './syntax.ts'
import { shownAs, ticked, wrong } from './wording.ts'

/** A sheet's text, what was found wrong with its form, and the tree when there is one. */
export interface Source {
  readonly page: Page
  readonly root?: RawMap
  readonly problems: readonly Problem[]
}

/** Text to its one document, or the parser's first objection. Handed in by tests that count its calls. */
export type Parse = (text: string) => { readonly contents: unknown; readonly objection?: Objection }

/** Keys that reach an object's prototype in careless programs; no sheet needs them. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype'])

/** Reads a text. Never throws for what the text holds. */
export function readSource(sheet: SheetText, parse: Parse = parseYaml): Source {
  const page = pageOf(sheet)
  const refused = scan(page)
  if (refused !== undefined) return { page, problems: [refused] }
  const { contents, objection } = parsed(page.text, parse)
  if (objection?.code === 'RESOURCE_EXHAUSTION') return { page, problems: [tooDeep(page, 0, 1)] }
  if (objection !== undefined) return { page, problems: [syntaxProblem(page, objection)] }
  const problems: Problem[] = []
  const root = new Walk(page, problems).toRaw(contents, undefined, 1)
  const broken = problems.find(({ code }) => code === 'too-deep' || code === 'syntax')
  if (broken !== undefined) return { page, problems: [broken] }
  if (root.shape === 'map') return { page, root, problems }
  problems.push(
    wrong('syntax', root.place, shownAs(root), 'a map of keys and values', 'begin with `ringproof: 1`'),
  )
  return { page, problems }
}

/** A second belt: the parser recurses, and whatever form the scan has not thought of ends as a problem, not as a crash. */
function parsed(text: string, parse: Parse): ReturnType<Parse> {
  try {
    return parse(text)
  } catch (thrown) {
    if (!(thrown instanceof RangeError)) throw thrown
    return { contents: undefined, objection: { code: 'RESOURCE_EXHAUSTION', message: '', start: 0, end: 1 } }
  }
}

/**
 * The parser of the library, YAML 1.2 core schema, ended at its first objection: the others mostly follow from
 * it, and an error object at each of ten thousand brackets costs more than all the rest.
 */
function parseYaml(text: string): ReturnType<Parse> {
  // no `uniqueKeys`: it compares each key with all before it; the walk finds doubled keys in one pass
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, logLevel: 'silent' })
  let first: Objection | undefined
  const onError = (source: unknown, code: ErrorCode, message: string, isWarning?: boolean): void => {
    if (isWarning === true) return
    first ??= { code, message, ...stretchOf(source) }
    throw new Stop()
  }
  // not in the library's types; without it the errors would only come late, in the document's own list
  Object.assign(composer, { onError })
  try {
    const tokens = unspoilt(new Parser().parse(text), (token) =>
      onError(token, 'UNEXPECTED_TOKEN', token.message),
    )
    const [document, second] = composer.compose(tokens, true, text.length)
    if (second !== undefined) onError([...second.range], 'MULTIPLE_DOCS', '')
    for (const { code, message, pos } of document?.errors ?? []) onError(pos, code, message)
    return { contents: document?.contents }
  } catch (thrown) {
    if (first !== undefined && thrown instanceof Stop) return { contents: undefined, objection: first }
    throw thrown
  }
}

/** Ends the parser; never leaves this file, and carries no stack, since nobody reads it. */
class Stop {}

/** The parser's tokens up to the first that it could make nothing of. */
function* unspoilt(
  tokens: Iterable<CST.Token>,
  onError: (token: CST.ErrorToken) => void,
): Generator<CST.Token> {
  for (const token of tokens) {
    if (token.type === 'error') onError(token)
    yield token
  }
}

function stretchOf(source: unknown): { start: number; end: number } {
  if (typeof source === 'number') return { start: source, end: source + 1 }
  if (Array.isArray(source)) return { start: Number(source[0]), end: Number(source[1]) }
  const { offset, source: text } = source as { offset: number; source?: string }
  return { start: offset, end: offset + (text?.length ?? 1) }
}

/** Nodes of the library to our own tree. Recursive, but no deeper than the limit. */
class Walk {
  readonly #page: Page
  readonly #problems: Problem[]

  constructor(page: Page, problems: Problem[]) {
    this.#page = page
    this.#problems = problems
  }

  /** @param around where a value that is not written at all is said to be: its key */
  toRaw(node: unknown, around: Place | undefined, level: number): Raw {
    if (isScalar(node)) return this.#scalar(node, around)
    if (!isMap(node) && !isSeq(node)) {
      return { shape: 'scalar', place: around ?? placeAt(this.#page, 0, 1), value: null, text: '', indent: 0 }
    }
    const [start, end] = rangeOf(node)
    const place = placeAt(this.#page, start, end)
    if (level > MOST_LEVELS) {
      this.#problems.push(tooDeep(this.#page, start, end))
      return { shape: 'list', place, items: [] }
    }
    if (isMap(node)) return { shape: 'map', place, entries: this.#entries(node, level) }
    return { shape: 'list', place, items: node.items.map((item) => this.toRaw(item, place, level + 1)) }
  }

  #entries(node: YAMLMap, level: number): ReadonlyMap<string, RawEntry> {
    const entries = new Map<string, RawEntry>()
    const doubled = new Set<string>()
    for (const pair of node.items) {
      const key = this.#key(pair)
      if (key === undefined) continue
      const first = entries.get(key.name)
      if (first === undefined) {
        entries.set(key.name, { place: key.place, value: this.toRaw(pair.value, key.place, level + 1) })
      } else if (!doubled.has(key.name)) {
        doubled.add(key.name)
        this.#problems.push(doubledKey(key.name, key.place, first.place))
      }
    }
    return entries
  }

  /** A key's text and place; undefined, with its problem, when no sheet may carry it. */
  #key(pair: Pair): { name: string; place: Place } | undefined {
    const { key } = pair
    const [start, end] = rangeOf(key ?? pair.value)
    const place = placeAt(this.#page, start, end)
    if (!isScalar(key) || (key.source ?? '') === '') {
      const found = isScalar(key) ? 'a colon without a key' : 'a map or a list as a key'
      this.#problems.push(wrong('syntax', place, found, 'a word as key', 'write a key before the colon'))
      return undefined
    }
    const name = key.source ?? ''
    if (name === '<<') {
      const mend = 'write the values out; a set may say `based on`'
      this.#problems.push(wrong('alias-refused', place, 'the merge key `<<`', 'keys and values', mend))
      return undefined
    }
    if (FORBIDDEN.has(name)) {
      this.#problems.push(
        wrong('key-forbidden', place, `the key ${ticked(name)}`, 'another name', 'rename it'),
      )
      return undefined
    }
    return { name, place }
  }

  #scalar(node: Scalar, around: Place | undefined): Raw {
    const [start, end] = rangeOf(node)
    const text = node.source ?? ''
    const place = start === end && around !== undefined ? around : placeAt(this.#page, start, end)
    const indent = end - start === text.length + 2 ? 1 : 0
    if (typeof node.value === 'number' && !Number.isFinite(node.value)) {
      this.#problems.push(wrong('quantity-out-of-range', place, quote(text), 'a finite number'))
    }
    return { shape: 'scalar', place, value: node.value as string | number | boolean | null, text, indent }
  }
}

function rangeOf(node: unknown): readonly [number, number] {
  const [start, end] = (node as Node | null)?.range ?? [0, 0]
  return [start, end]
}
