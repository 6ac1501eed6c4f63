import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { checkMoved, checkText, DEMO, setText, troubles, verdictOf } from '../../../support/bench.ts'

const THROUGH = 'wiring.loop-through-set'
const CLOSED = 'wiring.loop-closed-off-hook'
const OPEN = 'wiring.loop-open-on-hook'

describe('the loop off-hook', () => {
  test('is open without the unit, and the path names both sides of the empty slot', () => {
    const answer = check({ target: 'fescue-unit-left-out' }, DEMO)
    for (const id of [THROUGH, CLOSED]) {
      const one = verdictOf(answer, id)
      expect(one.state).toBe('fails')
      const at = one.path.indexOf('fescue/A3')
      expect(one.path.slice(at, at + 2)).toEqual(['fescue/A3', 'fescue/A4'])
      expect(one.says).toContain('between A3 and A4')
    }
    // open contacts and capacitors leak no more than a microampere
    expect(verdictOf(answer, THROUGH).figure?.value).toBeLessThan(1e-6)
  })

  test.each([
    ['a', ['park core: line.a']],
    ['b', ['park core: line.b']],
    ['neither', ['park core: line.a', 'park core: line.b']],
  ])('is open with line cores parked: %s', (_which, moves) => {
    const answer = checkMoved('fescue', ...moves)
    expect(verdictOf(answer, THROUGH)).toMatchObject({
      state: 'fails',
      figure: { id: 'loop.current', value: 0 },
    })
    expect(verdictOf(answer, CLOSED)).toMatchObject({
      state: 'fails',
      figure: { state: 'open' },
      margin: null,
    })
    expect(verdictOf(answer, OPEN).state).toBe('holds')
  })

  test('is short-circuited, not open, when the transmitter is bridged by its cores', () => {
    const answer = checkMoved('fescue', 'land core: handset.t2, onto: A5')
    expect(verdictOf(answer, 'wiring.cores-separate').state).toBe('fails')
    expect(verdictOf(answer, THROUGH).state).toBe('fails')
    const shorted = checkMoved('fescue', 'fit strap: A5-B4')
    expect(verdictOf(shorted, 'wiring.cores-separate')).toMatchObject({
      state: 'fails',
      subject: 'handset.t1, handset.t2',
      figure: { id: 'speech.send' },
    })
    expect(verdictOf(shorted, THROUGH).state).toBe('holds')
  })

  test('fails on too much resistance in it although it is closed', () => {
    const text = setText(
      'sedge',
      'without: [straps.A3-A4]',
      'parts: {weight: {kind: resistor, from: A3, to: A4, resistance: 8 kΩ}}',
    )
    const answer = checkText(text)
    for (const id of [THROUGH, CLOSED]) {
      expect(verdictOf(answer, id)).toMatchObject({ state: 'fails' })
      expect(verdictOf(answer, id).path.at(-1)).toBe('trial/plug.b')
    }
    expect(verdictOf(answer, CLOSED).figure?.value).toBeGreaterThan(8000)
  })

  test('is marginal a little within its limit', () => {
    const at = (ohms: number) =>
      verdictOf(
        checkText(
          setText(
            'sedge',
            'without: [straps.A3-A4]',
            `parts: {weight: {kind: resistor, from: A3, to: A4, resistance: ${ohms} Ω}}`,
          ),
        ),
        CLOSED,
      )
    // the transmitter is the more, the less current it gets: the weight that makes up the rest is found by trial
    const weightFor = (whole: number): number => {
      let ohms = whole / 2
      for (let step = 0; step < 6; step += 1) ohms += whole - (at(ohms).figure?.value ?? 0)
      return ohms
    }
    expect(at(weightFor(2100 * 0.96)).state).toBe('marginal')
    expect(at(weightFor(2100 * 0.94)).state).toBe('holds')
    expect(at(weightFor(2100 * 1.01)).state).toBe('fails')
  })

  test('is closed by a set behind a diode bridge, as the line finds it', () => {
    const text = setText(
      'sedge',
      'strips: {A: 8, B: 6}',
      'parts: {polarity: {kind: bridge, first: A7, second: A8, plus: A1, minus: B5, drop: 0.7 V at 10 mA}}',
      'cords: {line: {cores: {a: {lands: A7}, b: {lands: A8}}}}',
    )
    const answer = checkText(text)
    expect(verdictOf(answer, THROUGH).state).toBe('holds')
    expect(verdictOf(answer, CLOSED)).toMatchObject({ state: 'holds' })
    expect(verdictOf(answer, CLOSED).figure?.value).toBeLessThan(300)
    expect(verdictOf(answer, CLOSED).figure?.value).toBeGreaterThan(100)
  })

  test('is not closed by a suppressor, also where a leak lies beside it', () => {
    const gap = (parts: string) =>
      verdictOf(checkText(setText('sedge', 'without: [straps.A3-A4]', `parts: {${parts}}`)), THROUGH)
    const clamp = 'clamp: {kind: varistor, from: A3, to: A4, voltage at 1 A: 5 V, exponent: 4}'
    const leak = 'leak: {kind: resistor, from: A3, to: A4, resistance: 100 kΩ}'
    for (const one of [gap(clamp), gap(`${clamp}, ${leak}`)]) {
      expect(one.state).toBe('fails')
      expect(one.figure?.value).toBeLessThan(0.001)
    }
  })

  test('is asked of the plug, and a set without plug is unknown', () => {
    const answer = checkText(setText('fescue', 'without: [plug]'))
    expect(verdictOf(answer, CLOSED)).toMatchObject({ state: 'unknown', reason: 'no-line' })
    expect(verdictOf(answer, THROUGH).state).not.toBe('holds')
    expect(verdictOf(answer, 'wiring.spares-free')).toMatchObject({ state: 'unknown', reason: 'no-line' })
    expect(verdictOf(answer, 'wiring.bell-return')).toMatchObject({ state: 'unknown', reason: 'no-line' })
  })
})

describe('the loop on-hook', () => {
  test('fails on a strap across the hook contact, and the path is the loop', () => {
    const one = verdictOf(checkMoved('fescue', 'fit strap: A1-A2'), OPEN)
    expect(one).toMatchObject({ state: 'fails', limit: { side: 'at-most', unit: 'A' } })
    expect(one.path).toEqual(expect.arrayContaining(['fescue/A1', 'fescue/A2', 'fescue/A3', 'fescue/B5']))
  })

  test('fails on a bell that bridges the capacitor of the master socket', () => {
    const answer = check({ target: 'fescue-reversed-at-cord' }, DEMO)
    expect(troubles(answer)).toEqual({ [OPEN]: 'fails', 'wiring.bell-return': 'fails' })
    const one = verdictOf(answer, OPEN)
    // closed form: 50 V over the socket's 470 kΩ, the bell and its resistor, the line and its feed
    const expected = 50 / (470e3 + 1000 + 3300)
    expect(Math.abs((one.figure?.value ?? 0) / expected - 1)).toBeLessThan(0.01)
  })

  test('is limited by the feed of the line over the least resistance on-hook', () => {
    expect(verdictOf(check({ target: 'fescue' }, DEMO), OPEN).limit?.value).toBe(50 / 1e6)
  })
})
