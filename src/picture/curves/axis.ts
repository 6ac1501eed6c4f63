/** Axes: from values to places on the picture, and where their ticks are. */

export interface Axis {
  readonly least: number
  readonly most: number
  readonly ticks: readonly number[]
}

const STEPS = [1, 2, 5, 10]

/** An axis of even ticks, about `count` of them, on which all values lie; `floor` is on it too where given. */
export function evenAxis(values: readonly number[], count: number, floor?: number): Axis {
  const all = floor === undefined ? values : [...values, floor]
  const [low, high] = [Math.min(...all), Math.max(...all)]
  const span = high > low ? high - low : Math.max(1, Math.abs(high))
  const power = 10 ** Math.floor(Math.log10(span / count))
  const step = power * (STEPS.find((one) => one * power >= span / count) ?? 10)
  const first = Math.floor(low / step)
  const last = Math.max(first + 1, Math.ceil(high / step))
  // multiples, not sums: the ticks stay round
  const ticks = Array.from({ length: last - first + 1 }, (_, k) => roundTo((first + k) * step, step))
  return { least: ticks[0] ?? low, most: ticks.at(-1) ?? high, ticks }
}

function roundTo(value: number, step: number): number {
  const digits = Math.max(0, -Math.floor(Math.log10(step)) + 1)
  return Number(value.toFixed(Math.min(20, digits)))
}

/** Where a frequency lies between 0 and 1 when each octave takes the same room. */
export function octaves(frequency: number, least: number, most: number): number {
  return Math.log(frequency / least) / Math.log(most / least)
}
