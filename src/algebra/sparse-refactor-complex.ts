/** As `sparse-refactor-real.ts`, every value interleaved, sizes as |re| + |im|. */
import { invertAt } from './sparse-inverse.ts'
import { subtractComplex } from './sparse-subtract.ts'
import { largestOfA, largestOfU, steepestAt } from './sparse-watch.ts'

/** Puts A into its places, the rest zero; finds the largest |A|. */
export function placeComplex(a: Float64Array, to: Int32Array, x: Float64Array, watch: Float64Array): void {
  x.fill(0)
  let largest = 0
  for (let t = 0; t < to.length; t++) {
    const from = t << 1
    const re = a[from]!
    const im = a[(from + 1) | 0]!
    const size = Math.abs(re) + Math.abs(im)
    if (!(size <= largest)) {
      largest = size
      if (Number.isNaN(size)) break
    }
    const place = to[t]!
    x[place] = re
    x[(place + 1) | 0] = im
  }
  watch[largestOfA] = largest
}

/** By the list of `operationsOf`. */
export function refactorComplex(
  x: Float64Array,
  list: Int32Array,
  n: number,
  floors: Float64Array,
  watch: Float64Array,
): boolean {
  const steepest = watch[steepestAt]!
  let largest = 0
  let place = 0
  let at = 0
  for (let k = 0; k < n; k++) {
    let most = 0
    let above = list[at]!
    for (at = (at + 1) | 0; above > 0; above--) {
      const ur = x[place]!
      const ui = x[(place + 1) | 0]!
      place = (place + 2) | 0
      const size = Math.abs(ur) + Math.abs(ui)
      if (size > most) most = size
      const from = list[at]!
      const count = list[(at + 1) | 0]!
      at = (at + 2) | 0
      // A(:,k) -= L(:,j) U(j,k)
      if (count > 0) {
        subtractComplex(x, list[at]!, x, from, ur, ui)
        if (count > 1) {
          subtractComplex(x, list[(at + 1) | 0]!, x, (from + 2) | 0, ur, ui)
          if (count > 2) {
            subtractComplex(x, list[(at + 2) | 0]!, x, (from + 4) | 0, ur, ui)
            if (count > 3) {
              subtractComplex(x, list[(at + 3) | 0]!, x, (from + 6) | 0, ur, ui)
              if (count > 4) {
                subtractComplex(x, list[(at + 4) | 0]!, x, (from + 8) | 0, ur, ui)
                if (count > 5) {
                  subtractComplex(x, list[(at + 5) | 0]!, x, (from + 10) | 0, ur, ui)
                  for (let c = 6; c < count; c = (c + 1) | 0)
                    subtractComplex(x, list[(at + c) | 0]!, x, (from + (c << 1)) | 0, ur, ui)
                }
              }
            }
          }
        }
      }
      at = (at + count) | 0
    }
    const pr = x[place]!
    const pi = x[(place + 1) | 0]!
    const size = Math.abs(pr) + Math.abs(pi)
    if (size > most) most = size
    if (!(size > floors[k]! * most)) return false
    if (most > largest) largest = most
    invertAt(x, place, pr, pi)
    const qr = x[place]!
    const qi = x[(place + 1) | 0]!
    place = (place + 2) | 0
    let under = 0
    const end = (place + (list[at]! << 1)) | 0
    for (at = (at + 1) | 0; place < end; place = (place + 2) | 0) {
      const next = (place + 1) | 0
      const ar = x[place]!
      const ai = x[next]!
      const lr = ar * qr - ai * qi // L(:,k) = A(:,k) / U(k,k)
      const li = ar * qi + ai * qr
      x[place] = lr
      x[next] = li
      const steep = Math.abs(lr) + Math.abs(li)
      if (steep > under) under = steep
    }
    if (!(under <= steepest)) return false
  }
  watch[largestOfU] = largest
  return true
}

/** By columns and a work vector `w` (2 n, zero on entry and again on exit), where a list would be too long. */
export function refactorByColumnsComplex(
  x: Float64Array,
  starts: Int32Array,
  diagonals: Int32Array,
  index: Int32Array,
  w: Float64Array,
  floors: Float64Array,
  watch: Float64Array,
): boolean {
  const steepest = watch[steepestAt]!
  let largest = 0
  for (let k = 0; k < diagonals.length; k++) {
    const start = starts[k]!
    const diagonal = diagonals[k]!
    const end = starts[k + 1]!
    for (let t = start; t < end; t++) {
      const i = 2 * index[t]!
      w[i] = x[2 * t]!
      w[i + 1] = x[2 * t + 1]!
    }
    let most = 0
    for (let t = start; t < diagonal; t++) {
      const j = index[t]!
      const ur = w[2 * j]!
      const ui = w[2 * j + 1]!
      w[2 * j] = 0
      w[2 * j + 1] = 0
      x[2 * t] = ur
      x[2 * t + 1] = ui
      const size = Math.abs(ur) + Math.abs(ui)
      if (size > most) most = size
      const last = starts[j + 1]!
      for (let s = diagonals[j]! + 1; s < last; s++) {
        const i = 2 * index[s]!
        const lr = x[2 * s]!
        const li = x[2 * s + 1]!
        w[i] = w[i]! - (lr * ur - li * ui) // w -= L(:,j) U(j,k)
        w[i + 1] = w[i + 1]! - (lr * ui + li * ur)
      }
    }
    const pr = w[2 * k]!
    const pi = w[2 * k + 1]!
    w[2 * k] = 0
    w[2 * k + 1] = 0
    const size = Math.abs(pr) + Math.abs(pi)
    if (size > most) most = size
    if (most > largest) largest = most
    invertAt(x, 2 * diagonal, pr, pi)
    const qr = x[2 * diagonal]!
    const qi = x[2 * diagonal + 1]!
    let under = 0
    for (let t = diagonal + 1; t < end; t++) {
      const i = 2 * index[t]!
      const wr = w[i]!
      const wi = w[i + 1]!
      w[i] = 0
      w[i + 1] = 0
      const lr = wr * qr - wi * qi // L(:,k) = w / U(k,k)
      const li = wr * qi + wi * qr
      x[2 * t] = lr
      x[2 * t + 1] = li
      const steep = Math.abs(lr) + Math.abs(li)
      if (steep > under) under = steep
    }
    if (!(size > floors[k]! * most && under <= steepest)) return false
  }
  watch[largestOfU] = largest
  return true
}
