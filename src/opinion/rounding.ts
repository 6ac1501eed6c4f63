/** What rounding alone could make of a solution: the error of the right sides that rounded terms amount to. */

/** Steps by the golden section: no two rows near each other get like shares, and it is the same every time. */
const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * The error of one row whose terms are of these sizes together, each coefficient rounded to a double. Rows get
 * different shares, of either sign, so that they do not cancel round a loop.
 */
export function roundingOf(row: number, sizes: number): number {
  const at = (row * GOLDEN) % 1
  return Number.EPSILON * sizes * (at < 0.5 ? at - 1 : at)
}
