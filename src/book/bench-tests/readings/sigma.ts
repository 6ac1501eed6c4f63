/** How far a reading by itself may be off. */
import { widened } from '../../../meter/accuracy.ts'
import type { Instrument, NamedRange, Range } from '../../../meter/instrument.ts'

/** Share of what is shown by which a reading scatters, one standard deviation, besides its last digit. The trial's law. */
const SCATTER = 0.01
/** An instrument's accuracy is the worst case; three standard deviations are taken to be within it. */
const WORST = 3

/**
 * One standard deviation of a reading: 1 % and the last digit of the range that holds it, or a third of what the
 * instrument itself may be off, whichever is more. What the leads add on ohms is part of the latter.
 *
 * @param ranges all ranges that show the same, the smallest first
 */
export function sigmaOf(
  score: number,
  ranges: readonly NamedRange[],
  { leads }: Pick<Instrument, 'leads'>,
): number {
  const size = Math.abs(score)
  const range = heldBy(size, ranges)
  if (range === undefined || !Number.isFinite(size)) return 0
  const band = widened(range, { least: size, most: size })
  const half = band.most === null ? size : (band.most - band.least) / 2
  const added = range.method === 'constant-current' ? (leads?.value ?? 0) : 0
  const digit = range.resolution?.value
  const scatter = digit === undefined ? 0 : SCATTER * size + digit
  return Math.max((half + added) / WORST, scatter)
}

/** The range on which a value is read: the smallest that holds it, the largest where none does. */
export function heldBy(size: number, ranges: readonly NamedRange[]): Range | undefined {
  const found = ranges.find(({ range }) => size <= range['full scale'].value) ?? ranges.at(-1)
  return found?.range
}

/** One count of the last digit of the smallest range; where a needle shows it, a hundredth of that range. */
export function finest(ranges: readonly NamedRange[]): number {
  const range = ranges[0]?.range
  return range === undefined ? 1 : (range.resolution?.value ?? range['full scale'].value / 100)
}

/** The most that any range shows. */
export function widestScale(ranges: readonly NamedRange[]): number {
  return ranges.at(-1)?.range['full scale'].value ?? 0
}
