/** What a house full of sets must show: who rings and how much, by current dividers and not by the demo's own numbers. */
import { check, figures } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO, verdictsOf } from '../support/bench.ts'
import { assertClose } from '../support/close.ts'
import { type Complex, modulus } from '../support/complex.ts'
import { bellOf, bellsOf, FESCUE, IDEAL, places, rings, shares, silent, turned } from './_ringing.ts'

const LINES = ['depot-exchange', 'valley-exchange', 'signal-box', 'adapter-port']
const TRAPEZOID = ['signal-box', 'adapter-port']
/** House cable and plugs lie in the way: a few ohms in thousands. */
const NEAR = { relative: 2e-3 }

const average = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length

const PORTERS = ['porter-1', 'porter-2', 'porter-3', 'porter-4']
const ALL = ['clerk', ...PORTERS]
/**
 * A marram's current to a fescue's is their impedances the other way round, at each harmonic n for itself: exact where
 * the wave is a sine, else between those of the first and of the third, near the first.
 */
function asDivided(line: string, ratio: number, marram: (n: number) => Complex): void {
  const [first, third] = [1, 3].map((n) => modulus(bellOf(1000, 3300, 12 * n)) / modulus(marram(n)))
  assertClose(ratio, first ?? 0, TRAPEZOID.includes(line) ? { relative: 0.05 } : NEAR, 'ratio')
  if (TRAPEZOID.includes(line)) {
    expect(ratio).toBeGreaterThan(Math.min(first ?? 0, third ?? 0))
    expect(ratio).toBeLessThan(Math.max(first ?? 0, third ?? 0))
  }
}

/** By their sheets: 500 Ω and 4 H alone, and behind 3.3 kΩ. */
const MARRAM = bellOf(500, 0, 4)
const MARRAM_WITH = bellOf(500, 3300, 4)

describe('four fescues and a marram', () => {
  test.each([
    ['goods-office', MARRAM],
    ['goods-office-shared', MARRAM_WITH],
  ])('share the current in %s as the current divider says', (name, marram) => {
    const { clerk, ...others } = bellsOf(name)
    const expected = shares([marram, FESCUE, FESCUE, FESCUE, FESCUE])
    assertClose(clerk, expected[0] ?? 0, NEAR, 'marram')
    for (const [place, current] of Object.entries(others)) assertClose(current, expected[1] ?? 0, NEAR, place)
  })

  describe.each(LINES)('on %s', (line) => {
    test('without a resistor the marram takes by as much more as its bell is less', () => {
      const { clerk = 0, ...others } = bellsOf('goods-office', line)
      asDivided(line, clerk / average(Object.values(others)), (n) => bellOf(500, 0, 4 * n))
      const answer = check({ target: 'goods-office', on: line }, DEMO)
      expect(rings(answer)).toEqual(['clerk'])
      expect(silent(answer)).toEqual(PORTERS)
    })

    test('with a resistor all ring, or none where the ringing is too weak for five', () => {
      const { clerk = 0, ...others } = bellsOf('goods-office-shared', line)
      asDivided(line, clerk / average(Object.values(others)), (n) => bellOf(500, 3300, 4 * n))
      const weak = line === 'adapter-port'
      const answer = check({ target: 'goods-office-shared', on: line }, DEMO)
      expect(rings(answer)).toEqual(weak ? [] : ALL)
      expect(silent(answer)).toEqual(weak ? ALL : [])
    })

    test('the resistor gives to every fescue and takes from the marram', () => {
      const [before, after] = [bellsOf('goods-office', line), bellsOf('goods-office-shared', line)]
      expect(after.clerk).toBeLessThan(0.6 * (before.clerk ?? 0))
      for (const place of PORTERS) expect(after[place]).toBeGreaterThan(1.5 * (before[place] ?? 0))
    })
  })
})

describe('five equal sets', () => {
  const bare = bellOf(1000, 0, 12)

  test('share equally by the current divider, with and without resistors', () => {
    for (const [name, bell] of [
      ['signal-school', FESCUE],
      ['signal-school-bare', bare],
    ] as const) {
      const [each = 0] = shares([bell, bell, bell, bell, bell])
      for (const [place, current] of Object.entries(bellsOf(name))) assertClose(current, each, NEAR, place)
    }
  })

  test.each(LINES)(
    'get nearly the same with and without, though a resistor more than doubles a bell: %s',
    (line) => {
      expect(modulus(FESCUE) / modulus(bare)).toBeGreaterThan(2)
      const [withThem, without] = [bellsOf('signal-school', line), bellsOf('signal-school-bare', line)]
      for (const [place, current] of Object.entries(withThem)) {
        const ratio = (without[place] ?? 0) / current
        expect(ratio).toBeGreaterThan(1)
        expect(ratio).toBeLessThan(1.15)
      }
    },
  )

  test('exceed a limit of four, and all ring', () => {
    for (const target of ['signal-school', 'signal-school-bare', 'station-house']) {
      const answer = check({ target }, DEMO)
      expect(verdictsOf(answer, 'line.ringing-load').map(({ state }) => state)).toEqual(['fails'])
      expect(rings(answer)).toHaveLength(5)
    }
  })
})

describe('a fescue reversed at its own cord', () => {
  const direct = (right: number, wrong: number): number => 50e3 / (400 + 4300 + right + wrong)

  test('is nearly silent alone: it gets what 470 kΩ let through, about a hundredth', () => {
    const { ganger = 0 } = bellsOf('ganger-hut-turned')
    assertClose(ganger, turned([], FESCUE).reversed, NEAR, 'current')
    const ratio = ganger / (bellsOf('ganger-hut').ganger ?? 0)
    expect(ratio).toBeGreaterThan(0.005)
    expect(ratio).toBeLessThan(0.02)
    expect(silent(check({ target: 'ganger-hut-turned' }, DEMO))).toEqual(['ganger'])
  })

  test.each([
    ['weigh-house-turned', 'bookkeeper', 1],
    ['junction-cabin-turned', 'sleeper', 4],
  ])('rings in %s on the current of the others, as much as they do', (target, place, count) => {
    const { [place]: wrong = 0, ...others } = bellsOf(target)
    const right = Array.from({ length: count }, () => FESCUE)
    const expected = turned(right, FESCUE)
    assertClose(wrong, expected.reversed, NEAR, 'reversed')
    for (const current of Object.values(others)) assertClose(current, expected.right[0] ?? 0, NEAR, 'right')
    expect(wrong / average(Object.values(others))).toBeGreaterThan(0.7)
    const answer = check({ target }, DEMO)
    expect(rings(answer)).toHaveLength(count + 1)
    expect(silent(answer, 'bell.rings-alone')).toEqual([place])
  })

  test.each([
    ['weigh-house-turned', 'bookkeeper', 1],
    ['junction-cabin-turned', 'sleeper', 4],
  ])(
    'bridges 5 to 8 mA of direct current on-hook in %s, through its bell and theirs',
    (target, place, count) => {
      const { [place]: wrong = 0, ...others } = bellsOf(target, IDEAL, 'bell.direct-current')
      const expected = direct(1 / (count / 4300 + 1 / 470e3), 0)
      assertClose(wrong, expected, NEAR, 'reversed')
      expect(wrong).toBeGreaterThan(5)
      // 50 V by 400 Ω, 4300 Ω and a quarter of that is 8.6 mA
      expect(wrong).toBeLessThan(9)
      for (const current of Object.values(others))
        assertClose(current, wrong / count, { relative: 0.02 }, 'right')
      // the line leaks, and every set of the house with it
      const answer = check({ target }, DEMO)
      expect(places(answer, 'line.leakage', /^fails$/)).toEqual([target])
      expect(places(answer, 'wiring.loop-open-on-hook', /^fails$/)).toHaveLength(count + 1)
      // and the dial pulses of all of them drown in it
      expect(places(answer, 'dial.understood', /^fails$/)).toContain(place)
    },
  )

  test('no bell of a house that is right carries direct current', () => {
    for (const current of Object.values(bellsOf('signal-school', IDEAL, 'bell.direct-current')))
      expect(current).toBeLessThan(1e-6)
  })

  test('is another thing than a pair reversed at the exchange, which holds and has the same figures', () => {
    const here = figures({ target: 'ganger-hut' }, DEMO).figures
    const there = figures({ target: 'fescue', on: 'workshop' }, DEMO).figures
    expect(here).toHaveLength(there.length)
    here.forEach(({ id, value }, k) => {
      const other = there[k]
      expect(other?.id).toBe(id)
      const size = Math.abs(other?.value ?? 0)
      expect(Math.abs(Math.abs(value ?? 0) - size), id).toBeLessThanOrEqual(1e-6 * size + 1e-9)
    })
    expect(check({ target: 'ganger-hut' }, DEMO).counts.fails).toBe(0)
  })
})
