import { describe, expect, test } from 'vitest'
import { ask, askOne, house, lineText, mendedBy, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'line.leakage'
const SOCKET = ['front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}']

/** A feed of 50 V behind nothing, and sets that leak so many ohms. */
function leaky(ohms: number, sets = 1) {
  const feed = '{voltage: 50 V, resistance: 0 Ω, negative: b wire}'
  const parts = `drain: {kind: resistor, from: A1, to: A2, resistance: ${ohms - 0.1} Ω}`
  const numbers = Array.from({ length: sets }, (_, k) => k)
  return house(
    lineText({ feed }),
    [...SOCKET, ...numbers.map((k) => `s${k}: {is: secondary, fed from: front}`)],
    numbers.map((k) => `p${k}: {set: plain, in: s${k}}`),
    plainSet(600, { parts, broken: 1e15 }),
  )
}

describe('the direct current of a line on-hook', () => {
  test('holds on the demo’s right houses, once for all that stand there', () => {
    for (const target of ['fescue', 'station-house', 'museum-hall', 'gatehouse']) {
      const found = ask(CHECK, { target })
      expect(found.map(({ state, subject }) => [state, subject])).toEqual([['holds', target]])
    }
  })

  // AS/CA S002:2010, 5.1.4, grade SEEN-P: no more than 1 MΩ lets through
  test.each([
    [1, 1e6 * (1 + 1e-6), 'marginal'],
    [1, 1e6 * (1 - 1e-6), 'fails'],
    [4, 4e6 * (1 + 1e-6), 'marginal'],
    [4, 4e6 * (1 - 1e-6), 'fails'],
    [1, 2e6, 'holds'],
  ])('of %d sets that leak through %f Ω each: %s', (sets, ohms, state) => {
    expect(askOne(CHECK, leaky(ohms, sets))).toMatchObject({
      state,
      subject: 'trial-house',
      figure: { id: 'leakage.on-hook' },
      limit: { value: 50e-6, side: 'at-most', clause: '5.1.4', grade: 'SEEN-P' },
    })
  })

  test('fails where a set is reversed at its own cord, and which one was found by trying', () => {
    const one = askOne(CHECK, { target: 'lamp-room' })
    expect(one.state).toBe('fails')
    // the right one also carries current; exchanging its cores would silence both bells
    expect(mendOf(one)).toBe('exchange the two line cores of wicks')
    const [{ now, mended } = { now: 0, mended: 1 }] = mendedBy(one)
    // design 1: 5 to 8 mA on-hook
    expect(now).toBeGreaterThan(0.005)
    expect(now).toBeLessThan(0.008)
    expect(mended).toBeLessThan(1e-6)
  })

  test('of a set with a leak of its own names that set', () => {
    const parts = 'drain: {kind: resistor, from: A1, to: A2, resistance: 10 kΩ}'
    const asked = house(
      lineText(),
      [...SOCKET, 'back: {is: secondary, fed from: front}'],
      ['desk: {set: plain, in: front}', 'wall: {set: leaky, in: back}'],
      plainSet(600),
      { file: 'leaky.yaml', text: plainSet(600, { parts }).text.replace('name: plain', 'name: leaky') },
    )
    expect(mendOf(askOne(CHECK, asked))).toBe('unplug wall and look for what leaks in it')
  })

  test('of apparatus in line names where it stands', () => {
    const sockets = [
      ...SOCKET,
      'tones: {is: converter, fed from: front, series resistance: 40 Ω, load: 100 kΩ}',
    ]
    const one = askOne(CHECK, house(lineText(), sockets, ['desk: {set: plain, in: tones}'], plainSet(600)))
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toBe('what stands in line at tones draws it: take one that loads the pair less')
    const [{ mended } = { mended: 1 }] = mendedBy(one)
    expect(mended).toBeLessThan(50e-6)
  })

  test('of the house itself blames no set', () => {
    const sockets = [
      ...SOCKET,
      'tones: {is: converter, fed from: front, series resistance: 40 Ω, load: 100 kΩ}',
      'wall: {is: secondary, fed from: tones}',
    ]
    const one = askOne(CHECK, house(lineText(), sockets, ['desk: {set: plain, in: wall}'], plainSet(600)))
    expect(mendOf(one)).toMatch(/^no single set is behind it/)
  })

  test('is unknown without a line', () => {
    expect(askOne(CHECK, { target: 'fescue', on: 'none' })).toMatchObject({ reason: 'no-line' })
  })
})
