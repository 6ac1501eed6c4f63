/** An exact fraction of integers; the denominator is positive. */
interface Rational {
  readonly over: bigint
  readonly under: bigint
}

/** sign · digits · 10^exponent, exactly. */
export function decimalRational(digits: bigint, exponent: number): Rational {
  return exponent >= 0
    ? { over: digits * 10n ** BigInt(exponent), under: 1n }
    : { over: digits, under: 10n ** BigInt(-exponent) }
}

const view = new DataView(new ArrayBuffer(8))

/** The exact value of a finite double, from its bits. */
export function doubleRational(value: number): Rational {
  view.setFloat64(0, value)
  const bits = view.getBigUint64(0)
  const power = Number((bits >> 52n) & 0x7ffn)
  const fraction = bits & 0xfffffffffffffn
  const size = power === 0 ? fraction : fraction | 0x10000000000000n
  const shift = (power === 0 ? 1 : power) - 1075
  const signed = value < 0 ? -size : size
  return shift >= 0
    ? { over: signed << BigInt(shift), under: 1n }
    : { over: signed, under: 1n << BigInt(-shift) }
}

/** The next double away from zero (`step` 1) or towards it (-1). */
export function neighbour(value: number, step: 1 | -1): number {
  view.setFloat64(0, value)
  view.setBigUint64(0, view.getBigUint64(0) + BigInt(step))
  return view.getFloat64(0)
}

function distance(a: Rational, b: Rational): Rational {
  const over = a.over * b.under - b.over * a.under
  return { over: over < 0n ? -over : over, under: a.under * b.under }
}

/** Whether no other double is nearer to the exact value; `value` is not zero. */
export function isNearestDouble(value: number, exact: Rational): boolean {
  const own = distance(doubleRational(value), exact)
  return ([1, -1] as const).every((step) => {
    const other = distance(doubleRational(neighbour(value, step)), exact)
    return own.over * other.under <= other.over * own.under
  })
}
