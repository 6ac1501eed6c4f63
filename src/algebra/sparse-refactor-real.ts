/**
 * Real kernels that factor anew with known pivots: `x` holds the values of the factors, A already in their places.
 * Both return `false` where the pivots no longer serve: one is below the share
 * `floors[k]` of the largest in its column of U, or too small beside the entries under it (see `sparse-watch.ts`).
 */

import { subtractReal } from './sparse-subtract.ts'
import { largestOfA, largestOfU, steepestAt } from './sparse-watch.ts'

/** Puts A into its places, the rest zero; finds the largest |A|. */
export function placeReal(a: Float64Array, to: Int32Array, x: Float64Array, watch: Float64Array): void {
  x.fill(0)
  let largest = 0
  for (let t = 0; t < to.length; t++) {
    const value = a[t]!
    const size = Math.abs(value)
    if (!(size <= largest)) {
      largest = size
      if (Number.isNaN(size)) break
    }
    x[to[t]!] = value
  }
  watch[largestOfA] = largest
}

/** By the list of `operationsOf`. */
export function refactorReal(
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
      const u = x[place]!
      place = (place + 1) | 0
      const size = Math.abs(u)
      if (size > most) most = size
      const from = list[at]!
      const count = list[(at + 1) | 0]!
      at = (at + 2) | 0
      // A(:,k) -= L(:,j) U(j,k)
      if (count > 0) {
        subtractReal(x, list[at]!, x, from, u)
        if (count > 1) {
          subtractReal(x, list[(at + 1) | 0]!, x, (from + 1) | 0, u)
          if (count > 2) {
            subtractReal(x, list[(at + 2) | 0]!, x, (from + 2) | 0, u)
            if (count > 3) {
              subtractReal(x, list[(at + 3) | 0]!, x, (from + 3) | 0, u)
              if (count > 4) {
                subtractReal(x, list[(at + 4) | 0]!, x, (from + 4) | 0, u)
                if (count > 5) {
                  subtractReal(x, list[(at + 5) | 0]!, x, (from + 5) | 0, u)
                  for (let c = 6; c < count; c = (c + 1) | 0)
                    subtractReal(x, list[(at + c) | 0]!, x, (from + c) | 0, u)
                }
              }
            }
          }
        }
      }
      at = (at + count) | 0
    }
    const pivot = x[place]!
    const size = Math.abs(pivot)
    if (size > most) most = size
    if (!(size > floors[k]! * most)) return false
    if (most > largest) largest = most
    const inverse = 1 / pivot
    x[place] = inverse
    place = (place + 1) | 0
    let under = 0
    const end = (place + list[at]!) | 0
    for (at = (at + 1) | 0; place < end; place = (place + 1) | 0) {
      const l = x[place]! * inverse // L(:,k) = A(:,k) / U(k,k)
      x[place] = l
      const steep = Math.abs(l)
      if (steep > under) under = steep
    }
    if (!(under <= steepest)) return false
  }
  watch[largestOfU] = largest
  return true
}

/** By columns and a work vector `w` (n, zero on entry and again on exit), where a list would be too long. */
export function refactorByColumnsReal(
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
    for (let t = start; t < end; t++) w[index[t]!] = x[t]!
    let most = 0
    for (let t = start; t < diagonal; t++) {
      const j = index[t]!
      const u = w[j]!
      w[j] = 0
      x[t] = u
      const size = Math.abs(u)
      if (size > most) most = size
      const last = starts[j + 1]!
      for (let s = diagonals[j]! + 1; s < last; s++) {
        const i = index[s]!
        w[i] = w[i]! - x[s]! * u // w -= L(:,j) U(j,k)
      }
    }
    const pivot = w[k]!
    w[k] = 0
    const size = Math.abs(pivot)
    if (size > most) most = size
    if (most > largest) largest = most
    const inverse = 1 / pivot
    x[diagonal] = inverse
    let under = 0
    for (let t = diagonal + 1; t < end; t++) {
      const i = index[t]!
      const l = w[i]! * inverse // L(:,k) = w / U(k,k)
      w[i] = 0
      x[t] = l
      const steep = Math.abs(l)
      if (steep > under) under = steep
    }
    if (!(size > floors[k]! * most && under <= steepest)) return false
  }
  watch[largestOfU] = largest
  return true
}
