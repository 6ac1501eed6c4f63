import fc from 'fast-check'
import { formatExactly, formatNumber, formatPercent, formatQuantity } from 'ringproof/quantities/format'
import { readQuantity } from 'ringproof/quantities/quantity'
import { DIMENSIONS, type Dimension, type UnitName } from 'ringproof/quantities/units'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

describe('a formatted quantity', () => {
  it.each<[number, UnitName, number, string]>([
    [3300, 'Ω', 3, '3.30 kΩ'],
    [999.96, 'Ω', 4, '1.000 kΩ'],
    [999.94, 'Ω', 4, '999.9 Ω'],
    [0, 'Ω', 3, '0 Ω'],
    [-0, 'V', 3, '0 V'],
    [1.8e-6, 'F', 2, '1.8 µF'],
    [3.3e-13, 'F', 3, '0.330 pF'],
    [330, 'Ω', 2, '330 Ω'],
    [0.04, 'A', 3, '40.0 mA'],
    [-48.123, 'V', 3, '-48.1 V'],
    [4.7e11, 'Ω', 3, '470 GΩ'],
    [1e15, 'Ω', 3, '1.00e15 Ω'],
    [1e-20, 'A', 3, '1.00e-20 A'],
    [2000, 'm', 3, '2.00 km'],
    [0.0005, 'm', 2, '0.50 mm'],
    [0.00012, 'm', 2, '0.12 mm'],
    [0.13, 's', 3, '130 ms'],
    [2, 's', 2, '2.0 s'],
    [3600, 's', 2, '3600 s'],
    [20, '°C', 3, '20.0 °C'],
    [-12, 'dB', 3, '-12.0 dB'],
    [0.985, '1', 3, '0.985'],
    [Math.PI / 6, 'rad', 3, '30°'],
    [-Math.PI, 'rad', 4, '-180°'],
    [0.01, 'rad', 3, '0.573°'],
    [25, 'Hz', 3, '25.0 Hz'],
  ])('of %d %s to %d digits reads %s', (value, unit, digits, text) => {
    expect(formatQuantity(value, unit, digits)).toBe(text)
  })

  it('has three digits unless told otherwise', () => {
    expect(formatQuantity(1234, 'Ω')).toBe('1.23 kΩ')
  })

  it('is never NaN or Infinity', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => formatQuantity(value, 'Ω')).toThrow(TypeError)
      expect(() => formatQuantity(value, 'rad')).toThrow(TypeError)
      expect(() => formatNumber(value)).toThrow(TypeError)
      expect(() => formatPercent(value)).toThrow(TypeError)
      expect(() => formatExactly(value, 'm')).toThrow(TypeError)
    }
  })

  it('has 1 to 17 digits', () => {
    for (const digits of [0, 18, 2.5, Number.NaN])
      expect(() => formatQuantity(1, 'Ω', digits)).toThrow(RangeError)
  })

  it('reads back as the value rounded to its digits', () => {
    const dimensions = (Object.keys(DIMENSIONS) as Dimension[]).filter((dimension) => dimension !== 'angle')
    const value = fc.double({ min: 1e-15, max: 1e15, noNaN: true })
    fc.assert(
      fc.property(
        fc.constantFrom(...dimensions),
        value,
        fc.boolean(),
        fc.integer({ min: 1, max: 17 }),
        (dimension, size, negative, digits) => {
          const { unit, least, most } = DIMENSIONS[dimension]
          const x = negative ? -size : size
          const rounded = Number(x.toPrecision(digits))
          if (rounded < least || rounded > most) return
          const text = formatQuantity(x, unit, digits)
          expect(readQuantity(text, dimension), text).toMatchObject({
            ok: true,
            quantity: { value: rounded },
          })
        },
      ),
      { seed: SEED, numRuns: 3000 },
    )
  })

  it('of an angle reads back within half of its last digit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.integer({ min: 2, max: 12 }),
        (angle, digits) => {
          if (Math.abs(angle) < 1e-9) return
          const result = readQuantity(formatQuantity(angle, 'rad', digits), 'angle')
          const value = result.ok ? result.quantity.value : Number.NaN
          // half a unit of the last of `digits` digits is at most 0.5 · 10^(1 - digits) of the value
          expect(Math.abs(value - angle)).toBeLessThanOrEqual(
            0.5 * 10 ** (1 - digits) * Math.abs(angle) * (1 + 1e-3),
          )
        },
      ),
      { seed: SEED },
    )
  })

  it('keeps its number between 0.001 and 999 999 before the unit, else writes the power of ten', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-30, max: 1e30, noNaN: true }),
        fc.constantFrom<UnitName>('Ω', 'm', 's', 'dB'),
        (value, unit) => {
          const number = formatQuantity(value, unit, 3).split(' ')[0] ?? ''
          const size = Number(number)
          expect(number.includes('e') || (size >= 0.001 && size < 1e6), number).toBe(true)
        },
      ),
      { seed: SEED },
    )
  })
})

describe('an exactly formatted quantity', () => {
  it('has as few digits as give it back', () => {
    expect(formatExactly(1.8e-6, 'F')).toBe('1.8 µF')
    expect(formatExactly(1e6, 'Ω')).toBe('1 MΩ')
    expect(formatExactly(0.1 + 0.2, 'V')).toBe('300.00000000000004 mV')
    fc.assert(
      fc.property(fc.double({ min: 1e-15, max: 1e15, noNaN: true }), (value) => {
        expect(readQuantity(formatExactly(value, 'Ω'), 'resistance')).toMatchObject({ quantity: { value } })
      }),
      { seed: SEED, numRuns: 1000 },
    )
  })
})

describe('a formatted number', () => {
  it('has significant digits and no unit', () => {
    expect(formatNumber(0.98512)).toBe('0.985')
    expect(formatNumber(12345, 2)).toBe('12000')
    expect(formatNumber(1.2e7)).toBe('1.20e7')
    expect(formatNumber(-0)).toBe('0')
  })

  it('in percent is a hundred times the fraction, rounded once', () => {
    expect(formatPercent(0.63)).toBe('63.0 %')
    expect(formatPercent(0.05, 1)).toBe('5 %')
    // 0.285 · 100 is 28.499999999999996 in doubles: rounded twice
    expect(formatPercent(0.285, 17)).toBe('28.499999999999998 %')
    expect(formatPercent(0)).toBe('0 %')
    expect(formatPercent(1, 3)).toBe('100 %')
  })
})
