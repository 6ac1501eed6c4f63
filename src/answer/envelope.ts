/** The head of every answer, and the version that makes it. */
import type { Problem } from '../problem.ts'
import type { Envelope } from './answer.ts'

/** Version of the program; the same as in package.json, which a test holds together. */
export const VERSION = '0.1.0'

/** The head of an answer. */
export function envelope(
  answer: string,
  request: Readonly<Record<string, unknown>>,
  problems: readonly Problem[] = [],
): Envelope {
  return { ringproof: `${answer}/1`, 'made by': VERSION, request, problems }
}
