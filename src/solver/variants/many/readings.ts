/** Reads voltages and currents off a variant whose small system is solved. */
import { accumulate } from '../../../algebra/double-double.ts'
import type { Reading } from '../tables.ts'
import type { Source } from './base.ts'
import type { NetworkTable } from './network-table.ts'
import type { Row } from './row.ts'
import { addProduct } from './small-system.ts'

/** Terms so many times what they come to have cancelled too many digits of it. */
const CANCELLED = 1e3

/** And below this share of them they come to nothing: solutions hold about so many digits. */
const NOTHING = 1e-16

/** How a reading came out. */
export type Came = 'read' | 'apart' | 'cancelled'

const sum = new Float64Array(2)
const sumTail = new Float64Array(2)
const own = new Float64Array(2)
const ownTail = new Float64Array(2)

/**
 * Puts a reading into `out` at `at`, re and im.
 * @param fine with twice the digits; the system must have been solved so
 * @returns `apart` for a voltage between two islands, `cancelled` where only twice the digits would tell
 */
export function readInto(
  table: NetworkTable,
  source: Source,
  reading: Reading,
  fine: boolean,
  out: Float64Array,
  at: number,
): Came {
  const { laws, ties, columns } = table.base
  if ('voltage' in reading) {
    const [p, q] = reading.voltage
    const island = ties.moved ? ties.island : ties.before
    if (island[p] !== island[q]) return 'apart'
    return look(table, source, p, q, fine, out, at) ? 'read' : 'cancelled'
  }
  const k = reading.current
  const row = table.ownRow(k)
  if (laws.equations[k] === 1) {
    if (row !== undefined && row.a === 0 && row.mutual.every((x) => x === 0)) {
      driven(row, out, at)
      return 'read'
    }
    return look(table, source, columns.positionOf(k), 0, fine, out, at) ? 'read' : 'cancelled'
  }
  const told = look(table, source, laws.from[k]!, laws.to[k]!, fine, out, at)
  const yRe = row === undefined ? laws.slope[2 * k]! : row.re
  const yIm = row === undefined ? laws.slope[2 * k + 1]! : row.im
  const sRe = row === undefined ? laws.offset[2 * k]! : row.eRe
  const sIm = row === undefined ? laws.offset[2 * k + 1]! : row.eIm
  const vRe = out[at]! - (source.series?.[2 * k] ?? 0)
  const vIm = out[at + 1]! - (source.series?.[2 * k + 1] ?? 0)
  out[at] = yRe * vRe - yIm * vIm + sRe
  out[at + 1] = yRe * vIm + yIm * vRe + sIm
  return told ? 'read' : 'cancelled'
}

/** −z·i = e. */
function driven({ re, im, eRe, eIm }: Row, out: Float64Array, at: number): void {
  const square = re * re + im * im
  out[at] = -(eRe * re + eIm * im) / square
  out[at + 1] = -(eIm * re - eRe * im) / square
}

/** x(p) − x(q) of the variant; false where it cancelled too much. */
function look(
  { base, active, system }: NetworkTable,
  { x }: Source,
  p: number,
  q: number,
  fine: boolean,
  out: Float64Array,
  at: number,
): boolean {
  const { g, gTail } = system
  const p2 = 2 * p
  const q2 = 2 * q
  if (fine) {
    fallOf(x.value, x.tail, p2, q2, sum, sumTail)
    let terms = Math.abs(sum[0]!) + Math.abs(sum[1]!)
    for (let j = 0; j < active.length; j += 1) {
      const { value, tail } = base.columns.at(active[j]!.column)
      fallOf(value, tail, p2, q2, own, ownTail)
      terms += (Math.abs(own[0]!) + Math.abs(own[1]!)) * (Math.abs(g[2 * j]!) + Math.abs(g[2 * j + 1]!))
      addProduct(sum, sumTail, 0, 1, own, ownTail, 0, g, gTail, 2 * j)
    }
    const re = sum[0]! + sumTail[0]!
    const im = sum[1]! + sumTail[1]!
    // what is left of nothing is the rounding of what was there
    const isNothing = Math.abs(re) + Math.abs(im) < NOTHING * terms
    out[at] = isNothing ? 0 : re
    out[at + 1] = isNothing ? 0 : im
    return true
  }
  let re = x.value[p2]! - x.value[q2]! + (x.tail[p2]! - x.tail[q2]!)
  let im = x.value[p2 + 1]! - x.value[q2 + 1]! + (x.tail[p2 + 1]! - x.tail[q2 + 1]!)
  let terms = Math.abs(re) + Math.abs(im)
  for (let j = 0; j < active.length; j += 1) {
    const { value, tail } = base.columns.at(active[j]!.column)
    const xRe = value[p2]! - value[q2]! + (tail[p2]! - tail[q2]!)
    const xIm = value[p2 + 1]! - value[q2 + 1]! + (tail[p2 + 1]! - tail[q2 + 1]!)
    const gRe = g[2 * j]!
    const gIm = g[2 * j + 1]!
    re += xRe * gRe - xIm * gIm
    im += xRe * gIm + xIm * gRe
    terms += (Math.abs(xRe) + Math.abs(xIm)) * (Math.abs(gRe) + Math.abs(gIm))
  }
  out[at] = re
  out[at + 1] = im
  return CANCELLED * (Math.abs(re) + Math.abs(im)) >= terms
}

function fallOf(
  value: Float64Array,
  tail: Float64Array,
  p2: number,
  q2: number,
  into: Float64Array,
  intoTail: Float64Array,
): void {
  for (let part = 0; part < 2; part += 1) {
    into[part] = value[p2 + part]!
    intoTail[part] = tail[p2 + part]!
    accumulate(into, intoTail, part, -value[q2 + part]!)
    accumulate(into, intoTail, part, -tail[q2 + part]!)
  }
}
