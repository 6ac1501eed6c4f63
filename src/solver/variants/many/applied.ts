/** Rows applied to columns, which makes the entries of the small matrix, and to solutions, which makes what drives them. */
import { addFall, addNumber, type Placed, type SeriesOf } from './placed.ts'
import { addLaw, type Row } from './row.ts'

/** The entry of a row in the column of another change, into `out` at `at`, without tails. */
export function putEntry(row: Row, x: Placed, out: Float64Array, at: number): void {
  const { value, tail } = x
  if (row.form === 'equation') {
    const { i } = row
    let zRe = row.re
    let zIm = row.im
    let mutual = row.mutual
    let re = 0
    let im = 0
    if (row.da === 0) {
      // the column keeps the old law: what is new of it is the difference
      zRe = row.dRe
      zIm = row.dIm
      mutual = row.dMutual
    } else if (row.a !== 0) {
      const { a, p, q } = row
      re = a * (value[2 * p]! - value[2 * q]! + (tail[2 * p]! - tail[2 * q]!))
      im = a * (value[2 * p + 1]! - value[2 * q + 1]! + (tail[2 * p + 1]! - tail[2 * q + 1]!))
    }
    const iRe = value[2 * i]!
    const iIm = value[2 * i + 1]!
    re -= zRe * iRe - zIm * iIm
    im -= zRe * iIm + zIm * iRe
    const { others } = row
    for (let m = 0; m < others.length; m += 1) {
      const o = 2 * others[m]!
      const mRe = mutual[2 * m]!
      const mIm = mutual[2 * m + 1]!
      re -= mRe * value[o]! - mIm * value[o + 1]!
      im -= mRe * value[o + 1]! + mIm * value[o]!
    }
    out[at] = re
    out[at + 1] = im
    return
  }
  const { p, q } = row
  const vRe = value[2 * p]! - value[2 * q]! + (tail[2 * p]! - tail[2 * q]!)
  const vIm = value[2 * p + 1]! - value[2 * q + 1]! + (tail[2 * p + 1]! - tail[2 * q + 1]!)
  if (row.form === 'link') {
    out[at] = vRe
    out[at + 1] = vIm
    return
  }
  out[at] = row.dRe * vRe - row.dIm * vIm
  out[at + 1] = row.dRe * vIm + row.dIm * vRe
}

/** Adds the same entry, with its tail, to `out`: re, im, and what they have lost. */
export function addEntryFine(row: Row, x: Placed, out: Float64Array): void {
  if (row.form === 'link') addFall(x, row.p, row.q, 1, 0, out)
  else if (row.form === 'admittance') addFall(x, row.p, row.q, row.dRe, row.dIm, out)
  else if (row.da === 0) addLaw(row, x, 1, 0, row.dRe, row.dIm, row.dMutual, out)
  else addLaw(row, x, 1, row.a, row.re, row.im, row.mutual, out)
}

/**
 * Adds to `out` what drives the row in a solution of the unchanged network, with its tail.
 * @param series voltages in series with branches in this solution
 */
export function addDriven(row: Row, x: Placed, series: SeriesOf, out: Float64Array): void {
  if (row.form === 'link') {
    addFall(x, row.p, row.q, -1, 0, out)
    return
  }
  const sRe = series === undefined || row.branch < 0 ? 0 : series[2 * row.branch]!
  const sIm = series === undefined || row.branch < 0 ? 0 : series[2 * row.branch + 1]!
  if (row.form === 'admittance') {
    addFall(x, row.p, row.q, -row.dRe, -row.dIm, out)
    // s′ − s, and y′ − y times what is in series
    addNumber(out, -row.deRe + (row.dRe * sRe - row.dIm * sIm), -row.deIm + (row.dRe * sIm + row.dIm * sRe))
    return
  }
  if (row.da === 0) {
    addLaw(row, x, -1, 0, row.dRe, row.dIm, row.dMutual, out)
    addNumber(out, row.deRe, row.deIm)
  } else {
    addLaw(row, x, -1, row.a, row.re, row.im, row.mutual, out)
    addNumber(out, row.eRe + row.a * sRe, row.eIm + row.a * sIm)
  }
}

/** The same of an equation without mutual terms, without tails, into `out` at `at`. */
export function putDriven(
  row: Row,
  { value, tail }: Placed,
  series: SeriesOf,
  out: Float64Array,
  at: number,
): void {
  const { a, p, q, i } = row
  const zRe = row.da === 0 ? row.dRe : row.re
  const zIm = row.da === 0 ? row.dIm : row.im
  const iRe = value[2 * i]!
  const iIm = value[2 * i + 1]!
  let re = zRe * iRe - zIm * iIm
  let im = zRe * iIm + zIm * iRe
  if (row.da === 0) {
    re += row.deRe
    im += row.deIm
  } else {
    const k = 2 * row.branch
    re += row.eRe + a * ((series?.[k] ?? 0) - (value[2 * p]! - value[2 * q]! + (tail[2 * p]! - tail[2 * q]!)))
    im +=
      row.eIm +
      a *
        ((series?.[k + 1] ?? 0) -
          (value[2 * p + 1]! - value[2 * q + 1]! + (tail[2 * p + 1]! - tail[2 * q + 1]!)))
  }
  out[at] = re
  out[at + 1] = im
}
