/** Exact rational numbers and linear systems of them: the oracle for what is computed in many digits. */

/** numerator / denominator, the denominator above 0, no common factor. */
export interface Fraction {
  readonly numerator: bigint
  readonly denominator: bigint
}

export const NIL: Fraction = { numerator: 0n, denominator: 1n }
export const ONE: Fraction = { numerator: 1n, denominator: 1n }

function gcd(p: bigint, q: bigint): bigint {
  let [a, b] = [p < 0n ? -p : p, q]
  while (b !== 0n) [a, b] = [b, a % b]
  return a
}

/** p/q in lowest terms; throws when q is 0. */
export function fraction(p: bigint, q: bigint = 1n): Fraction {
  if (q === 0n) throw new RangeError('a fraction over nothing')
  const [numerator, denominator] = q < 0n ? [-p, -q] : [p, q]
  const common = gcd(numerator, denominator)
  return common <= 1n
    ? { numerator, denominator }
    : { numerator: numerator / common, denominator: denominator / common }
}

/** A decimal text such as `-1.8e-6`, exactly. */
export function decimal(text: string): Fraction {
  const found = /^([+-]?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/.exec(text)
  if (found === null) throw new SyntaxError(`${text} is no decimal`)
  const [, sign, whole = '', rest = '', power = '0'] = found
  const digits = BigInt(whole + rest) * (sign === '-' ? -1n : 1n)
  const exponent = Number(power) - rest.length
  return exponent >= 0
    ? fraction(digits * 10n ** BigInt(exponent))
    : fraction(digits, 10n ** BigInt(-exponent))
}

export const add = (p: Fraction, q: Fraction): Fraction =>
  fraction(p.numerator * q.denominator + q.numerator * p.denominator, p.denominator * q.denominator)
export const negative = ({ numerator, denominator }: Fraction): Fraction => ({
  numerator: -numerator,
  denominator,
})
export const subtract = (p: Fraction, q: Fraction): Fraction => add(p, negative(q))
export const multiply = (p: Fraction, q: Fraction): Fraction =>
  fraction(p.numerator * q.numerator, p.denominator * q.denominator)
export const divide = (p: Fraction, q: Fraction): Fraction =>
  fraction(p.numerator * q.denominator, p.denominator * q.numerator)
export const isNil = ({ numerator }: Fraction): boolean => numerator === 0n

/** The nearest double, near enough for messages and sizes. */
export function toNumber({ numerator, denominator }: Fraction): number {
  const scaled = (numerator * 10n ** 40n) / denominator
  return Number(scaled) / 1e40
}

/** Solves rows of coefficients, each with its right side last, by Gauss and Jordan; throws when they are singular. */
export function solveExactly(rows: readonly (readonly Fraction[])[]): Fraction[] {
  const a = rows.map((row) => [...row])
  const n = a.length
  for (let column = 0; column < n; column++) {
    const at = a.findIndex((row, k) => k >= column && !isNil(row[column] ?? NIL))
    const pivotRow = a[at]
    if (pivotRow === undefined) throw new RangeError('singular')
    a[at] = a[column] ?? []
    const pivot = pivotRow[column] ?? NIL
    const scaled = pivotRow.map((value) => divide(value, pivot))
    a[column] = scaled
    a.forEach((row, k) => {
      const head = row[column] ?? NIL
      if (k === column || isNil(head)) return
      a[k] = row.map((value, c) =>
        isNil(scaled[c] ?? NIL) ? value : subtract(value, multiply(head, scaled[c] ?? NIL)),
      )
    })
  }
  return a.map((row) => row[n] ?? NIL)
}
