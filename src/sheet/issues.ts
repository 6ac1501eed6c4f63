/** From the issues of a schema to problems with places, found, expected and mend. */
import * as z from 'zod/mini'
import type { Place, Problem } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { bestBranch, discriminated, type Issue, misfitProblem, strangeKey } from './issue-union.ts'
import { valueProblem } from './issue-value.ts'
import { entriesOf, itemsOf, plainOf, type Raw, type RawMap } from './raw.ts'
import { oneOf, ticked, write, wrong } from './wording.ts'

/** What a schema made of a raw tree; `blamed` are the values about which something has been said. */
export interface Parsed<T> {
  readonly value?: T
  readonly problems: readonly Problem[]
  readonly blamed: ReadonlySet<Raw>
}

/** Reads a raw tree by a schema. Every issue becomes a problem, a misspelt key a single one. */
export function parseRaw<T>(schema: z.ZodMiniType<T>, root: RawMap): Parsed<T> {
  const result = z.safeParse(schema, plainOf(root), { error: hint })
  if (result.success) return { value: result.data, problems: [], blamed: new Set() }
  const reader = new IssueReader(root)
  for (const issue of result.error.issues) reader.read(issue, [])
  return { problems: reader.problems(), blamed: reader.blamed }
}

/**
 * The message of an issue is never shown; it carries what only the schema knows: the valid keys, one a line,
 * or an example of a value.
 */
function hint(issue: z.core.$ZodRawIssue): string {
  const { inst } = issue as { inst?: z.core.$ZodType }
  if (inst === undefined) return ''
  const { shape } = inst._zod.def as { shape?: object }
  if (issue.code === 'unrecognized_keys' && shape !== undefined) return Object.keys(shape).join('\n')
  const { examples } = z.globalRegistry.get(inst) ?? {}
  return Array.isArray(examples) ? String(examples[0]) : ''
}

/** Where a path leads: a value, or the map in which its next key is missing. */
interface Found {
  readonly at: Raw
  readonly place: Place
  readonly missing?: string
}

function follow(root: Raw, path: readonly PropertyKey[]): Found {
  let at = root
  let place = root.place
  for (const key of path) {
    const entry = entriesOf(at).get(String(key))
    const next = entry?.value ?? itemsOf(at)[Number(key)]
    if (next === undefined) return { at, place, missing: String(key) }
    place = entry?.place ?? next.place
    at = next
  }
  return { at, place }
}

/** So many slips are no slips: beyond, no nearest key is sought. */
const MOST_SOUGHT = 1000

/** Collects the problems of one tree, in the order of the issues. */
class IssueReader {
  readonly blamed: Set<Raw> = new Set()
  readonly #root: RawMap
  readonly #problems: Problem[] = []
  readonly #missing: { readonly parent: Raw; readonly key: string; readonly problem: Problem }[] = []
  /** Keys that a misspelt one most likely stands for, by the map that lacks them. */
  readonly #meant = new Map<Raw, Set<string>>()

  constructor(root: RawMap) {
    this.#root = root
  }

  /** A key that is missing and there under a slightly different name is one slip, not two. */
  problems(): Problem[] {
    const missing = this.#missing.filter(({ parent, key }) => !this.#meant.get(parent)?.has(key))
    return [...this.#problems, ...missing.map(({ problem }) => problem)]
  }

  /** @param before path of the union whose branch the issue belongs to */
  read(issue: Issue, before: readonly PropertyKey[]): void {
    const path = [...before, ...issue.path]
    const found = follow(this.#root, path)
    if (found.missing !== undefined) this.#lacks(found, found.missing, issue)
    else if (issue.code === 'invalid_union' && issue.errors.length > 0) this.#union(issue, path, found)
    else if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) this.#unknown(key, issue.message.split('\n'), found.at, path)
    } else this.#say(valueProblem(issue, found.at, found.place), found.at)
  }

  #union(issue: z.core.$ZodIssueInvalidUnion, path: readonly PropertyKey[], { at }: Found): void {
    const strange = strangeKey(issue.errors, at)
    const misfit = misfitProblem(issue, at)
    if (strange !== undefined) this.#unknown(strange.key, strange.leads, at, path)
    else if (misfit !== undefined) this.#say(misfit, at)
    else for (const inner of bestBranch(issue.errors)) this.read(inner, path)
  }

  #lacks({ at, place }: Found, key: string, issue: Issue): void {
    const example = exampleOf(issue)
    const mend = example === '' ? `add the key ${ticked(key)}` : `add \`${key}: ${example}\``
    const problem = wrong('key-missing', place, `no key ${ticked(key)}`, `the key ${ticked(key)}`, mend)
    this.#missing.push({ parent: at, key, problem })
  }

  #unknown(key: string, valid: readonly string[], at: Raw, path: readonly PropertyKey[]): void {
    const entry = entriesOf(at).get(key)
    if (entry === undefined) return
    this.blamed.add(entry.value)
    if (this.#problems.length >= MOST_SOUGHT) {
      this.#problems.push(wrong('key-unknown', entry.place, `the key ${ticked(key)}`, 'a key of this map'))
      return
    }
    const meant = nearest(key, valid)
    if (meant !== undefined) this.#meant.set(at, (this.#meant.get(at) ?? new Set()).add(meant))
    const isInherited = entry.place.file !== this.#root.place.file
    const mend = isInherited ? `add \`${[...path, key].join('.')}\` to \`without\`` : write(meant)
    const expected = oneOf(valid, 'no key here')
    this.#problems.push(wrong('key-unknown', entry.place, `the key ${ticked(key)}`, expected, mend))
  }

  #say(problem: Problem, at: Raw): void {
    // that it is not finite the walk over the nodes has said already
    if (at.shape === 'scalar' && typeof at.value === 'number' && !Number.isFinite(at.value)) return
    this.blamed.add(at)
    this.#problems.push(problem)
  }
}

function exampleOf(issue: Issue): string {
  if (issue.code === 'invalid_value') return String(issue.values[0])
  if (issue.code === 'invalid_union' && issue.errors.length === 0) return discriminated(issue).words[0] ?? ''
  return issue.code === 'unrecognized_keys' ? '' : issue.message
}
