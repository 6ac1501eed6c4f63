import * as fc from 'fast-check'
import { benchOf } from 'ringproof/meter/bench'
import { readBetween } from 'ringproof/meter/read'
import { looseValues, withChanges } from 'ringproof/meter/vary'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { SEED } from '../../support/seed.ts'
import { DIGITAL, leads, read } from './_bench.ts'

const SHOWS = { shows: 'ohms' } as const

interface Drawn {
  readonly parts: readonly string[]
  readonly last: string
}

/** Connected networks of resistors on up to five nodes, each with a tolerance. */
const networks: fc.Arbitrary<Drawn> = fc
  .record({
    tree: fc.array(fc.record({ up: fc.nat(99), ohms: fc.integer({ min: 10, max: 990 }) }), {
      minLength: 1,
      maxLength: 4,
    }),
    extra: fc.array(fc.tuple(fc.nat(99), fc.nat(99), fc.integer({ min: 10, max: 990 })), { maxLength: 3 }),
    percent: fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 7, maxLength: 7 }),
  })
  .map(({ tree, extra, percent }) => {
    const ends = [
      ...tree.map(({ up, ohms }, k) => [`n${k + 1}`, `n${up % (k + 1)}`, ohms] as const),
      ...extra.flatMap(([p, q, ohms]) => {
        const [from, to] = [p % (tree.length + 1), q % (tree.length + 1)]
        return from === to ? [] : [[`n${from}`, `n${to}`, ohms] as const]
      }),
    ]
    const parts = ends.map(
      ([from, to, ohms], k) =>
        `r${k}: {kind: resistor, from: ${from}, to: ${to}, resistance: ${ohms} Ω ± ${percent[k]} %}`,
    )
    return { parts, last: `n${tree.length}` }
  })

/** The reading with every choice of ends, by brute force. */
function corners({ parts, last }: Drawn): readonly number[] {
  const net = compiled(...parts)
  const loose = looseValues(net, 3)
  return Array.from({ length: 2 ** loose.length }, (_, bits) => {
    const changes = loose.map((one, k) => ({ loose: one, factor: (bits >> k) & 1 ? one.most : one.least }))
    const on = benchOf(withChanges(net, changes), DIGITAL)
    return readBetween(on, leads(on, 'n0', last), SHOWS).value ?? Number.NaN
  })
}

describe('the spread of a reading', () => {
  test('reaches exactly from the least to the most of all corners', () => {
    fc.assert(
      fc.property(networks, (drawn) => {
        const spread = read(drawn.parts, ['n0', drawn.last], SHOWS).spread
        const all = corners(drawn)
        expect(spread?.exact).toBe(true)
        assertClose(spread?.interval.least, Math.min(...all), { relative: 1e-9 }, 'least')
        assertClose(spread?.interval.most, Math.max(...all), { relative: 1e-9 }, 'most')
      }),
      { seed: SEED, numRuns: 25 },
    )
  })

  // Rayleigh's monotonicity law; Doyle and Snell, Random Walks and Electric Networks (1984), 1.4; from memory
  test('rests on this: no reading falls when one resistance rises', () => {
    fc.assert(
      fc.property(networks, fc.nat(6), fc.double({ min: 1, max: 50, noNaN: true }), (drawn, pick, factor) => {
        const net = compiled(...drawn.parts)
        const loose = looseValues(net, 3)
        const one = loose[pick % loose.length]!
        const value = (changed: typeof net) => {
          const on = benchOf(changed, DIGITAL)
          return readBetween(on, leads(on, 'n0', drawn.last), SHOWS).value ?? Number.POSITIVE_INFINITY
        }
        const before = value(net)
        expect(value(withChanges(net, [{ loose: one, factor }]))).toBeGreaterThanOrEqual(before * (1 - 1e-9))
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('by the sum of single changes is the same in series and no narrower than the change of any one', () => {
    const parts = [
      'a: {kind: resistor, from: p, to: m, resistance: 100 Ω ± 10 %}',
      'b: {kind: resistor, from: m, to: q, resistance: 200 Ω ± 5 %}',
    ]
    const { spread, band } = read(parts, ['p', 'q'], SHOWS)
    for (const { least, most } of [spread!.interval, spread!.worst]) {
      assertClose(least, 280, { relative: 1e-9 }, 'least')
      assertClose(most, 320, { relative: 1e-9 }, 'most')
    }
    // 0.9 % of what is shown and three counts of 0.1 Ω come on top, above 0.2 Ω of the test leads besides
    assertClose(band?.most, 320 * 1.009 + 0.3 + 0.2, { relative: 1e-9 }, 'band')
    assertClose(band?.least, 280 * 0.991 - 0.3, { relative: 1e-9 }, 'band')
  })

  test('leaves the range for the next one where a person would, and is unbounded on a range that was asked for', () => {
    const parts = ['a: {kind: resistor, from: p, to: q, resistance: 590 Ω ± 10 %}']
    assertClose(read(parts, ['p', 'q'], SHOWS).spread?.interval.most, 649, { relative: 1e-9 }, 'most')
    expect(read(parts, ['p', 'q'], { ...SHOWS, range: 'ohms-600' }).band?.most).toBeNull()
  })

  test('of a balanced bridge feels the resistor that carries nothing', () => {
    const arm = (name: string, from: string, to: string, percent: number) =>
      `${name}: {kind: resistor, from: ${from}, to: ${to}, resistance: 100 Ω ± ${percent} %}`
    const parts = [
      arm('a', 'n0', 'x', 5),
      arm('b', 'x', 'n3', 20),
      arm('c', 'n0', 'y', 20),
      arm('d', 'y', 'n3', 5),
      arm('bridge', 'x', 'y', 50),
    ]
    const all = corners({ parts, last: 'n3' })
    const spread = read(parts, ['n0', 'n3'], SHOWS).spread
    assertClose(spread?.interval.most, Math.max(...all), { relative: 1e-9 }, 'most')
    assertClose(spread?.interval.least, Math.min(...all), { relative: 1e-9 }, 'least')
  })

  test('of capacitance follows the capacitor, and of a part without tolerance is nothing', () => {
    const shows = { shows: 'capacitance' } as const
    const loose = read(
      ['c: {kind: capacitor, from: p, to: q, capacitance: 100 nF ± 10 %}'],
      ['p', 'q'],
      shows,
    )
    assertClose(loose.spread?.interval.least, 90e-9, { relative: 1e-9 }, 'least')
    assertClose(loose.spread?.worst.most, 110e-9, { relative: 1e-9 }, 'most')
    const firm = read(['c: {kind: capacitor, from: p, to: q, capacitance: 100 nF}'], ['p', 'q'], shows)
    expect(firm.spread?.interval).toEqual({ least: firm.value, most: firm.value })
  })
})

describe('a netlist with changed values', () => {
  const parts = [
    'a: {kind: resistor, from: p, to: q, resistance: 1.2 Ω ± 50 %}',
    'l: {kind: inductor, from: p, to: q, inductance: 1 H ± 20 %, resistance: 5 Ω ± 10 %}',
  ]
  test('keeps nodes and branches, and the old one as it was', () => {
    const net = compiled(...parts)
    const [first] = looseValues(net, 3)
    const changed = withChanges(net, [{ loose: first!, factor: 0.5 }])
    expect(changed.branches.map(({ id }) => id)).toEqual(net.branches.map(({ id }) => id))
    expect(changed.nodes).toBe(net.nodes)
    expect(net.parts[0]?.spec).toMatchObject({ resistance: { value: 1.2 } })
    expect(changed.parts[0]?.spec).toMatchObject({ resistance: { value: 0.6 } })
    expect(changed.branches[0]?.part).toBe(changed.parts[0])
    // below 1 Ω a resistor states its law as an equation
    expect([net.branches[0]?.form, changed.branches[0]?.form]).toEqual(['admittance', 'equation'])
  })

  test('finds every value with a tolerance wherever it stands in the spec', () => {
    expect(looseValues(compiled(...parts), 3).map(({ path, unit }) => [path.join('.'), unit])).toEqual([
      ['resistance', 'Ω'],
      ['inductance', 'H'],
      ['resistance', 'Ω'],
    ])
  })

  test('is made once for equal choices', () => {
    const on = benchOf(compiled(...parts), DIGITAL)
    const choice = [{ loose: 0, end: 'most' } as const]
    expect(on.at(choice)).toBe(on.at([...choice]))
    expect(on.at(choice)).not.toBe(on.at([{ loose: 0, end: 'least' }]))
  })
})
