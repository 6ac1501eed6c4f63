/** What was found at the bench: readings, terminals that are not there, sightings. */
import { type Pair, pairId } from './expected.ts'
import type { Sighting } from './seen/sighting.ts'

/** One finding. */
export type Finding =
  | {
      readonly found: 'reading'
      readonly pair: Pair
      /** Ohms, +∞ for `open`. */
      readonly ohms: number
      /** How often it was read so. */
      readonly times: number
    }
  | { readonly found: 'absent'; readonly pair: Pair }
  | { readonly found: 'sighting'; readonly sighting: Sighting /** By its index. */; readonly answer: number }

/** What a finding is about. */
export function findingId(finding: Finding): string {
  return finding.found === 'sighting' ? finding.sighting.id : pairId(finding.pair)
}

/**
 * The findings that count: of several about one thing the last. A reading that comes out the same again counts as read
 * so often: the lead was held at the right screw.
 */
export function standingFindings(findings: readonly Finding[]): readonly Finding[] {
  const standing = new Map<string, Finding>()
  for (const one of findings) {
    const id = findingId(one)
    const before = standing.get(id)
    const isAgain = before?.found === 'reading' && one.found === 'reading' && isSame(before.ohms, one.ohms)
    standing.set(id, isAgain ? { ...one, times: before.times + one.times } : one)
  }
  return [...standing.values()]
}

/** What stood until something else was found of the same thing. */
export function takenBack(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((one, at) => {
    const next = findings.slice(at + 1).find((later) => findingId(later) === findingId(one))
    return next !== undefined && !saysTheSame(one, next)
  })
}

function saysTheSame(one: Finding, other: Finding): boolean {
  if (one.found === 'reading' && other.found === 'reading') return isSame(one.ohms, other.ohms)
  if (one.found === 'sighting' && other.found === 'sighting') return one.answer === other.answer
  return one.found === other.found
}

/** Within this share, or this many ohms, a reading is the same. */
const SAME_SHARE = 0.05
const SAME_OHMS = 0.5

function isSame(a: number, b: number): boolean {
  // a share of what is open would be anything
  if (!Number.isFinite(a) || !Number.isFinite(b)) return a === b
  return Math.abs(a - b) <= Math.max(SAME_OHMS, SAME_SHARE * Math.max(a, b))
}

/** `A12` in its letters and its number. */
export function partsOfTerminal(terminal: string): { readonly strip: string; readonly number: number } {
  const [, strip = '', number = '0'] = /^([A-Z]+)(\d+)$/.exec(terminal) ?? []
  return { strip, number: Number(number) }
}

/** The highest number of each strip that a reading was made at: so many screws the strip has at least. */
export function reachedStrips(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const reached = new Map<string, number>()
  for (const finding of findings) {
    if (finding.found !== 'reading') continue
    for (const terminal of [finding.pair.red, finding.pair.black]) {
      const { strip, number } = partsOfTerminal(terminal)
      reached.set(strip, Math.max(number, reached.get(strip) ?? 0))
    }
  }
  return reached
}
