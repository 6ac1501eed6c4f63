import { graver, judge, MARGINAL_BELOW, shown, worst } from 'ringproof/checks/judge'
import type { Limit } from 'ringproof/checks/limits'
import type { Figure } from 'ringproof/figures/figure'
import { describe, expect, test } from 'vitest'

const condition = { line: 'idle', sets: {} } as const

function figure(value: number | null, unit: Figure['unit'] = 'Ω', state?: Figure['state']): Figure {
  return {
    id: 'resistance.between',
    subject: 'p – q',
    condition,
    value,
    unit,
    residual: 0,
    ...(state === undefined ? {} : { state }),
  }
}

function limit(value: number, side: Limit['side'], unit: Limit['unit'] = 'Ω'): Limit {
  return { id: 'trial', value, side, unit, says: 'trial', source: 'invented', clause: '-', grade: 'SHEET' }
}

function judged(value: Figure, against: Limit) {
  return judge({
    check: 'wiring.trial',
    subject: 'p',
    figure: value,
    limit: against,
    path: ['p', 'q'],
    says: { good: 'good', bad: 'bad' },
    mend: 'mend it',
  })
}

describe('a figure against a limit', () => {
  const M = MARGINAL_BELOW
  test.each([
    ['at most', 'at-most', 100, 'marginal', 0],
    ['at most', 'at-most', 101, 'fails', -0.01],
    ['at most', 'at-most', 100 * (1 - M), 'holds', M],
    ['at most', 'at-most', 100 * (1 - M) + 0.1, 'marginal', M - 0.001],
    ['at most', 'at-most', 0, 'holds', 1],
    ['at least', 'at-least', 100, 'marginal', 0],
    ['at least', 'at-least', 99, 'fails', -0.01],
    ['at least', 'at-least', 100 * (1 + M), 'holds', M],
    ['at least', 'at-least', 100 * (1 + M) - 0.1, 'marginal', M - 0.001],
    ['at least', 'at-least', 0, 'fails', -1],
  ] as const)('of %s 100 Ω (%s): %d Ω %s', (_words, side, value, state, margin) => {
    const one = judged(figure(value), limit(100, side))
    expect(one.state).toBe(state)
    expect(Math.abs((one.margin ?? 9) - margin)).toBeLessThan(1e-12)
    expect('mend' in one).toBe(state !== 'holds')
    expect(one.says).toBe(state === 'fails' ? 'bad' : 'good')
  })

  test('of nought holds at least, and fails at most where there is anything at all', () => {
    expect(judged(figure(1e-9), limit(0, 'at-least'))).toMatchObject({ state: 'holds', margin: null })
    expect(judged(figure(1e-9), limit(0, 'at-most'))).toMatchObject({ state: 'fails', margin: null })
    expect(judged(figure(0), limit(0, 'at-most'))).toMatchObject({ state: 'holds', margin: null })
  })

  test('comes after a graver one', () => {
    const states = [101, 100, 50, 10].map((value) => judged(figure(value), limit(100, 'at-most')))
    expect([...states].reverse().sort(graver)).toEqual(states)
  })

  test('is never marginal when it is a count', () => {
    expect(judged(figure(1, '1'), limit(1, 'at-most', '1'))).toMatchObject({ state: 'holds', margin: 0 })
    expect(judged(figure(2, '1'), limit(1, 'at-most', '1'))).toMatchObject({ state: 'fails', margin: -1 })
  })

  test('is beyond every resistance when it is open', () => {
    const open = figure(null, 'Ω', 'open')
    expect(judged(open, limit(100, 'at-least'))).toMatchObject({ state: 'holds', margin: null })
    expect(judged(open, limit(100, 'at-most'))).toMatchObject({ state: 'fails', margin: null })
  })

  test('is no current when the loop is open', () => {
    const open = figure(null, 'A', 'open')
    expect(judged(open, limit(0.012, 'at-least', 'A'))).toMatchObject({ state: 'fails', margin: -1 })
    expect(judged(open, limit(0.012, 'at-most', 'A'))).toMatchObject({ state: 'holds', margin: 1 })
  })

  test.each(['undetermined', 'beyond-range'] as const)('is not judged when it is %s', (state) => {
    expect(judged(figure(null, 'Ω', state), limit(100, 'at-most'))).toMatchObject({
      state: 'unknown',
      reason: 'undetermined',
      margin: null,
    })
  })

  test('carries the limit with its source and without its name', () => {
    expect(judged(figure(1), limit(100, 'at-most')).limit).toEqual(shown(limit(100, 'at-most')))
    expect(shown(limit(100, 'at-most'))).not.toHaveProperty('id')
  })
})

describe('the worst of several figures', () => {
  test('is the largest where at most is allowed and the smallest where at least is', () => {
    const all = [figure(2), figure(7), figure(3)]
    expect(worst(all, 'at-most').value).toBe(7)
    expect(worst(all, 'at-least').value).toBe(2)
  })

  test('takes an open resistance as larger than any other', () => {
    const all = [figure(2), figure(null, 'Ω', 'open'), figure(1e12)]
    expect(worst(all, 'at-most').state).toBe('open')
    expect(worst(all, 'at-least').value).toBe(2)
  })

  test('needs a figure', () => {
    expect(() => worst([], 'at-most')).toThrow(RangeError)
  })
})
