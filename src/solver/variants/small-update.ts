/**
 * The kernel of variants: a solved system after one or two small changes, from tables made beforehand.
 * With A′ = A + Σ u w ᵀ and X = A⁻¹u the readings are t(x′) = t(x) + Σ t(X)·g, where M·g = r and M has one row a change
 * (Sherman and Morrison 1950, Woodbury 1950; from memory). M is kept whole rather than as 1 + wᵀX: for an
 * equation it is the new law applied to X, so that nothing cancels when a link is opened.
 * All numbers are complex, interleaved re, im. Nothing is allocated and nothing is searched.
 */

/** What is known of all changes of one solved system. */
export interface Tables {
  /** Number of changes and of readings. */
  readonly changes: number
  readonly readings: number
  /** t(x): the readings of the unchanged system. */
  readonly base: Float64Array
  /** t(X) by change, then reading. */
  readonly reached: Float64Array
  /** M by row change, then column change. */
  readonly small: Float64Array
  /** r by change. */
  readonly driven: Float64Array
  /** Size by which a row of M is told small: |p| + |w ᵀX| of the change itself. */
  readonly sizes: Float64Array
  /** The reading that is the current of the very branch that a change alters, or −1. */
  readonly own: Int32Array
  /** That current is y′·v + s′ with v = v₀ + Σ (V of X)·g: y′, s′, v₀ by change. */
  readonly ownLaw: Float64Array
  /** Voltage across the altered branch by row change, then column change. */
  readonly ownFall: Float64Array
  /** Of each reading, 0 for a voltage and 1 for a current; and the largest of either in `base`. */
  readonly sort: Uint8Array
  readonly largest: Float64Array
  /** g of the last update, of one change or of two: kept here, since numbers handed on would be boxed. */
  readonly last: Float64Array
}

/** Below this share of its size a small matrix is not to be trusted (design 5). */
export const LEAST_CONDITION = 1e-6

/**
 * Below this share of its two products a determinant has lost too much. Stricter than the condition: rows that are
 * small alike, as of two opened links, are well apart, and rows that nearly say the same lose digits of every reading.
 */
export const LEAST_INDEPENDENCE = 1e-3

/** Terms this many times the largest reading of their sort have cancelled too much of it. */
export const MOST_CANCELLED = 1e3

/** Readings after change `c`; false, with `out` of no worth, where the update cannot be trusted. */
export function updateOne(tables: Tables, c: number, out: Float64Array): boolean {
  const { changes: n, readings, base, reached, small, driven, sizes, own, last, sort, largest } = tables
  const at = 2 * (c * n + c)
  const mRe = small[at]!
  const mIm = small[at + 1]!
  const size = mRe * mRe + mIm * mIm
  const least = LEAST_CONDITION * sizes[c]!
  if (!(size >= least * least) || size === 0) return false
  const rRe = driven[2 * c]!
  const rIm = driven[2 * c + 1]!
  const gRe = (rRe * mRe + rIm * mIm) / size
  const gIm = (rIm * mRe - rRe * mIm) / size
  let from = 2 * c * readings
  let volts = 0
  let amperes = 0
  let mostVolts = largest[0]!
  let mostAmperes = largest[1]!
  for (let t = 0; t < 2 * readings; t += 2) {
    const re = reached[from]!
    const im = reached[from + 1]!
    const termRe = re * gRe - im * gIm
    const termIm = re * gIm + im * gRe
    const outRe = base[t]! + termRe
    const outIm = base[t + 1]! + termIm
    out[t] = outRe
    out[t + 1] = outIm
    from += 2
    const term = Math.abs(termRe) + Math.abs(termIm)
    const found = Math.abs(outRe) + Math.abs(outIm)
    if (sort[t >> 1] === 0) {
      if (term > volts) volts = term
      if (found > mostVolts) mostVolts = found
    } else {
      if (term > amperes) amperes = term
      if (found > mostAmperes) mostAmperes = found
    }
  }
  if (volts > MOST_CANCELLED * mostVolts || amperes > MOST_CANCELLED * mostAmperes) return false
  if (own[c]! >= 0) {
    last[0] = gRe
    last[1] = gIm
    readOwn(tables, c, c, -1, out)
  }
  return true
}

/** Readings after changes `c` and `d`, of different branches; false where the update cannot be trusted. */
export function updateTwo(tables: Tables, c: number, d: number, out: Float64Array): boolean {
  const { changes: n, readings, base, reached, small, driven, sizes, own, last, sort, largest } = tables
  const cc = 2 * (c * n + c)
  const cd = 2 * (c * n + d)
  const dc = 2 * (d * n + c)
  const dd = 2 * (d * n + d)
  // rows scaled by their size, so that volts and amperes can be compared
  const p = 1 / sizes[c]!
  const q = 1 / sizes[d]!
  const aRe = small[cc]! * p
  const aIm = small[cc + 1]! * p
  const bRe = small[cd]! * p
  const bIm = small[cd + 1]! * p
  const cRe = small[dc]! * q
  const cIm = small[dc + 1]! * q
  const dRe = small[dd]! * q
  const dIm = small[dd + 1]! * q
  const detRe = aRe * dRe - aIm * dIm - bRe * cRe + bIm * cIm
  const detIm = aRe * dIm + aIm * dRe - bRe * cIm - bIm * cRe
  const det = detRe * detRe + detIm * detIm
  const a = Math.abs(aRe) + Math.abs(aIm)
  const b = Math.abs(bRe) + Math.abs(bIm)
  const e = Math.abs(cRe) + Math.abs(cIm)
  const f = Math.abs(dRe) + Math.abs(dIm)
  // each row must say something, and the two rows something else: what cancels in the determinant is lost
  if (!(a + b >= LEAST_CONDITION && e + f >= LEAST_CONDITION)) return false
  const least = LEAST_INDEPENDENCE * (a * f + b * e)
  if (!(det >= least * least) || det === 0) return false
  const rRe = driven[2 * c]! * p
  const rIm = driven[2 * c + 1]! * p
  const sRe = driven[2 * d]! * q
  const sIm = driven[2 * d + 1]! * q
  const nRe = rRe * dRe - rIm * dIm - (bRe * sRe - bIm * sIm)
  const nIm = rRe * dIm + rIm * dRe - (bRe * sIm + bIm * sRe)
  const mRe = aRe * sRe - aIm * sIm - (cRe * rRe - cIm * rIm)
  const mIm = aRe * sIm + aIm * sRe - (cRe * rIm + cIm * rRe)
  const gRe = (nRe * detRe + nIm * detIm) / det
  const gIm = (nIm * detRe - nRe * detIm) / det
  // what g and h were before their terms cancelled: the size of the rounding in them
  const r = Math.abs(rRe) + Math.abs(rIm)
  const s = Math.abs(sRe) + Math.abs(sIm)
  const root = Math.sqrt(det)
  const mostG = (r * f + b * s) / root
  const mostH = (a * s + e * r) / root
  const hRe = (mRe * detRe + mIm * detIm) / det
  const hIm = (mIm * detRe - mRe * detIm) / det
  let first = 2 * c * readings
  let second = 2 * d * readings
  let volts = 0
  let amperes = 0
  let mostVolts = largest[0]!
  let mostAmperes = largest[1]!
  for (let t = 0; t < 2 * readings; t += 2) {
    const xRe = reached[first]!
    const xIm = reached[first + 1]!
    const yRe = reached[second]!
    const yIm = reached[second + 1]!
    const outRe = base[t]! + (xRe * gRe - xIm * gIm) + (yRe * hRe - yIm * hIm)
    const outIm = base[t + 1]! + (xRe * gIm + xIm * gRe) + (yRe * hIm + yIm * hRe)
    out[t] = outRe
    out[t + 1] = outIm
    first += 2
    second += 2
    const term = (Math.abs(xRe) + Math.abs(xIm)) * mostG + (Math.abs(yRe) + Math.abs(yIm)) * mostH
    const found = Math.abs(outRe) + Math.abs(outIm)
    if (sort[t >> 1] === 0) {
      if (term > volts) volts = term
      if (found > mostVolts) mostVolts = found
    } else {
      if (term > amperes) amperes = term
      if (found > mostAmperes) mostAmperes = found
    }
  }
  if (volts > MOST_CANCELLED * mostVolts || amperes > MOST_CANCELLED * mostAmperes) return false
  if (own[c]! >= 0 || own[d]! >= 0) {
    last[0] = gRe
    last[1] = gIm
    last[2] = hRe
    last[3] = hIm
    if (own[c]! >= 0) readOwn(tables, c, c, d, out)
    if (own[d]! >= 0) readOwn(tables, d, c, d, out)
  }
  return true
}

/** The current of the branch that change `k` alters, by its new law; `d` below 0 is no second change. */
function readOwn(tables: Tables, k: number, c: number, d: number, out: Float64Array): void {
  const { changes: n, own, ownLaw, ownFall, last } = tables
  const law = 6 * k
  const x = 2 * (k * n + c)
  const gRe = last[0]!
  const gIm = last[1]!
  let vRe = ownLaw[law + 4]! + ownFall[x]! * gRe - ownFall[x + 1]! * gIm
  let vIm = ownLaw[law + 5]! + ownFall[x]! * gIm + ownFall[x + 1]! * gRe
  if (d >= 0) {
    const y = 2 * (k * n + d)
    const hRe = last[2]!
    const hIm = last[3]!
    vRe += ownFall[y]! * hRe - ownFall[y + 1]! * hIm
    vIm += ownFall[y]! * hIm + ownFall[y + 1]! * hRe
  }
  const t = 2 * own[k]!
  out[t] = ownLaw[law]! * vRe - ownLaw[law + 1]! * vIm + ownLaw[law + 2]!
  out[t + 1] = ownLaw[law]! * vIm + ownLaw[law + 1]! * vRe + ownLaw[law + 3]!
}
