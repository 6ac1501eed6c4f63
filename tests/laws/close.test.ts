import { describe, expect, test } from 'vitest'
import { assertClose, farApart } from '../support/close.ts'

describe('closeness of two values', () => {
  const loose = { relative: 1e-3 }

  test('equal values are close under any tolerance', () => {
    expect(farApart(12, 12, { relative: 0 })).toBeNull()
    expect(farApart({ re: 1, im: -2 }, { re: 1, im: -2 }, { relative: 0 })).toBeNull()
  })

  test('the relative tolerance is measured by the expected value', () => {
    expect(farApart(1000.9, 1000, loose)).toBeNull()
    expect(farApart(1001.1, 1000, loose)).not.toBeNull()
    expect(farApart(-1000.9, -1000, loose)).toBeNull()
  })

  test('the absolute tolerance is added to the relative one', () => {
    expect(farApart(1e-6, 0, loose)).not.toBeNull()
    expect(farApart(1e-6, 0, { ...loose, absolute: 2e-6 })).toBeNull()
    expect(farApart(1001.5, 1000, { ...loose, absolute: 0.6 })).toBeNull()
  })

  test('complex values are measured by the modulus of their difference', () => {
    expect(farApart({ re: 3, im: 4.004 }, { re: 3, im: 4 }, loose)).toBeNull()
    expect(farApart({ re: 3, im: 4.006 }, { re: 3, im: 4 }, loose)).not.toBeNull()
    expect(farApart({ re: 3, im: -4 }, { re: 3, im: 4 }, loose)).not.toBeNull()
  })

  test('a plain number and a phasor without imaginary part are the same value', () => {
    expect(farApart({ re: 5, im: 0 }, 5, loose)).toBeNull()
    expect(farApart(5, { re: 5, im: 1 }, loose)).not.toBeNull()
  })

  test.each([
    [null],
    [undefined],
    [Number.NaN],
    [Number.POSITIVE_INFINITY],
    ['5'],
    [{}],
    [{ re: 5, im: Number.NaN }],
  ])('what is no finite number is never close: %s', (value) => {
    expect(farApart(value, 5, { relative: 1e9, absolute: 1e9 })).not.toBeNull()
  })

  test('an expected value that is no finite number is never close to anything', () => {
    expect(farApart(5, Number.NaN, loose)).toMatch('no finite number')
  })

  test('the message says what was found, what was expected and how far they are apart', () => {
    expect(() => assertClose(1010, 1000, loose, 'V(n1)')).toThrow(
      'V(n1): found 1010, expected 1000: apart by 1.000e+1 (1.00e-2 of it), allowed 1.000e+0',
    )
    expect(() => assertClose({ re: 1, im: -1 }, { re: 1, im: 1 }, loose, 'I')).toThrow(
      'found 1 - j1, expected 1 + j1',
    )
    expect(() => assertClose(1000, 1000, loose, 'V(n1)')).not.toThrow()
  })
})
