import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { capacitor, drive, inductor, solved } from './_circuit.ts'

/** The reactance that 1 A meets; a network without losses has no real part. */
const reactance = (parts: readonly string[], omega: number): number => {
  const { re, im } = solved([drive('j', 'p'), ...parts], omega / (2 * Math.PI)).voltage('p')
  assertClose(re, 0, { relative: 0, absolute: 1e-12 * (1 + Math.abs(im)) }, `resistance at ${omega}`)
  return im
}

/** 1 H in series with 1 H beside 1 F. */
const ONE_TRAP = [
  inductor('l0', 'p', 'a', 1),
  inductor('l1', 'a', 'earth', 1),
  capacitor('c1', 'a', 'earth', 1),
]
/** The same with a second trap of 1 H beside 1/9 F and 1/2 F in series: poles at 0, 1, 3 and ∞. */
const TWO_TRAPS = [
  inductor('l0', 'p', 'a', 1),
  inductor('l1', 'a', 'b', 1),
  capacitor('c1', 'a', 'b', 1),
  inductor('l2', 'b', 'd', 1),
  capacitor('c2', 'b', 'd', 1 / 9),
  capacitor('c0', 'd', 'earth', 0.5),
]
const twoTraps = (w: number): number => w - 2 / w + w / (1 - w * w) + w / (1 - (w * w) / 9)
const MANY = Array.from({ length: 120 }, (_, k) => 0.05 * 1.05 ** k) // 0.05 … 16.6 rad/s

// Foster's reactance theorem; grade DERIVED.
describe('a reactance of coils and capacitors', () => {
  test('of 1 H in series with 1 H beside 1 F is w + w/(1 − w²)', () => {
    for (const w of MANY) {
      const near = 1e-12 * (1 + 1 / Math.abs(1 - w * w))
      assertClose(reactance(ONE_TRAP, w), w + w / (1 - w * w), { relative: near, absolute: near }, `w = ${w}`)
    }
  })

  test('is zero at √2, and changes its sign there and through the pole at 1', () => {
    assertClose(reactance(ONE_TRAP, Math.SQRT2), 0, { relative: 0, absolute: 1e-13 }, '√2')
    for (const w of MANY) {
      const sign = Math.sign(reactance(ONE_TRAP, w))
      expect(sign, `w = ${w}`).toBe(w < 1 || w > Math.SQRT2 ? 1 : -1)
    }
  })

  test('with two traps and a capacitor is the sum of its partial fractions', () => {
    for (const w of MANY) {
      const near = 1e-12 * (1 + 1 / Math.abs(1 - w * w) + 1 / Math.abs(1 - (w * w) / 9))
      assertClose(reactance(TWO_TRAPS, w), twoTraps(w), { relative: near, absolute: near }, `w = ${w}`)
    }
  })

  test.each([
    ['one trap', ONE_TRAP, [1]],
    ['two traps', TWO_TRAPS, [1, 3]],
  ] as const)('with %s rises with frequency everywhere between its poles', (_name, parts, poles) => {
    let rises = 0
    MANY.slice(1).forEach((w, k) => {
      const before = MANY[k] ?? 0
      if (poles.some((pole) => before < pole && pole < w)) return
      expect(reactance(parts, w), `from ${before} to ${w}`).toBeGreaterThan(reactance(parts, before))
      rises += 1
    })
    expect(rises).toBe(MANY.length - 1 - poles.length)
  })

  test('rises at least as fast as |X|/w: X/w ≤ dX/dw, by the same theorem', () => {
    for (const w of MANY) {
      const [low, high] = [reactance(TWO_TRAPS, w * (1 - 1e-5)), reactance(TWO_TRAPS, w * (1 + 1e-5))]
      const slope = (high - low) / (2e-5 * w)
      expect(slope * (1 + 1e-4), `w = ${w}`).toBeGreaterThan(Math.abs(reactance(TWO_TRAPS, w)) / w)
    }
  })
})
