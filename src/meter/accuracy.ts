/** How far the instrument itself may be off. */
import type { Range } from './instrument.ts'

/** Least and most of what may be shown; no `most` where nothing bounds it. */
export interface Band {
  readonly least: number
  readonly most: number | null
}

/** A band of values widened by what the instrument adds to each end. */
export function widened(range: Range, { least, most }: Band): Band {
  if (range.arc !== undefined) return byNeedle(range, range.arc, least, most)
  const off = (value: number): number =>
    (range.accuracy ?? 0) * Math.abs(value) + (range.counts ?? 1) * (range.resolution?.value ?? 0)
  const low = least - off(least)
  // only voltages can be below nothing
  const signed = range.method === 'volts'
  return { least: signed ? low : Math.max(0, low), most: most === null ? null : most + off(most) }
}

/**
 * A needle is off by a share of its arc. On a battery's scale, where the needle stands at R/(R + M) from the end of
 * the scale, that is little in the middle and has no bound at the far end.
 */
function byNeedle(range: Range, arc: number, least: number, most: number | null): Band {
  if (range.method !== 'battery') {
    const off = arc * range['full scale'].value
    const low = least - off
    return {
      least: range.method === 'volts' ? low : Math.max(0, low),
      most: most === null ? null : most + off,
    }
  }
  const middle = range['mid scale'].value
  const high = most === null ? 0 : swing(most, middle) - arc
  return {
    least: Math.max(0, ohmsAt(Math.min(1, swing(least, middle) + arc), middle)),
    most: high <= 0 ? null : ohmsAt(high, middle),
  }
}

/** Share of full deflection that so many ohms leave. */
export function swing(ohms: number, middle: number): number {
  return middle / (middle + ohms)
}

function ohmsAt(deflection: number, middle: number): number {
  return middle * (1 / deflection - 1)
}
