/**
 * One row of the small matrix M of an update: the new law of a branch, or its difference from the old one, applied to
 * the columns X = A⁻¹u (see `small-update.ts` for the formula).
 */
import type { LawTable } from '../../laws.ts'
import { addFall, addTimes, type Placed, sizeAt } from './placed.ts'

/** What a row is of. */
export type RowForm = 'equation' | 'admittance' | 'link'

export class Row {
  readonly form: RowForm
  /** Branch of the netlist; −1 for links and gauges. */
  readonly branch: number
  /** Its column among those of the network. */
  readonly column: number
  /** Positions of its ends, and of its current where it is an equation. */
  readonly p: number
  readonly q: number
  readonly i: number
  /** The new law: a, z or y, e or s; ohms of a link are its z. */
  a = 0
  re = 0
  im = 0
  eRe = 0
  eIm = 0
  /** The old law. */
  readonly #old = { a: 0, re: 0, im: 0, eRe: 0, eIm: 0 }
  /** The new less the old. */
  da = 0
  dRe = 0
  dIm = 0
  deRe = 0
  deIm = 0
  /** Positions of the currents that induce something in it, with the new terms and the new less the old. */
  others: Int32Array = NONE
  mutual: Float64Array = EMPTY
  dMutual: Float64Array = EMPTY
  /** Whether the old law holds currents of other branches. */
  isCoupled = false
  joinsBefore = false
  joinsAfter = false
  /** The entry in its own column, as value and tail, and what it was made of. */
  readonly diagonal: Float64Array = new Float64Array(4)
  size = 0

  constructor(form: RowForm, branch: number, column: number, p: number, q: number, i: number) {
    this.form = form
    this.branch = branch
    this.column = column
    this.p = p
    this.q = q
    this.i = i
  }

  /** Whether the new law is exactly the old one. */
  get isSame(): boolean {
    if (this.da !== 0 || this.dRe !== 0 || this.dIm !== 0 || this.deRe !== 0 || this.deIm !== 0) return false
    return this.dMutual.every((x) => x === 0)
  }

  /** Whether its new law is a short or a voltage source without any resistance. */
  get isIdeal(): boolean {
    if (this.form === 'admittance' || this.re !== 0 || this.im !== 0) return false
    return this.form === 'link' || (this.a !== 0 && this.mutual.every((x) => x === 0))
  }

  /** Takes the law of branch `k` of `after` in place of that of `branch` in `before`. */
  take(before: LawTable, after: LawTable, k: number, positionOf: (branch: number) => number): void {
    const old = this.branch
    this.a = after.a[k]!
    this.re = after.slope[2 * k]!
    this.im = after.slope[2 * k + 1]!
    this.eRe = after.offset[2 * k]!
    this.eIm = after.offset[2 * k + 1]!
    const was = this.#old
    was.a = before.a[old]!
    was.re = before.slope[2 * old]!
    was.im = before.slope[2 * old + 1]!
    was.eRe = before.offset[2 * old]!
    was.eIm = before.offset[2 * old + 1]!
    this.#differ()
    if (this.isCoupled || after.mutuals.length > 0) this.#takeMutuals(before, after, k, positionOf)
  }

  #differ(): void {
    const was = this.#old
    this.da = this.a - was.a
    this.dRe = this.re - was.re
    this.dIm = this.im - was.im
    this.deRe = this.eRe - was.eRe
    this.deIm = this.eIm - was.eIm
  }

  /** Puts so many siemens beside the branch, and as many ohms within it, on the way to an answer; see `newton.ts`. */
  help(beside: number): void {
    const z = this.re + (this.a === 0 ? 0 : beside)
    const scale = this.a + z * beside
    this.a = 1
    this.re = z / scale
    this.eRe /= scale
    this.joinsAfter = true
    this.#differ()
  }

  #takeMutuals(before: LawTable, after: LawTable, k: number, positionOf: (branch: number) => number): void {
    const shift = this.branch - k
    const terms = new Map<number, [number, number, number, number]>()
    const at = (other: number): [number, number, number, number] => {
      const known = terms.get(other) ?? [0, 0, 0, 0]
      terms.set(other, known)
      return known
    }
    for (const { branch, other, re, im } of before.mutuals) {
      if (branch !== this.branch) continue
      const one = at(other)
      one[2] -= re
      one[3] -= im
    }
    for (const { branch, other, re, im } of after.mutuals) {
      if (branch !== k) continue
      const one = at(other + shift)
      one[0] += re
      one[1] += im
      one[2] += re
      one[3] += im
    }
    const all = [...terms]
    this.others = Int32Array.from(all, ([other]) => positionOf(other))
    this.mutual = Float64Array.from(all.flatMap(([, [re, im]]) => [re, im]))
    this.dMutual = Float64Array.from(all.flatMap(([, [, , re, im]]) => [re, im]))
  }

  /** The same without tails, for laws that are stated anew at every step. */
  measurePlain(x: Placed): void {
    const { value, tail } = x
    const { diagonal, p, q, i } = this
    const iRe = value[2 * i]!
    const iIm = value[2 * i + 1]!
    let re = this.im * iIm - this.re * iRe
    let im = -this.re * iIm - this.im * iRe
    if (this.a !== 0) {
      re += this.a * (value[2 * p]! - value[2 * q]! + (tail[2 * p]! - tail[2 * q]!))
      im += this.a * (value[2 * p + 1]! - value[2 * q + 1]! + (tail[2 * p + 1]! - tail[2 * q + 1]!))
    }
    diagonal[0] = re
    diagonal[1] = im
    this.size =
      Math.abs(this.a) * (sizeAt(x, p) + sizeAt(x, q)) +
      (Math.abs(this.re) + Math.abs(this.im)) * sizeAt(x, i)
  }

  /** Its entry in its own column X, once for all variants. */
  measure(x: Placed): void {
    const { diagonal } = this
    diagonal.fill(0)
    const fall = sizeAt(x, this.p) + sizeAt(x, this.q)
    if (this.form === 'equation') {
      addLaw(this, x, 1, this.a, this.re, this.im, this.mutual, diagonal)
      this.size = Math.abs(this.a) * fall + (Math.abs(this.re) + Math.abs(this.im)) * sizeAt(x, this.i)
      return
    }
    if (this.form === 'link') {
      diagonal[0] = this.re
      addFall(x, this.p, this.q, 1, 0, diagonal)
      this.size = this.re + fall
      return
    }
    diagonal[0] = 1
    addFall(x, this.p, this.q, this.dRe, this.dIm, diagonal)
    this.size = 1 + (Math.abs(this.dRe) + Math.abs(this.dIm)) * fall
  }
}

const NONE = new Int32Array(0)
const EMPTY = new Float64Array(0)

/** out += sign·(a·v − z·i − Σ m·i(other)). */
export function addLaw(
  row: Row,
  x: Placed,
  sign: number,
  a: number,
  zRe: number,
  zIm: number,
  mutual: Float64Array,
  out: Float64Array,
): void {
  if (a !== 0) addFall(x, row.p, row.q, sign * a, 0, out)
  addTimes(x, row.i, -sign * zRe, -sign * zIm, out)
  for (let m = 0; m < row.others.length; m += 1)
    addTimes(x, row.others[m]!, -sign * mutual[2 * m]!, -sign * mutual[2 * m + 1]!, out)
}
