/** What the server will not do: the status of the answer, and the problem in it. */
import type { Problem } from '../problem.ts'

/** Statuses that a refusal has. */
export type RefusedStatus = 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 421 | 500

/** Thrown wherever a request is refused; the app makes an answer of it. */
export class Refusal extends Error {
  readonly status: RefusedStatus
  readonly problem: Problem
  /** What the answer says besides. */
  readonly more: Readonly<Record<string, unknown>>

  constructor(
    status: RefusedStatus,
    problem: Omit<Problem, 'severity' | 'code'> & { readonly code?: Problem['code'] },
    more: Readonly<Record<string, unknown>> = {},
  ) {
    super(`${status}: found ${problem.found}, expected ${problem.expected}`)
    this.name = 'Refusal'
    this.status = status
    this.problem = { code: 'request-wrong', severity: 'error', ...problem }
    this.more = more
  }
}

/** The longest text from outside that a message shows, characters. */
const LONGEST = 80

/** Something from outside as messages show it: in backticks, short, nothing invisible. */
export function quoted(text: string): string {
  const clean = Array.from(text.replace(/[\p{C}\p{Zl}\p{Zp}`]/gu, '·'))
  return `\`${clean.length > LONGEST ? `${clean.slice(0, LONGEST - 1).join('')}…` : clean.join('')}\``
}
