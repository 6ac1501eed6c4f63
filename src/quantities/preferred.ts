/** Preferred values of resistors and capacitors. */

/** Series of preferred values: so many to a decade. */
export type Series = 'E3' | 'E6' | 'E12' | 'E24'

/**
 * Two digits of each value of a decade. They are what the standard lists, not a rounded geometric series: 27 to 47 and
 * 82 differ from it.
 * @source IEC 60063:2015, table 1; E6, E12, E24 secondary copy; E3, every second value of E6, from memory
 */
export const PREFERRED: Readonly<Record<Series, readonly number[]>> = {
  E3: [10, 22, 47],
  E6: [10, 15, 22, 33, 47, 68],
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
}

/**
 * The value of a series that is nearest by ratio, since tolerances are ratios; of two equally near ones the larger.
 * @param value in any unit, above 0
 * @returns the double nearest to the preferred value
 * @throws RangeError where the value is not a finite number above 0
 */
export function nearestPreferred(value: number, series: Series): number {
  if (!(value > 0) || !Number.isFinite(value)) throw new RangeError(`${value} is no value above 0`)
  const decade = Number(value.toExponential(0).split('e')[1])
  // rounding to one digit may have raised the decade; the neighbours on either side belong to it too
  const candidates = [decade - 1, decade, decade + 1].flatMap((power) =>
    PREFERRED[series].map((digits) => Number(`${digits}e${power - 1}`)),
  )
  const apart = (candidate: number): number => Math.max(candidate / value, value / candidate)
  return candidates.reduce((best, one) => (apart(one) <= apart(best) ? one : best))
}

/** Whether a value stands in a series, whatever its decade. */
export function isPreferred(value: number, series: Series): boolean {
  return value > 0 && Number.isFinite(value) && nearestPreferred(value, series) === value
}
