/** The second opinion's options, and the line that a person reads while waiting for it. */
import type { OpinionOptions } from '../opinion/options.ts'
import type { Io } from './io.ts'
import { type Given, requestWrong } from './options.ts'
import { progressOn } from './progress.ts'

const FEWEST = 16
const MOST = 100

/** Decimal digits as asked. @throws ProblemError */
function digitsOf(asked: string): number {
  const digits = /^\d{1,3}$/.test(asked) ? Number(asked) : 0
  if (digits >= FEWEST && digits <= MOST) return digits
  requestWrong(`\`${asked}\` digits`, `a whole number from ${FEWEST} to ${MOST}`, 'write `--digits 40`')
}

/**
 * What is asked of a second opinion; undefined where none is.
 * @throws ProblemError where digits are asked of no second opinion, or too many or too few
 */
export function opinionAsked({ secondOpinion, digits }: Given): OpinionOptions | undefined {
  if (secondOpinion === true) return digits === undefined ? {} : { digits: digitsOf(digits) }
  if (digits !== undefined)
    requestWrong(
      '`--digits` without `--second-opinion`',
      'both, or neither',
      `write \`--second-opinion --digits ${digits}\``,
    )
  return undefined
}

/** Waits for a second opinion; on a terminal, says what is going on when that takes longer than a second. */
export async function waited<T>(
  io: Io,
  options: OpinionOptions,
  get: (options: OpinionOptions) => Promise<T>,
): Promise<T> {
  const { tell, done } = progressOn(io)
  try {
    return await get(io.status === undefined ? options : { ...options, progress: tell })
  } finally {
    done()
  }
}
