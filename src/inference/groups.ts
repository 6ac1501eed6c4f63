/** Hypotheses that no observation in reach tells apart. */
import type { Hypotheses } from './hypotheses.ts'
import { along, answerOf, ownSigma } from './scale.ts'
import { valueAt } from './value-at.ts'

/** Values as they are compared: places on the scale with the error there, or what equals only itself. */
interface Column {
  readonly u: Float64Array
  readonly error: Float64Array
}

/** Stands for `open` and for `anything`: far from each other and from all numbers. */
const FAR = 1e300

/**
 * Groups of hypotheses whose expected values differ by less than the observation's own error (one standard deviation,
 * the larger of the two) in every allowed observable; answers in words differ when they are not the same answer.
 * Closed transitively: where A is like B and B like C, all three are one group, though A may just be told from C.
 *
 * @param allowed indices of the observables that may be asked
 * @returns the groups, members rising, groups by their first member
 */
export function groupsOf(among: Hypotheses, allowed: readonly number[]): readonly (readonly number[])[] {
  const columns = allowed.map((observable) => columnOf(among, observable))
  let parts: number[][] = [Array.from({ length: among.count }, (_, k) => k)]
  // a chain of likes crosses no gap in any column, so each column may first part all that lies apart in it; what is
  // parted by one column may have gaps in another that it had not before
  for (let before = 0; before !== parts.length; ) {
    before = parts.length
    for (const column of columns) parts = parts.flatMap((part) => splitAtGaps(part, column))
  }
  const groups = parts.flatMap((part) => (part.length === 1 ? [part] : closed(part, columns)))
  return groups.sort((a, b) => valueAt(a, 0) - valueAt(b, 0))
}

/** The group of each hypothesis, by its place among the groups. */
export function groupIndex(groups: readonly (readonly number[])[], count: number): Int32Array {
  const index = new Int32Array(count)
  groups.forEach((members, at) => {
    for (const k of members) index[k] = at
  })
  return index
}

function columnOf(among: Hypotheses, observable: number): Column {
  const seen = among.observables[observable]
  const u = new Float64Array(among.count)
  const error = new Float64Array(among.count)
  for (let k = 0; seen !== undefined && k < among.count; k++) {
    const x = among.expected[k * among.observables.length + observable] ?? Number.NaN
    if (seen.cuts !== undefined)
      u[k] = Number.isNaN(x) || x === Number.NEGATIVE_INFINITY ? -1 : answerOf(seen.cuts, x)
    else if (Number.isFinite(x)) {
      u[k] = along(seen, x)
      error[k] = ownSigma(seen, x)
    } else u[k] = x === Number.POSITIVE_INFINITY ? FAR : -FAR
  }
  return { u, error }
}

function splitAtGaps(part: number[], { u, error }: Column): number[][] {
  if (part.length === 1) return [part]
  const at = (k: number): number => valueAt(u, k)
  const first = at(valueAt(part, 0))
  if (part.every((k) => at(k) === first)) return [part]
  // what lies further apart than the largest error of the part is told apart in any case
  const most = part.reduce((largest, k) => Math.max(largest, valueAt(error, k)), 0)
  const sorted = [...part].sort((a, b) => at(a) - at(b) || a - b)
  const parts: number[][] = []
  let before = Number.NEGATIVE_INFINITY
  for (const k of sorted) {
    const gap = at(k) - before
    if (gap > 0 && gap >= most) parts.push([k])
    else parts.at(-1)?.push(k)
    before = at(k)
  }
  return parts
}

/** The transitive closure within a part. Each member is compared with groups only until one of theirs is like it. */
function closed(part: readonly number[], columns: readonly Column[]): number[][] {
  let groups: number[][] = []
  for (const k of part) {
    const isNear = (group: readonly number[]): boolean => group.some((one) => isLike(k, one, columns))
    const [near, far] = [groups.filter(isNear), groups.filter((group) => !isNear(group))]
    groups = [...far, [...near.flat(), k]]
  }
  return groups.map((group) => group.sort((a, b) => a - b))
}

function isLike(a: number, b: number, columns: readonly Column[]): boolean {
  return columns.every(({ u, error }) => {
    const apart = Math.abs(valueAt(u, a) - valueAt(u, b))
    return apart === 0 || apart < Math.max(valueAt(error, a), valueAt(error, b))
  })
}
