import { type BellSpec, bell } from 'ringproof/parts/bell'
import type { FaultMode } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { add, divide, multiply, subtract } from '../../support/complex.ts'
import { accepts, alternating, DIRECT, single, spec } from './_heard.ts'

const OMEGA = 2 * Math.PI * 25
const head = { kind: 'bell', from: 'p', to: 'q', 'rings from': '3 mA at 25 Hz' }
const pair = (more: object) => ({ ...head, coils: { resistance: '500 Ω', inductance: '3 H', ...more } })
const read = (written: typeof head) => spec(written) as BellSpec
const problems = (more: object) => bell.check?.(read({ ...head, ...more })) ?? []

/** Two coupled coils in series or in parallel by their mesh equations, k < 0 where one is turned. */
function coupled(joined: 'series' | 'parallel', k: number): { re: number; im: number } {
  const own = { re: 500, im: OMEGA * 3 }
  const mutual = { re: 0, im: OMEGA * 3 * k }
  if (joined === 'series') return multiply({ re: 2, im: 0 }, add(own, mutual))
  const determinant = subtract(multiply(own, own), multiply(mutual, mutual))
  return divide(determinant, multiply({ re: 2, im: 0 }, subtract(own, mutual)))
}

describe('a bell of two coils', () => {
  test.each(['series', 'parallel'] as const)('in %s is what its mesh equations make of it', (joined) => {
    for (const [turned, sign] of [
      ['no', 1],
      ['yes', -1],
    ] as const) {
      const heard = single(pair({ joined, turned, coupling: 0.6 }), alternating(OMEGA))
      assertClose(
        'z' in heard && heard.z,
        coupled(joined, sign * 0.6),
        { relative: 1e-14 },
        `${joined} ${turned}`,
      )
    }
  })

  test('couples by 0.9 where its sheet is silent', () => {
    const heard = single(pair({ joined: 'series' }), alternating(OMEGA))
    assertClose('z' in heard && heard.z, coupled('series', 0.9), { relative: 1e-14 }, 'from memory')
  })

  test('has for direct current twice or half the resistance of one, turned or not', () => {
    for (const turned of ['no', 'yes']) {
      expect(single(pair({ joined: 'series', turned }), DIRECT)).toMatchObject({ z: { re: 1000, im: 0 } })
      expect(single(pair({ joined: 'parallel', turned }), DIRECT)).toMatchObject({ z: { re: 250, im: 0 } })
    }
  })

  test('linked rightly rings from its stated current, and turned from none that a line can give', () => {
    const from = (written: typeof head) => bell.sounds?.(read(written)).current
    expect(from(pair({ joined: 'series' }))).toBe(0.003)
    expect(from(pair({ joined: 'series', turned: 'yes' }))).toBeGreaterThan(1000)
  })

  test('may be linked wrongly, which a bell as a whole and one linked wrongly already may not', () => {
    const modes = (written: typeof head) => bell.modes?.(read(written)).map(({ mode }: FaultMode) => mode)
    expect(modes(pair({ joined: 'series' }))).toContain('coils-opposed')
    expect(modes(pair({ joined: 'series', turned: 'yes' }))).not.toContain('coils-opposed')
    const whole = { ...head, resistance: '1 kΩ', inductance: '12 H' }
    expect(modes(whole)).not.toContain('coils-opposed')
  })
})

describe('the coils of a bell', () => {
  test('are said as a whole or as two, not both, not half', () => {
    expect(problems({ resistance: '1 kΩ', inductance: '12 H' })).toEqual([])
    expect(problems({})).toMatchObject([{ code: 'key-missing' }])
    expect(problems({ resistance: '1 kΩ' })).toMatchObject([{ found: 'a bell without `inductance`' }])
    expect(problems({ inductance: '1 H' })).toMatchObject([{ found: 'a bell without `resistance`' }])
    const coils = { resistance: '500 Ω', inductance: '3 H', joined: 'series' }
    expect(problems({ coils })).toEqual([])
    expect(problems({ coils, resistance: '1 kΩ' })).toMatchObject([{ code: 'key-doubled' }])
    expect(accepts({ ...head, coils: { ...coils, coupling: 1 } })).toBe(false)
  })
})
