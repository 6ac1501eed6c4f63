import fc from 'fast-check'
import { longestQuantity, readQuantity } from 'ringproof/quantities/quantity'
import { DIMENSIONS, type Dimension } from 'ringproof/quantities/units'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'
import { decimalRational, isNearestDouble } from './_nearest.ts'

function valueIn(text: string, dimension: Dimension): number {
  const result = readQuantity(text, dimension)
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.fault)}`)
  return result.quantity.value
}

describe('the value', () => {
  const digits = fc.bigInt({ min: 1n, max: 10n ** 19n })
  const places = fc.integer({ min: 0, max: 12 })

  it('is the double nearest to what is written, whatever the prefix', () => {
    const prefixes = fc.constantFrom(
      ['p', -12],
      ['n', -9],
      ['µ', -6],
      ['m', -3],
      ['', 0],
      ['k', 3],
      ['M', 6],
      ['G', 9],
    ) as fc.Arbitrary<[string, number]>
    fc.assert(
      fc.property(digits, places, prefixes, (figures, point, [prefix, exponent]) => {
        const padded = figures.toString().padStart(point + 1, '0')
        const text = `${padded.slice(0, padded.length - point)}${point === 0 ? '' : `.${padded.slice(-point)}`} ${prefix}S`
        const result = readQuantity(text, 'conductance')
        if (!result.ok) {
          expect(result.fault.code).toBe('quantity-out-of-range')
          return
        }
        expect(isNearestDouble(result.quantity.value, decimalRational(figures, exponent - point)), text).toBe(
          true,
        )
      }),
      { seed: SEED, numRuns: 2000 },
    )
  })

  it('is not what a multiplication by the prefix would give', () => {
    // 0.3 · 1e-6 and 4.1 · 1e-3 round twice and miss
    expect(4.1 * 1e-3).not.toBe(0.0041)
    expect(valueIn('4.1 mA', 'current')).toBe(0.0041)
    expect(valueIn('0.3 µF', 'capacitance')).toBe(3e-7)
  })

  it('of an angle in degrees is the nearest double too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 360_000 }), (thousandths) => {
        const value = valueIn(`${thousandths / 1000}°`, 'angle')
        // π to 60 digits (from memory), so the comparison is exact for doubles
        const pi = 3141592653589793238462643383279502884197169399375105820974944n
        const exact = { over: BigInt(thousandths) * pi, under: 180_000n * 10n ** 60n }
        expect(isNearestDouble(value, exact)).toBe(true)
      }),
      { seed: SEED, numRuns: 1000 },
    )
    expect(valueIn('180°', 'angle')).toBe(Math.PI)
    expect(valueIn('-90 deg', 'angle')).toBe(-Math.PI / 2)
    expect(valueIn('0°', 'angle')).toBe(0)
  })

  it('is never a negative zero', () => {
    expect(Object.is(valueIn('-0 V', 'voltage'), 0)).toBe(true)
    expect(Object.is(valueIn('-0°', 'angle'), 0)).toBe(true)
  })
})

describe('hostile text', () => {
  const fragment = fc.constantFrom(
    ...[
      '1',
      '3.3',
      '-',
      '+',
      '±',
      'k',
      'K',
      'M',
      'm',
      'Ω',
      'ohm',
      'R',
      'e',
      'E9',
      '%',
      ' ',
      '\u00a0',
      '.',
      ',',
      '°',
      'at',
      'to',
    ],
    ...[
      'NaN',
      'inf',
      '∞',
      '__proto__',
      'constructor',
      'toString',
      '\u0000',
      '\ud800',
      '\u202e',
      '𝟛',
      '１',
      'e99999',
      'µ',
      'F',
      '\n',
    ],
  )
  const soup = fc.array(fragment, { maxLength: 12 }).map((parts) => parts.join(''))
  const text = fc.oneof(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'binary' }), soup)
  const dimension = fc.constantFrom(...(Object.keys(DIMENSIONS) as Dimension[]))

  it('is a finite value or a complete refusal, and never throws', () => {
    fc.assert(
      fc.property(text, dimension, (written, wanted) => {
        const result = readQuantity(written, wanted)
        if (result.ok) {
          expect(Number.isFinite(result.quantity.value)).toBe(true)
          expect(result.quantity.tolerance ?? 0).toBeGreaterThanOrEqual(0)
          return
        }
        const { code, found, expected, at, mend } = result.fault
        expect(['unit-missing', 'unit-wrong', 'quantity-unreadable', 'quantity-out-of-range']).toContain(code)
        expect(found).not.toMatch(/[\p{Cc}\p{Cs}\u202e]/u)
        expect(found.length).toBeLessThan(80)
        expect(expected).not.toMatch(/NaN|Infinity|undefined/)
        expect(mend ?? 'x').not.toBe('')
        expect(at ?? 0).toBeLessThanOrEqual(Math.max(written.length, longestQuantity))
      }),
      { seed: SEED, numRuns: 5000 },
    )
  })

  it('gets a mend that reads, where the mend quotes one quantity', () => {
    fc.assert(
      fc.property(soup, dimension, (written, wanted) => {
        const result = readQuantity(written, wanted)
        const mend = result.ok ? undefined : /^write `([^`]+)`$/.exec(result.fault.mend ?? '')?.[1]
        if (mend === undefined || mend.startsWith('±')) return
        const again = readQuantity(mend, wanted)
        // a comma may not be the only trouble of a text
        if (!again.ok) expect(written).toContain(',')
      }),
      { seed: SEED, numRuns: 5000 },
    )
  })
})
