import { type Complex, complex, modulus, subtract, type Value } from './complex.ts'

/** Two values are close when they differ by no more than `relative` of the expected one plus `absolute`. */
export interface Tolerance {
  readonly relative: number
  readonly absolute?: number
}

/** Says how far apart two values are, or null when they are close. What is no finite number is never close. */
export function farApart(actual: unknown, expected: Value, tolerance: Tolerance): string | null {
  if (!isValue(expected)) return `the expected value ${print(expected)} is no finite number`
  if (!isValue(actual)) return `found ${print(actual)} where ${print(expected)} was expected`
  const apart = modulus(subtract(complex(actual), complex(expected)))
  const size = modulus(complex(expected))
  const allowed = tolerance.relative * size + (tolerance.absolute ?? 0)
  if (apart <= allowed) return null
  const ratio = size > 0 ? ` (${(apart / size).toExponential(2)} of it)` : ''
  return `found ${print(actual)}, expected ${print(expected)}: apart by ${apart.toExponential(3)}${ratio}, allowed ${allowed.toExponential(3)}`
}

/** Throws with the name of the thing and the distance when two values are not close. */
export function assertClose(actual: unknown, expected: Value, tolerance: Tolerance, what: string): void {
  const complaint = farApart(actual, expected, tolerance)
  if (complaint !== null) throw new Error(`${what}: ${complaint}`)
}

function isValue(value: unknown): value is Value {
  if (typeof value === 'number') return Number.isFinite(value)
  if (typeof value !== 'object' || value === null) return false
  const { re, im } = value as Partial<Complex>
  return typeof re === 'number' && typeof im === 'number' && Number.isFinite(re) && Number.isFinite(im)
}

function print(value: unknown): string {
  if (typeof value === 'number' || typeof value !== 'object' || value === null) return String(value)
  const { re, im } = value as Partial<Complex>
  if (typeof re !== 'number' || typeof im !== 'number') return JSON.stringify(value)
  return im < 0 || Object.is(im, -0) ? `${re} - j${-im}` : `${re} + j${im}`
}
