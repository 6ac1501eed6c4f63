/** A list of problems as people read it. */
import type { Problem } from '../problem.ts'
import { excerptOf, type Page } from './page.ts'

const MOST_PROBLEMS = 100

/**
 * Sorts by place, the sheet's own file first; says each thing once; adds the lines of the sheet; cuts the list at
 * 100 and lets a last problem, at the place of the first one left out, say how many more there are.
 */
export function tidy(
  problems: readonly Problem[],
  file: string,
  pages: ReadonlyMap<string, Page>,
): readonly Problem[] {
  const sorted = problems.toSorted((a, b) => compare(keyOf(a, file), keyOf(b, file)))
  const once = new Map(sorted.map((problem) => [JSON.stringify(problem), problem]))
  const shown = [...once.values()]
  const kept = shown.slice(0, MOST_PROBLEMS)
  const [first, ...others] = shown.slice(MOST_PROBLEMS)
  if (first !== undefined) kept.push(counted(first, others))
  return kept.map((problem) => withExcerpt(problem, pages))
}

/** Stands for all that were left out; an error when one of them is. */
function counted({ mend: _, ...first }: Problem, others: readonly Problem[]): Problem {
  const { severity } = others.find((problem) => problem.severity === 'error') ?? first
  const found = others.length === 0 ? '1 more problem' : `${others.length + 1} more problems`
  return { ...first, severity, found, expected: 'none' }
}

function withExcerpt(problem: Problem, pages: ReadonlyMap<string, Page>): Problem {
  const { place } = problem
  if (place === undefined || problem.excerpt !== undefined) return problem
  const page = pages.get(place.file)
  const excerpt = page === undefined ? undefined : excerptOf(page, place.line)
  return excerpt === undefined ? problem : { ...problem, excerpt }
}

type SortKey = readonly [number, string, number, number]

function keyOf({ place }: Problem, file: string): SortKey {
  if (place === undefined) return [0, '', 0, 0]
  return [place.file === file ? 1 : 2, place.file, place.line, place.column]
}

function compare(a: SortKey, b: SortKey): number {
  return a[0] - b[0] || (a[1] < b[1] ? -1 : a[1] > b[1] ? 1 : a[2] - b[2] || a[3] - b[3])
}
