/** What was found of a set on the bench, step by step, and as a request. Pure. */
import type { IdentifyNext, IdentifyRequest } from '../../../index.ts'

/** One thing read or seen as it is written, or passed over by its id. */
export interface Step {
  readonly found: 'reading' | 'seen' | 'skipped'
  readonly written: string
}

export interface Inquiry {
  readonly steps: readonly Step[]
  /** Whether what rewires make of their sets is compared with too. */
  readonly rewires: boolean
}

export const NO_INQUIRY: Inquiry = { steps: [], rewires: false }

/** The whole as the library takes it. */
export function requestOf({ steps, rewires }: Inquiry): IdentifyRequest {
  const of = (found: Step['found']): string[] =>
    steps.filter((one) => one.found === found).map(({ written }) => written)
  return {
    readings: of('reading'),
    seen: of('seen'),
    skipped: of('skipped'),
    ...(rewires ? { rewires } : {}),
  }
}

/** A finding as it is written without a question: behind its id, a bare number in ohms. */
export function writtenFor({ id, ask }: Pick<IdentifyNext, 'id' | 'ask'>, line: string): string {
  const said = line.trim()
  if (ask === 'sighting') return `${id}=${said}`
  return `${id} ${said}${/^(\d+\.?\d*|\.\d+)$/.test(said) ? ' Ω' : ''}`
}

/** A reading that nobody asked for. */
export interface OwnReading {
  readonly red: string
  readonly black: string
  readonly condition: string
  readonly shown: string
}

export function readingWritten({ red, black, condition, shown }: OwnReading): string {
  const place = `${red.trim().toUpperCase()} ${black.trim().toUpperCase()} ${condition}`
  return writtenFor({ id: place, ask: 'reading' }, shown)
}
