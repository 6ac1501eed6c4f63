import { gasTube } from 'ringproof/parts/gas-tube'
import { currentIn } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { accepts, alternating, DIRECT, single, spec } from './_heard.ts'
import { newton } from './_newton.ts'

const part = { kind: 'gas-tube', from: 'p', to: 'q', 'holds off': '230 V' }
const OPEN = { form: 'equation', a: 0, z: { re: 1, im: 0 } }
const direct = (voltage: number, current: number) => ({ direct: () => ({ voltage, current }) })

describe('a gas tube', () => {
  test('is open up to what it holds off, either way round', () => {
    for (const volts of [0, 50, 229.9, -229.9]) {
      expect(single(part, { ...DIRECT, ...direct(volts, 0) })).toMatchObject(OPEN)
      expect(newton(part, volts, 100)).toMatchObject({ voltage: volts, current: 0 })
    }
  })

  test('carries beyond it what its arc of 20 V and 1 Ω leaves of the source', () => {
    // closed form: I = (E − 20)/(R + 1); 20 V and 1 Ω from memory
    for (const [volts, ohms] of [
      [231, 10],
      [300, 1000],
      [-400, 1e6],
    ] as const) {
      const current = (volts - Math.sign(volts) * 20) / (ohms + 1)
      assertClose(newton(part, volts, ohms).current, current, { relative: 1e-12 }, `${volts} V`)
    }
    assertClose(newton({ ...part, arc: '15 V' }, 300, 1000).current, 285 / 1001, { relative: 1e-12 }, 'arc')
  })

  test('stays struck while its current flows, and goes out when the current turns', () => {
    expect(single(part, { ...DIRECT, ...direct(20, 0.1) })).toMatchObject({ a: 1, e: { re: 20 } })
    expect(single(part, { ...DIRECT, ...direct(-20, -0.1) })).toMatchObject({ a: 1, e: { re: -20 } })
    expect(single(part, { ...DIRECT, ...direct(20, -0.1) })).toMatchObject(OPEN)
  })

  test('is for alternating current open, or a struck arc where direct current has struck it', () => {
    expect(single(part, alternating(100))).toMatchObject(OPEN)
    expect(single(part, { ...alternating(100), ...direct(20, 0.2) })).toMatchObject({
      a: 1,
      z: { re: 1, im: 0 },
    })
  })

  test('says so where its current would make it glow rather than arc', () => {
    const read = spec(part) as never
    expect(gasTube.standIn?.(read, { ...DIRECT, ...direct(20, 0.2) })).toBeUndefined()
    expect(gasTube.standIn?.(read, { ...DIRECT, ...direct(20, 0.01) })).toMatch(/glow/)
    expect(gasTube.standIn?.(read, DIRECT)).toBeUndefined()
  })

  test('does not strike where a varistor beside it clips first', () => {
    const net = compiled(
      'source: {kind: voltage-source, from: p, to: earth, direct: 300 V}',
      'feed: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      'tube: {kind: gas-tube, from: q, to: earth, holds off: 230 V}',
      'clip: {kind: varistor, from: q, to: earth, voltage at 1 A: 200 V, exponent: 30}',
    )
    const solution = solve(net, { analysis: 'direct', condition: { line: 'idle', sets: {} } })
    const current = (name: string) => currentIn(solution, net.branchIndex.get(`trial/${name}`) ?? -1).re
    expect(current('tube')).toBe(0)
    assertClose(current('clip'), current('feed'), { relative: 1e-12 }, 'all through the varistor')
  })

  test('does not arc at more than it holds off', () => {
    expect(gasTube.check?.(spec({ ...part, arc: '15 V' }) as never)).toEqual([])
    expect(gasTube.check?.(spec({ ...part, arc: '300 V' }) as never)).toMatchObject([
      { code: 'quantity-out-of-range', at: ['arc'] },
    ])
    expect(accepts({ ...part, arc: '0 V' })).toBe(false)
  })
})
