import fc from 'fast-check'
import { limitedLaw, limiting, settleLimited } from 'ringproof/parts/current-limit'
import { type LegSpec, leg } from 'ringproof/parts/exchange'
import type { Working } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { SEED } from '../../support/seed.ts'
import { DIRECT, hear } from './_heard.ts'

/** The leg of a 50 V battery through 230 Ω with a limit of 60 mA: TBR 21's worst short-line feed. */
const TBR: LegSpec = {
  kind: 'leg',
  from: 'b',
  to: 'earth',
  resistance: 230,
  direct: -50,
  alternating: 0,
  limit: 0.06,
  passes: 'direct',
}
const REST = { voltage: 0, current: 0 }

/** The law of the leg at a point: a·v − z·i = e. */
function tangent(spec: LegSpec, direct: Working): { a: number; z: number; e: number } {
  const [heard] = hear((sink) => leg.law(spec, { ...DIRECT, direct: () => direct }, 'closed', sink)).branches
  if (heard?.form !== 'equation') throw new Error('no equation')
  return { a: heard.a, z: heard.z.re, e: heard.e.re }
}

/** Newton by hand, with the leg across a load of so many ohms; gives the steps too. */
function loaded(spec: LegSpec, ohms: number, from: Working = REST): Working & { steps: number } {
  let point = from
  for (let steps = 1; steps < 10; steps += 1) {
    const { a, z, e } = tangent(spec, point)
    // v = −ohms·i by the load, a·v − z·i = e by the leg
    const current = -e / (a * ohms + z)
    const next = { voltage: -ohms * current, current }
    const settled = leg.settle?.(spec, 0, next, point) ?? next
    if (Math.hypot(settled.voltage - point.voltage, settled.current - point.current) < 1e-12) {
      return { ...settled, steps }
    }
    point = settled
  }
  throw new Error('did not converge')
}

describe('a feed that limits its current', () => {
  test('gives 60 mA and 36.2 V, 2.172 W, in the European short-line test', () => {
    // TBR 21: 50 V through 230 Ω with a ceiling of 60 mA, text seen in a secondary copy; 50 − 0.06·230 derived
    const load = 36.2 / 0.06
    const { voltage, current } = loaded(TBR, load)
    assertClose(current, 0.06, { relative: 1e-9 }, 'current')
    assertClose(-voltage, 36.2, { relative: 1e-9 }, 'voltage')
    assertClose(-voltage * current, 2.172, { relative: 1e-9 }, 'power')
    assertClose(
      loaded({ ...TBR, limit: 1 }, 0).current,
      0.21739,
      { relative: 0, absolute: 5e-6 },
      'unlimited',
    )
  })

  test('gives its limit into anything less, a short too, and obeys Ohm into anything more', () => {
    for (const ohms of [0, 1, 100, 600]) {
      const { voltage, current } = loaded(TBR, ohms)
      assertClose(current, 0.06, { relative: 1e-12 }, `${ohms} Ω`)
      assertClose(voltage, -ohms * 0.06, { relative: 1e-12 }, `${ohms} Ω`)
    }
    for (const ohms of [604, 1000, 1e6])
      assertClose(loaded(TBR, ohms).current, 50 / (230 + ohms), { relative: 1e-12 }, `${ohms} Ω`)
  })

  test('without resistance is an ideal battery up to its limit', () => {
    const adapter = { ...TBR, resistance: 0, direct: -21, limit: 0.02 }
    assertClose(loaded(adapter, 2000).voltage, -21, { relative: 1e-12 }, 'below')
    assertClose(loaded(adapter, 300).voltage, -6, { relative: 1e-12 }, 'above')
  })

  test('limits either way, whichever pole its battery has', () => {
    assertClose(loaded({ ...TBR, direct: 50 }, 100).current, -0.06, { relative: 1e-12 }, 'other pole')
  })

  test('converges in at most four steps from rest and from any other point on its law', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.double({ min: 1e-3, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.constantFrom(-50, 50),
        (resistance, limit, ohms, before, direct) => {
          const spec = { ...TBR, resistance, limit, direct }
          const unlimited = 50 / (resistance + ohms)
          fc.pre(Number.isFinite(unlimited) && Number.isFinite(50 / (resistance + before)))
          const expected = Math.min(limit, unlimited)
          const first = loaded(spec, before)
          const second = loaded(spec, ohms, first)
          assertClose(Math.abs(second.current), expected, { relative: 1e-9 }, 'current')
          expect(Math.max(first.steps, second.steps)).toBeLessThanOrEqual(4)
        },
      ),
      { seed: SEED },
    )
  })

  test('states its resistance at rest and where nothing is known of the point, its limit beyond the corner', () => {
    const law = (at: Working | undefined) =>
      hear((sink) => limitedLaw({ ...TBR, limit: 0.06 }, at, sink)).branches
    const resistive = [{ form: 'equation', a: 1, z: { re: 230, im: 0 }, e: { re: -50, im: 0 } }]
    expect(law(undefined)).toEqual(resistive)
    expect(law(REST)).toEqual(resistive)
    expect(law({ voltage: -6, current: 0.06 })).toEqual([
      { form: 'equation', a: 0, z: { re: 1, im: 0 }, e: { re: -0.06, im: 0 } },
    ])
    expect(leg.bends?.(TBR)).toEqual(['direct'])
    const { limit: _, ...free } = TBR
    expect(leg.bends?.(free)).toEqual([])
    expect(leg.settle?.(free, 0, { voltage: 1, current: 9 }, REST)).toEqual({ voltage: 1, current: 9 })
  })

  test('goes back to its resistance when its voltage falls short of the corner', () => {
    const limiter = { resistance: 230, direct: -50, limit: 0.06 }
    const limited = { voltage: -6, current: 0.06 }
    expect(limiting(limiter, limited)).toBe(1)
    const back = settleLimited(limiter, { voltage: -45, current: 0.06 }, limited)
    expect(limiting(limiter, back)).toBe(0)
    expect(limiting(limiter, settleLimited(limiter, { voltage: -20, current: 0.06 }, limited))).toBe(1)
  })
})
