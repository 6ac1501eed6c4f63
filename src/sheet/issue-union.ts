/** Which branch of a union the writer meant. */
import type * as z from 'zod/mini'
import type { Problem } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { entriesOf, type Raw } from './raw.ts'
import { oneOf, SHAPES, shownAs, ticked, write, wrong } from './wording.ts'

/** An issue of a schema. */
export type Issue = z.core.$ZodIssue

type Branches = readonly (readonly Issue[])[]

/**
 * The issues of the branch that fits best: a branch of another shape (a word where a map stands) fits worst, else
 * the fewest issues win, every unknown key counting. Of equals the last.
 */
export function bestBranch(branches: Branches): readonly Issue[] {
  let best: readonly Issue[] = []
  let least = Number.POSITIVE_INFINITY
  for (const branch of branches) {
    const cost = branch.reduce((sum, issue) => sum + costOf(issue), 0)
    if (cost <= least) {
      least = cost
      best = branch
    }
  }
  return best
}

const MISFIT = 1000

function costOf(issue: Issue): number {
  if (isMisfit(issue)) return MISFIT
  return issue.code === 'unrecognized_keys' ? issue.keys.length : 1
}

/** The value itself is of another shape or another word than this branch takes. */
function isMisfit(issue: Issue): boolean {
  if (issue.path.length > 0) return false
  if (issue.code === 'invalid_union') return issue.errors.every((branch) => branch.every(isMisfit))
  return issue.code === 'invalid_type' || issue.code === 'invalid_value'
}

/** The problem of a value that no branch can take at all; undefined when one of them could. */
export function misfitProblem(issue: z.core.$ZodIssueInvalidUnion, at: Raw): Problem | undefined {
  if (!isMisfit({ ...issue, path: [] })) return undefined
  const words = wordsOf(issue)
  const expected = [...(words.length === 0 ? [] : [oneOf(words, '')]), ...shapesOf(issue)]
  const meant = at.shape === 'scalar' ? nearest(at.text, words) : undefined
  const code = at.shape === 'scalar' && words.length > 0 ? 'name-unknown' : 'syntax'
  return wrong(code, at.place, shownAs(at), [...new Set(expected)].join(', or '), write(meant))
}

function wordsOf(issue: Issue): string[] {
  if (issue.code === 'invalid_value') return issue.values.map(String)
  return issue.code === 'invalid_union' ? issue.errors.flat().flatMap(wordsOf) : []
}

function shapesOf(issue: Issue): string[] {
  if (issue.code === 'invalid_type') return [SHAPES[issue.expected] ?? 'a text']
  if (issue.code !== 'invalid_union') return []
  // the example that a quantity's schema carries says more than `a text, or a number`
  if (issue.message !== '' && wordsOf(issue).length === 0) return [`a text such as ${ticked(issue.message)}`]
  return issue.errors.flat().flatMap(shapesOf)
}

/** What a map lacks that has none of the keys by which the branches are told apart. */
export interface Strange {
  readonly key: string
  /** The keys of which one must be there. */
  readonly leads: readonly string[]
}

/** Undefined when at least one key of the map belongs to some branches and not to others: that one is meant. */
export function strangeKey(branches: Branches, at: Raw): Strange | undefined {
  const unknown = branches.map(
    (branch) => new Set(branch.flatMap((i) => (i.code === 'unrecognized_keys' ? i.keys : []))),
  )
  const counts = [...entriesOf(at).keys()].map((key) => ({
    key,
    times: unknown.filter((keys) => keys.has(key)).length,
  }))
  const [strange] = counts.filter(({ times }) => times === branches.length)
  if (strange === undefined || counts.some(({ times }) => times > 0 && times < branches.length))
    return undefined
  const leads = branches.map((branch) => branch.find((issue) => issue.path.length === 1)?.path[0])
  return { key: strange.key, leads: [...new Set(leads.filter((lead) => lead !== undefined).map(String))] }
}

/** The key that tells the branches apart, and its words; the library's types leave them out. */
export function discriminated(issue: z.core.$ZodIssueInvalidUnion): {
  discriminator: string
  words: readonly string[]
} {
  const { discriminator = '', options = [] } = issue as {
    discriminator?: string
    options?: readonly unknown[]
  }
  return { discriminator, words: options.map(String) }
}
