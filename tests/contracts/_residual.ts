import fc from 'fast-check'
import { apply, type System } from './_systems.ts'

/** Right sides whose rounding is relative: no value below 1e-9 in size but 1 instead. */
export function vectorOf(length: number): fc.Arbitrary<Float64Array> {
  return fc
    .float64Array({ min: -10, max: 10, noNaN: true, minLength: length, maxLength: length })
    .map((values) => {
      for (let k = 0; k < values.length; k++) if (Math.abs(values[k] ?? 0) < 1e-9) values[k] = 1
      return values
    })
}

/** Largest number of a vector in size. */
export function norm(x: Float64Array): number {
  return x.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
}

/** ‖A‖∞; the entries have no repetitions. */
export function rowNorm(system: System, complex: boolean): number {
  const rows = new Float64Array(system.order)
  for (let k = 0; k < system.rows.length; k++) {
    const row = system.rows[k] ?? 0
    rows[row] = (rows[row] ?? 0) + Math.hypot(system.re[k] ?? 0, complex ? (system.im[k] ?? 0) : 0)
  }
  return norm(rows)
}

/** ‖A x − b‖∞ / (‖A‖∞ ‖x‖∞ n ε) from the entries. */
export function ownResidual(system: System, x: Float64Array, b: Float64Array, complex: boolean): number {
  const rest = apply(system, x, complex).map((value, k) => value - (b[k] ?? 0))
  return (
    modulus(rest, complex) / (rowNorm(system, complex) * modulus(x, complex) * system.order * Number.EPSILON)
  )
}

function modulus(x: Float64Array, complex: boolean): number {
  if (!complex) return norm(x)
  let most = 0
  for (let k = 0; k < x.length; k += 2) most = Math.max(most, Math.hypot(x[k] ?? 0, x[k + 1] ?? 0))
  return most
}
