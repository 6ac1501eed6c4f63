/** Whether a finding is what a known set lets expect. */
import { hasTerminal } from './columns.ts'
import type { Finding } from './evidence.ts'
import { type Reader, SCALE } from './expected.ts'
import type { KnownSet } from './known.ts'
import { NO_TERMINAL, OPEN } from './outcomes.ts'

/** What a set lets expect of a finding, and whether it agrees. */
export interface Fit {
  /** A word, or ohms; neither where its sheet does not say. */
  readonly says?: string
  readonly ohms?: number
  /** Absent where the set says nothing of it. */
  readonly agrees?: boolean
}

/** Further off than so many standard deviations, a reading does not agree. */
const FAR = 3

/** Compares a finding with what a known set lets expect. */
export function fitOf(finding: Finding, known: KnownSet, reader: Reader): Fit {
  if (finding.found === 'sighting') {
    const at = finding.sighting.answerOf(known)
    const says = finding.sighting.answers[at]
    return says === undefined ? {} : { says, agrees: at === finding.answer }
  }
  const { pair } = finding
  if (!hasTerminal(known, pair.red) || !hasTerminal(known, pair.black))
    return { says: NO_TERMINAL, agrees: finding.found === 'absent' }
  const read = reader.read(known, pair)
  if (read === undefined || Number.isNaN(read.ohms)) return {}
  const expected = Number.isFinite(read.ohms) ? { ohms: read.ohms } : { says: OPEN }
  if (finding.found === 'absent') return { ...expected, agrees: false }
  if (!Number.isFinite(read.ohms) || !Number.isFinite(finding.ohms))
    return { ...expected, agrees: read.ohms === finding.ohms }
  const sigma = Math.hypot(read.spread, reader.error(read.ohms) / Math.hypot(read.ohms, SCALE))
  const off = Math.abs(Math.asinh(finding.ohms / SCALE) - Math.asinh(read.ohms / SCALE))
  return { ...expected, agrees: off <= FAR * sigma }
}
