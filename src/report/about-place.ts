/** Which place something judged is about. */
import type { Figure } from '../figures/figure.ts'
import { shortId } from './place-names.ts'

/** What a verdict and a named fault have in common. */
export interface About {
  readonly subject: string
  readonly path: readonly string[]
  readonly figure?: Figure | null
}

/** The places that ids name, each once. */
export function placesNamed(ids: readonly string[], places: readonly string[]): readonly string[] {
  const words = ids.flatMap((id) => id.split(/[\s,]+/))
  return places.filter((place) => words.some((id) => id === place || id.startsWith(`${place}/`)))
}

/** The place that the subject names, else the one that the path and the figure keep to; undefined for several and for the line. */
export function placeAbout({ subject, path, figure }: About, places: readonly string[]): string | undefined {
  const [first] = placesNamed([subject], places)
  if (first !== undefined) return first
  const [only, ...others] = placesNamed([...path, ...(figure ? [figure.subject] : [])], places)
  return others.length === 0 ? only : undefined
}

/** A sentence without the place in front of its ids, so that equal things of several sets read alike. */
export function withoutPlace(text: string, place: string | undefined): string {
  if (place === undefined) return text
  return text
    .split(/(\s+|[(),;])/)
    .map((word) => shortId(word, place))
    .join('')
}

/** What two sentences that differ in their figures alone have in common. */
export function alikeBut(text: string): string {
  return text.replace(/(?<![\p{L}\d])\d[\d.,]*/gu, '#')
}

/** So many places may be missing from a list that is said by what is missing. */
const FEW = 2
/** A list of fewer places is said place by place. */
const MANY = 5

/** `office, kitchen, yard`; `all sets` where they are all, `all sets but yard` where few are missing. */
export function placesText(named: Iterable<string | undefined>, places: readonly string[]): string {
  const known = new Set([...named].filter((one) => one !== undefined))
  const missing = places.filter((one) => !known.has(one))
  if (places.length > 2 && missing.length === 0) return 'all sets'
  if (known.size >= MANY && missing.length <= FEW) return `all sets but ${missing.join(' and ')}`
  return [...known].join(', ')
}
