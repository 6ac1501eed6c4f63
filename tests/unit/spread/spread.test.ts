import { spread } from 'ringproof/answer/spread'
import type { SpreadAnswer } from 'ringproof/answer/spread-answer'
import { describe, expect, test } from 'vitest'
import { besides, DEMO, setText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { house, lineText, MASTER, plainSet } from '../checks/_ask.ts'

/** A resistance of 300 Ω ± 20 % on 50 V behind 400 Ω ± 5 %: 71.4 mA as stated. */
const LINE = lineText({
  feed: '{voltage: 50 V ± 2 %, resistance: 400 Ω ± 5 %, negative: b wire, earth: positive pole}',
})

function plain(load: string, request = {}): SpreadAnswer {
  const set = plainSet(300)
  const text = { ...set, text: set.text.replace('resistance: 300 Ω', `resistance: ${load}`) }
  const { text: premises, shelf = DEMO } = house(LINE, [MASTER], ['hall: {set: plain, in: front}'], text)
  return spread(
    { target: '', ...(premises === undefined ? {} : { text: premises }), draws: 20, ...request },
    shelf,
  )
}

const figureOf = (answer: SpreadAnswer, id: string) => {
  const found = answer.figures.find(({ figure }) => figure.id === id)
  if (found === undefined) throw new Error(`no ${id}`)
  return found
}

describe('spread of a set on a line', () => {
  test('has the loop current between its closed forms, and says which part matters most', () => {
    const loop = figureOf(plain('300 Ω ± 20 %'), 'loop.current')
    const plug = 0.1 // two contacts of a plug
    assertClose(loop.worst?.least, (50 * 0.98) / (420 + 360 + plug), { relative: 1e-6 }, 'least')
    assertClose(loop.worst?.most, (50 * 1.02) / (380 + 240 + plug), { relative: 1e-6 }, 'most')
    expect(loop.by).toBe('adjoint')
    expect(loop.worst?.steady).toBe(true)
    // to first order: shares (300·0.2 : 400·0.05 : 700·0.02)², a sum of squares of 3600 + 400 + 196
    const [first] = loop.parts
    expect(first?.part).toBe('hall/load')
    assertClose(first?.share, 3600 / 4196, { relative: 1e-3 }, 'share')
    const [pull] = loop.pulls
    assertClose(
      pull?.['for one per cent'],
      (-0.01 * 300 * 50) / 700.1 ** 2,
      { relative: 1e-3 },
      'one per cent',
    )
  })

  test('the percentiles lie within the worst case, and their middle near the stated figure', () => {
    const loop = figureOf(plain('300 Ω ± 20 %', { draws: 300, only: 'loop.current' }), 'loop.current')
    const { 5: low = 0, 50: middle = 0, 95: high = 0 } = loop.percentiles ?? {}
    expect(loop.worst?.least).toBeLessThan(low)
    expect(low).toBeLessThan(middle)
    expect(middle).toBeLessThan(high)
    expect(high).toBeLessThan(loop.worst?.most ?? 0)
    assertClose(middle, loop.figure.value ?? 0, { relative: 0.01 }, 'median')
  })

  test('is the same for the same seed, and another for another', () => {
    const once = plain('300 Ω ± 20 %', { seed: 3 })
    expect(plain('300 Ω ± 20 %', { seed: 3 }).figures).toEqual(once.figures)
    expect(plain('300 Ω ± 20 %', { seed: 4 }).figures).not.toEqual(once.figures)
  })
})

describe('verdicts', () => {
  const current = (load: string, request = {}) => {
    const answer = plain(load, { only: 'loop', ...request })
    const found = answer.verdicts.find(({ check }) => check === 'wiring.loop-through-set')
    if (found === undefined) throw new Error('no verdict')
    return found
  }

  // the loop through a set makes from 12 mA (limit of that check): 50 V over 4.17 kΩ
  test('hold where the worst case is within the limit, even near it', () => {
    const found = current('3.4 kΩ ± 5 %')
    expect([found.stated, found.state, found.fails]).toEqual(['holds', 'holds', 0])
  })

  test('are marginal where it is beyond, and say how many sets fail', () => {
    const found = current('3.6 kΩ ± 20 %', { draws: 800 })
    expect(found.state).toBe('marginal')
    expect(found.worst?.value).toBeLessThan(found.limit.value)
    // the load may be 50 V/12 mA − 400 Ω = 3.767 kΩ, which is 0.69 of its σ of 240 Ω above: a quarter fails
    // (Φ(−0.69) = 0.245, Abramowitz and Stegun, table 26.1, from memory; the feed spreads a little more)
    expect(found.fails).toBeGreaterThan(0.19)
    expect(found.fails).toBeLessThan(0.31)
    expect(found.decides?.part).toBe('hall/load')
  })

  test('fail as they did where the stated figure is beyond', () => {
    const found = current('4.5 kΩ ± 1 %')
    expect([found.stated, found.state, found.fails]).toEqual(['fails', 'fails', 1])
  })

  test('rest on the bell’s own limit too', () => {
    const set = setText('fescue', 'parts:', '  bell: {rings from: 12 mA ± 50 % at 25 Hz}')
    const answer = spread({ target: '', text: set, only: 'ringing.current', draws: 300 }, besides())
    const rings = answer.verdicts.find(({ check }) => check === 'bell.rings-alone')
    expect(rings?.stated).toBe('holds')
    expect(rings?.state).toBe('marginal')
    expect(rings?.worst?.limit).toBeCloseTo(0.018, 9)
    expect(rings?.decides?.part).toBe('trial/bell')
    // 14.5 mA is (14.5 − 12)/2 = 1.24 of its σ above 12 mA, which is 11 % beyond it (Φ(−1.24) = 0.107)
    expect(rings?.fails).toBeGreaterThan(0.05)
    expect(rings?.fails).toBeLessThan(0.18)
  })
})

describe('age', () => {
  test('makes the same set worse, and says so', () => {
    const asked = { target: 'fescue', only: 'loop.current', draws: 20 }
    const fresh = figureOf(spread(asked, DEMO), 'loop.current')
    const aged = spread({ ...asked, age: 50 }, DEMO)
    expect(figureOf(aged, 'loop.current').figure.value).toBeLessThan(fresh.figure.value ?? 0)
    expect(aged.aged?.changes.find(({ part }) => part === 'transmitter')?.parts).toBe(1)
    expect(aged.values.length).toBeGreaterThan(20)
  })
})

describe('a request that is none is refused in words', () => {
  const ask = (request: object) => () => spread({ target: 'fescue', ...request }, DEMO)
  test.each([
    [{ draws: 0 }, /draws 0/],
    [{ draws: 1.5 }, /draws 1.5/],
    [{ draws: 100_001 }, /100001/],
    [{ seed: -1 }, /seed -1/],
    [{ age: -1 }, /-1 years/],
    [{ age: Number.NaN }, /NaN years/],
    [{ law: 'triangle' }, /triangle/],
    [{ only: 'ringing.currant' }, /ringing.currant/],
  ])('%j', (request, says) => {
    expect(ask(request)).toThrow(says)
  })
})

test('where a law hangs on its own voltage the slopes are by differences, and say so', () => {
  const answer = spread({ target: 'foxtail', only: 'ringing.current', draws: 5 }, DEMO)
  expect(figureOf(answer, 'ringing.current').by).toBe('differences')
})

test('a set that stands nowhere has no figures that need a line', () => {
  expect(spread({ target: 'fescue', on: 'none', draws: 5 }, DEMO).figures).toEqual([])
})
