import { rampOf, TRAPEZOID_HARMONICS, trapezoidHarmonic, waveAt } from 'ringproof/parts/ringing-wave'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'

const CRESTS = [1, 1.05, 1.25, Math.SQRT2, 1.6, Math.sqrt(3)]

/** The trapezoid of 1 V rms at angle t of its period, from its definition: straight ramps, flat peaks. */
function trapezoid(crest: number, t: number): number {
  const ramp = rampOf(crest)
  const turn = ((t % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  const inHalf = turn % Math.PI
  const fromEdge = Math.min(inHalf, Math.PI - inHalf)
  const height = fromEdge >= ramp ? 1 : fromEdge / ramp
  return (turn < Math.PI ? 1 : -1) * crest * height
}

/** Mean over a period by the midpoint rule on 200,000 points. */
function mean(f: (t: number) => number): number {
  const n = 200_000
  let sum = 0
  for (let k = 0; k < n; k += 1) sum += f(((k + 0.5) * 2 * Math.PI) / n)
  return sum / n
}

describe('the trapezoid of a ringing generator', () => {
  test.each(CRESTS)('of crest factor %f has the rms value and peak that it is told by', (crest) => {
    assertClose(
      mean((t) => trapezoid(crest, t) ** 2),
      1,
      { relative: 1e-5 },
      'mean square',
    )
    assertClose(trapezoid(crest, Math.PI / 2), crest, { relative: 1e-12 }, 'peak')
  })

  test.each(CRESTS)('of crest factor %f has the Fourier coefficients of its integral', (crest) => {
    for (let h = 1; h <= 15; h += 1) {
      const sine = Math.SQRT2 * mean((t) => trapezoid(crest, t) * Math.sin(h * t))
      const cosine = Math.SQRT2 * mean((t) => trapezoid(crest, t) * Math.cos(h * t))
      assertClose(trapezoidHarmonic(crest, h), sine, { relative: 0, absolute: 2e-5 }, `harmonic ${h}`)
      assertClose(cosine, 0, { relative: 0, absolute: 2e-5 }, `cosine ${h}`)
    }
  })

  test.each(CRESTS)('of crest factor %f has all its power in its harmonics (Parseval)', (crest) => {
    let power = 0
    for (let h = 1; h < 20_000; h += 1) power += trapezoidHarmonic(crest, h) ** 2
    assertClose(power, 1, { relative: 3e-5 }, 'power')
  })

  test('is a square wave at 1 and a triangle at √3, closed forms', () => {
    for (const h of [1, 3, 5, 7]) {
      assertClose(trapezoidHarmonic(1, h), (4 / Math.PI / h) * Math.SQRT1_2, { relative: 1e-14 }, 'square')
      const sign = h % 4 === 1 ? 1 : -1
      const triangle = (sign * 8 * Math.sqrt(3)) / (Math.PI * h) ** 2 / Math.SQRT2
      assertClose(trapezoidHarmonic(Math.sqrt(3), h), triangle, { relative: 1e-12 }, 'triangle')
    }
    // the bound of the sheet lies a hair above √3
    expect(rampOf(1.7321)).toBe(Math.PI / 2)
  })

  test('loses by the harmonics that are left out what is said of it', () => {
    const left = (crest: number) =>
      1 - Math.sqrt(TRAPEZOID_HARMONICS.reduce((sum, h) => sum + trapezoidHarmonic(crest, h) ** 2, 0))
    expect(left(1)).toBeGreaterThan(0.012)
    expect(left(1)).toBeLessThan(0.013)
    expect(left(1.25)).toBeLessThan(0.0003)
    expect(left(Math.sqrt(3))).toBeLessThan(0.0001)
  })
})

describe('the EMF of a generator', () => {
  const at = (frequency: number, crest?: number) =>
    waveAt({ frequency: 25, ...(crest === undefined ? {} : { crest }) }, 2 * Math.PI * frequency)

  test('as a sine stands at its frequency alone', () => {
    expect([0, 12.5, 25, 50, 75, 25.001].map((f) => at(f))).toEqual([0, 0, 1, 0, 0, 0])
  })

  test('as a trapezoid stands at odd multiples of its frequency', () => {
    for (const h of [1, 3, 5, 15]) expect(at(25 * h, 1.25)).toBe(trapezoidHarmonic(1.25, h))
    expect([0, 50, 100, 26, 74.9].map((f) => at(f, 1.25))).toEqual([0, 0, 0, 0, 0])
  })

  test('is found at any ringing frequency, however it rounds', () => {
    for (const frequency of [15.3, 16.666666666666668, 20, 25, 33.3, 50, 66.7]) {
      for (const h of [1, 3, 7, 15]) {
        expect(waveAt({ frequency, crest: 1.25 }, 2 * Math.PI * (h * frequency))).not.toBe(0)
      }
    }
  })
})
