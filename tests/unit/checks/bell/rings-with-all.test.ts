import { describe, expect, test } from 'vitest'
import { assertClose } from '../../../support/close.ts'
import { ask, askOne, contexts, house, lineText, MASTER, mendedBy, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'bell.rings-with-all'

/** A master socket and n secondaries without cable, a set in each. */
function many(count: number, set = 'plain') {
  const numbers = Array.from({ length: count }, (_, k) => k + 1)
  return house(
    lineText(),
    [MASTER, ...numbers.map((k) => `s${k}: {is: secondary, fed from: front}`)],
    numbers.map((k) => `p${k}: {set: ${set}, in: s${k}}`),
    plainSet(600),
  )
}

/** Current of each of n bells of 4300 Ω + 12 H behind 400 Ω and 1.8 µF from 75 V at 25 Hz, 470 kΩ beside them. */
function closedForm(n: number): number {
  const w = 2 * Math.PI * 25
  const bell = { re: 4300.1, im: w * 12 }
  const size = bell.re ** 2 + bell.im ** 2
  const y = { re: (n * bell.re) / size + 1 / 470e3, im: (-n * bell.im) / size }
  const y2 = y.re ** 2 + y.im ** 2
  const z = { re: y.re / y2 + 400, im: -y.im / y2 - 1 / (w * 1.8e-6) }
  const lead = 75 / Math.hypot(z.re, z.im) / Math.sqrt(y2)
  return lead / Math.sqrt(size)
}

describe('a bell with everything plugged in', () => {
  test('gets what the closed form leaves it, and is judged by that', () => {
    for (const n of [1, 3, 5]) {
      const found = ask(CHECK, many(n))
      expect(found).toHaveLength(n)
      for (const { figure } of found)
        assertClose(figure?.value, closedForm(n), { relative: 1e-6 }, `${n} bells`)
    }
    expect(closedForm(5)).toBeGreaterThan(0.003 * 1.05)
    for (const { state } of ask(CHECK, many(5))) expect(state).toBe('holds')
  })

  test('fails where there are too many, and the fewest that must go are found by trying', () => {
    const least = 0.003
    const most = [...Array(20).keys()].map((k) => k + 1).filter((n) => closedForm(n) >= least).length
    const count = most + 3
    const one = askOne(CHECK, many(count), 'p1/bell')
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(/^unplug p\d+, p\d+ and p\d+, who take the most; fewer are not enough$/)
    const [{ now, mended } = { now: 1, mended: 0 }] = mendedBy(one)
    assertClose(now, closedForm(count), { relative: 1e-6 }, 'as it is')
    assertClose(mended, closedForm(most), { relative: 1e-6 }, 'with three gone')
  })

  test('is drowned by a marram, and a bell resistor there was tried and mends it', () => {
    const found = ask(CHECK, { target: 'goods-office' })
    expect(found.map(({ subject, state }) => [subject, state])).toEqual([
      ['clerk/bell', 'holds'],
      ...[1, 2, 3, 4].map((k) => [`porter-${k}/bell`, 'fails']),
    ])
    const shared = ask(CHECK, { target: 'goods-office-shared' })
    for (const { state } of shared) expect(state).toBe('holds')
    for (const one of found.slice(1)) {
      expect(mendOf(one)).toMatch(/^put a bell resistor of 3\.3 kΩ in series with clerk\/bell/)
      const [{ mended } = { mended: 0 }] = mendedBy(one)
      const there = shared.find(({ subject }) => subject === one.subject)?.figure?.value
      // the rewire fits the very resistor
      assertClose(mended, there ?? 0, { relative: 1e-6 }, one.subject)
    }
  })

  test('rings on the current of others though it is reversed at its own cord', () => {
    const found = ask(CHECK, { target: 'lamp-room' })
    expect(found.map(({ subject, state }) => [subject, state])).toEqual([
      ['lamps/bell', 'holds'],
      ['wicks/bell', 'holds'],
    ])
    expect(askOne('bell.rings-alone', { target: 'lamp-room' }, 'wicks/bell').state).toBe('fails')
  })

  test('refers to what keeps it silent alone, and tries nothing else', () => {
    const one = askOne(CHECK, { target: 'gatehouse' }, 'stair-foot/bell')
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toContain('bell.rings-alone')
    const single = askOne(CHECK, { target: 'fescue-without-ringing-lead' })
    expect(mendOf(single)).toContain('bell.rings-alone')
    expect(mendedBy(single)).toEqual([])
  })

  test('asks the same question alone and with all where it is the only one', () => {
    const [context] = contexts({ target: 'fescue' })
    const alone = askOne('bell.rings-alone', { target: 'fescue' }).figure
    expect(askOne(CHECK, { target: 'fescue' }).figure?.value).toBe(alone?.value)
    expect(context?.net.places).toHaveLength(1)
  })
})
