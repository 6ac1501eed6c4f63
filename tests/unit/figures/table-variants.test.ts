import { seededRandom } from 'ringproof/algebra/random'
import { between } from 'ringproof/figures/between'
import type { FigurePlan } from 'ringproof/figures/figure'
import { furthest, tableVariants } from 'ringproof/figures/table-variants'
import { freshVariants, OPEN, UNFIXED, UNSETTLED } from 'ringproof/figures/variants'
import type { Change } from 'ringproof/solver/variants/change'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../support/seed.ts'
import { branch, circuit, DIRECT, node } from '../solver/_circuit.ts'
import { faultChanges, somePlans } from './_faults.ts'

/** Nine digits, where an amount is more than a millionth of the sound one; currents below that are nothing. */
const NINE_DIGITS = 1e-9

/** A set, where it stands, and whether every single change is tried. */
const SETS: readonly (readonly [set: string, on: string | undefined, every: boolean])[] = [
  ['fescue', undefined, true],
  ['sedge', undefined, true],
  ['foxtail', undefined, true],
  ['melick', undefined, true],
  ['fescue', 'adapter-port', false],
]

describe.each(SETS)('figures of %s on %s after faults, from tables of updates', (target, on, every) => {
  const { net, place, plans } = somePlans(target, on)
  const changes = faultChanges(net, place)
  const fresh = freshVariants(net, plans, changes)
  const sound = new Float64Array(plans.length)
  fresh.read([], sound)
  const table = tableVariants(net, plans, changes)
  const found = new Float64Array(plans.length)
  const expected = new Float64Array(plans.length)

  function compare(made: readonly number[]): void {
    table.read(made, found)
    fresh.read(made, expected)
    const off = furthest(found, expected, sound)
    if (off > NINE_DIGITS) expect(told(made), `off by ${off}`).toEqual([])
  }

  /** The changes, and every amount that differs. */
  function told(made: readonly number[]): readonly unknown[] {
    const differ = plans.flatMap(({ id, subject, condition }, k) => {
      const [one, other] = [found[k] ?? 0, expected[k] ?? 0]
      const apart = furthest(Float64Array.of(one), Float64Array.of(other), sound.subarray(k, k + 1))
      return apart > NINE_DIGITS ? [[id, subject, condition, String(one), String(other)]] : []
    })
    return [made.map((c) => changes[c]), ...differ]
  }

  if (every)
    test('are what fresh solves say of the sound set and of every single change', () => {
      compare([])
      changes.forEach((_, c) => {
        compare([c])
      })
      // nearly all by update, and hardly anything that a person could ask about is refused
      expect(table.counts.updated).toBeGreaterThan(0.98 * (table.counts.updated + table.counts.fresh))
    })

  test('are what fresh solves say of pairs, triples and quadruples', () => {
    const random = seededRandom(SEED)
    for (let k = 0; k < 60; k += 1) {
      const made = Array.from({ length: 2 + (k % 3) }, () => Math.floor(random() * changes.length))
      compare([...new Set(made)])
    }
  })
})

describe('figures of variants from tables of updates', () => {
  const net = circuit(`
    e: {kind: voltage-source, from: s, to: earth, direct: 10 V}
    r: {kind: resistor, from: s, to: p, resistance: 1 kΩ}
    l: {kind: strap, from: p, to: q}
    m: {kind: resistor, from: q, to: earth, resistance: 3 kΩ}
    c: {kind: capacitor, from: p, to: x, capacitance: 1 µF}
    n: {kind: resistor, from: x, to: y, resistance: 50 Ω}
  `)
  const { condition } = DIRECT
  const voltage = (name: string): FigurePlan => ({
    id: 'loop.voltage',
    subject: name,
    condition,
    unit: 'V',
    taps: [{ question: DIRECT, voltage: [node(net, name), 0] }],
    value: (readings) => readings[0] ?? 0,
  })
  const said = (value: ReturnType<FigurePlan['value']>): FigurePlan => ({
    ...voltage('q'),
    value: () => value,
  })
  const ohms = (p: string, q: string) => between(net, node(net, p), node(net, q), { condition })
  const read = (plans: readonly FigurePlan[], changes: readonly Change[], made: readonly number[]) => {
    const table = tableVariants(net, plans, changes)
    const out = new Float64Array(plans.length)
    table.read(made, out)
    const fresh = new Float64Array(plans.length)
    freshVariants(net, plans, changes).read(made, fresh)
    expect(furthest(out, fresh, out)).toBeLessThan(NINE_DIGITS)
    return { amounts: [...out], counts: table.counts }
  }

  test('say open where a probe can drive nothing, and unfixed where nothing fixes a voltage', () => {
    const plans = [ohms('p', 'earth'), voltage('q'), voltage('x'), ohms('x', 'earth'), ohms('x', 'y')]
    const cut: Change[] = [{ lifted: branch(net, 'm') }, { lifted: branch(net, 'l') }]
    const { amounts, counts } = read(plans, cut, [0, 1])
    expect(amounts.slice(1, 4)).toEqual([UNFIXED, UNFIXED, OPEN])
    expect(amounts[0]).toBeCloseTo(1000, 9)
    expect(amounts[4]).toBeCloseTo(50, 9)
    expect(counts).toEqual({ updated: 2, fresh: 0, refused: 0 })
  })

  test('join what was apart, with the probe in it', () => {
    const join: Change[] = [{ bridge: { from: node(net, 'y'), to: node(net, 'q'), ohms: 20 } }]
    const { amounts, counts } = read([voltage('x'), ohms('x', 'earth')], join, [0])
    // nothing flows in what hangs there: 10 V · 3 kΩ / (4 kΩ + 10 mΩ), and 70 Ω before 1 kΩ + 10 mΩ beside 3 kΩ
    expect(amounts[0]).toBeCloseTo(30_000 / 4000.01, 12)
    expect(amounts[1]).toBeCloseTo(70 + (1000.01 * 3000) / 4000.01, 9)
    expect(counts.fresh).toBe(0)
  })

  test('say unsettled of a source that is shorted', () => {
    const short: Change[] = [{ bridge: { from: node(net, 's'), to: 0, ohms: 0 } }]
    const { amounts, counts } = read([voltage('q')], short, [0])
    expect(amounts).toEqual([UNSETTLED])
    expect(counts).toEqual({ updated: 0, fresh: 1, refused: 1 })
  })

  test('take over what a plan says instead of a number', () => {
    const plans = [
      said('open'),
      said('undetermined'),
      said('no-convergence'),
      said('beyond-range'),
      said(1 / 0),
    ]
    expect(read(plans, [], []).amounts).toEqual([OPEN, UNFIXED, UNSETTLED, OPEN, OPEN])
  })

  test('are compared with fresh solves, one variant in so many by seed', () => {
    const changes: Change[] = ['r', 'm'].map((name) => ({ within: { branch: branch(net, name), ohms: 50 } }))
    const table = tableVariants(net, [voltage('q')], changes, { seed: 3, every: 1 })
    const out = new Float64Array(1)
    for (const made of [[0], [1], [0, 1], []]) table.read(made, out)
    expect(table.sampled).toBe(4)
    expect(table.worst).toBeLessThan(1e-13)
    const never = tableVariants(net, [voltage('q')], changes, { every: 1e9 })
    never.read([0], out)
    expect(never.sampled).toBe(0)
  })

  test('a number beside none is as far off as can be', () => {
    const one = Float64Array.of(1)
    expect(furthest(one, Float64Array.of(Number.NaN), one)).toBe(Number.POSITIVE_INFINITY)
    expect(furthest(one, Float64Array.of(OPEN), one)).toBe(Number.POSITIVE_INFINITY)
    expect(furthest(Float64Array.of(1.5), one, Float64Array.of(OPEN))).toBe(0.5)
  })
})
