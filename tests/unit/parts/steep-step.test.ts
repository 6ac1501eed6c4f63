import { growth, oddPower } from 'ringproof/parts/power-law'
import { steepStep } from 'ringproof/parts/steep-step'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'

const square = { inverse: Math.sqrt, knee: 1 }

describe('a step along a steep law', () => {
  test('is believed up to the knee, and on the way down', () => {
    expect(steepStep(square, 0, 0.9, 0, true)).toBe(0.9)
    expect(steepStep(square, 5, 4, 16, true)).toBe(4)
    expect(steepStep(square, 5, -0.5, 0, true)).toBe(-0.5)
  })

  test('goes up no further than the law has at what the tangent carries', () => {
    expect(steepStep(square, 2, 10, 36, true)).toBe(6)
    expect(steepStep(square, -2, -10, -36, true)).toBe(-6)
    expect(steepStep(square, 2, 5, 36, true)).toBe(5)
  })

  test('goes to the knee from a level start, and across zero to the knee of the other side', () => {
    expect(steepStep(square, 0, 10, 0, true)).toBe(1)
    expect(steepStep(square, 9, -10, -0.01, true)).toBe(-1)
  })

  test('is believed all the way below zero where only one side is steep', () => {
    expect(steepStep(square, 9, -10, -0.01, false)).toBe(-10)
  })

  test('leaves alone what differs by less than a millionth', () => {
    expect(steepStep(square, 3, 3.000001, 9, true)).toBe(3.000001)
  })
})

describe('powers that never overflow', () => {
  test('are odd, and their slope is α x^(α−1)', () => {
    expect(oddPower(3, 2)).toEqual({ value: 9, slope: 6 })
    expect(oddPower(-3, 2)).toEqual({ value: -9, slope: 6 })
    expect(oddPower(0, 1)).toEqual({ value: 0, slope: 1 })
    expect(oddPower(0, 2)).toEqual({ value: 0, slope: 0 })
  })

  test('go on along their tangent beyond e²⁰⁰', () => {
    for (const side of [1, -1]) {
      const edge = oddPower(side * Math.exp(200 / 60) * (1 - 1e-12), 60)
      const beyond = oddPower(side * Math.exp(200 / 60) * (1 + 1e-12), 60)
      assertClose(beyond.value, edge.value, { relative: 1e-9 }, 'value')
      assertClose(beyond.slope, edge.slope, { relative: 1e-9 }, 'slope')
      expect(Number.isFinite(oddPower(side * 1e200, 60).value)).toBe(true)
    }
    assertClose(growth(200 + 1e-9).value, growth(200 - 1e-9).value, { relative: 1e-8 }, 'growth')
    expect(Number.isFinite(growth(1e200).value)).toBe(true)
    expect(growth(-1e300)).toEqual({ value: -1, slope: 0 })
  })
})
