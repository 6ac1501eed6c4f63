import { kitOf } from 'ringproof/answer/instruments-table'
import { PLACE } from 'ringproof/identify/known'
import { candidatePairs } from 'ringproof/identify/pairs'
import { benchOf } from 'ringproof/meter/bench'
import { readBetween } from 'ringproof/meter/read'
import { conditionIn } from 'ringproof/meter/table'
import { compile } from 'ringproof/netlist/compile'
import { describe, expect, test } from 'vitest'
import { knownSet, ODDS, READER } from './_bench.ts'

const at = (set: string, red: string, black: string, condition = 'on-hook') =>
  READER.read(knownSet(set), { red, black, condition })

describe('what a meter would read with the cords off', () => {
  // series resistances add: the closed form
  test.each([
    ['a strap', 'sedge', 'B3', 'B4', 0.01],
    ['a winding', 'sedge', 'A4', 'A5', 25],
    ['two windings in series', 'fescue', 'A4', 'A6', 25 + 37],
    ['bell resistor, bell and strap in series', 'fescue', 'C1', 'A1', 3300 + 1000],
  ])('is the sum of what lies between: %s', (_, set, red, black, ohms) => {
    // open contacts beside it leak through 1 GΩ: R²/1 GΩ less, 20 mΩ of 4300 Ω
    expect(Math.abs((at(set, red, black)?.ohms ?? 0) - ohms)).toBeLessThan(1e-6 + (2 * ohms * ohms) / 1e9)
  })

  test('is open where nothing leads, and nothing at all where a terminal is missing', () => {
    expect(at('fescue', 'B3', 'B4')?.ohms).toBe(Number.POSITIVE_INFINITY)
    expect(at('fescue without a unit', 'A3', 'A4')?.ohms).toBe(Number.POSITIVE_INFINITY)
    expect(at('fescue', 'A7', 'B4')).toBeUndefined()
    expect(at('marram', 'A3', 'A4')).toBeUndefined()
  })

  test('follows hook and dial', () => {
    expect(at('sedge', 'A1', 'A2')?.ohms).toBe(Number.POSITIVE_INFINITY)
    expect(at('sedge', 'A1', 'A2', 'off-hook')?.ohms).toBeCloseTo(0.05, 6)
    expect(at('sedge', 'A2', 'A3', 'off-hook/break')?.ohms).toBe(Number.POSITIVE_INFINITY)
  })

  // bent parts lie between some of these: the same figures come from the meter, all cores lifted from the whole set
  test.each(['fescue', 'foxtail', 'brome'])(
    'is what the meter shows of %s with every core lifted',
    (name) => {
      const known = knownSet(name)
      const net = compile({ name: PLACE, sets: { [PLACE]: { set: known.sheet } } })
      const bench = benchOf(net, kitOf(undefined, undefined))
      const [place] = net.places
      if (place === undefined) throw new Error('no place')
      const lifted = place.cores.flatMap(({ branch }) => branch ?? [])
      for (const pair of candidatePairs([known]).filter((_, k) => k % 4 === 0)) {
        const red = net.nodeIndex.get(`${PLACE}/${pair.red}`) ?? -1
        const black = net.nodeIndex.get(`${PLACE}/${pair.black}`) ?? -1
        const condition = conditionIn(net, place, pair.condition)
        const shown = readBetween(bench, { red, black, condition, lifted }, { shows: 'ohms' })
        const expected = READER.read(known, pair)?.ohms ?? Number.NaN
        if (shown.value === null || shown.value > ODDS.reading.open.value)
          expect(expected).toBe(Number.POSITIVE_INFINITY)
        else expect(Math.abs(expected - shown.value)).toBeLessThan(1e-6 * Math.max(1, shown.value))
      }
    },
  )

  test('spreads by the tolerances of the parts and from set to set', () => {
    const winding = at('sedge', 'A4', 'A5')?.spread ?? 0
    // no tolerance is stated: 3 % from set to set alone, on a scale that is nearly a logarithm there
    expect(winding).toBeGreaterThan(0.029)
    expect(winding).toBeLessThan(0.03)
    // 5 % are three standard deviations besides
    expect(at('sedge', 'C1', 'C2')?.spread).toBeCloseTo(Math.hypot(0.03, Math.log(1.05) / 3), 5)
  })

  test('errs by the instrument and by old contacts', () => {
    expect(READER.error(0)).toBeCloseTo(Math.hypot(0.3, 0.3), 9)
    expect(READER.error(1000)).toBeCloseTo(Math.hypot(10, 0.3), 9)
    expect(READER.error(1e9)).toBeGreaterThan(1e7)
  })
})
