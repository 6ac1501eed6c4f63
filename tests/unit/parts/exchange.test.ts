import { type ImpedanceItem, impedanceOf, type LegSpec, leg, termination } from 'ringproof/parts/exchange'
import { readQuantity } from 'ringproof/quantities/read-quantity'
import type { Dimension } from 'ringproof/quantities/units'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { alternating, DIRECT, hear } from './_heard.ts'

const OPEN = { form: 'equation', a: 0, z: { re: 1, im: 0 }, e: { re: 0, im: 0 } }
const ends = { from: 'p', to: 'q' }

function item(text: string, dimension: Dimension): ImpedanceItem {
  const read = readQuantity(text, dimension, {})
  if (!read.ok) throw new Error(text)
  return read.quantity
}
const network = (series: string, shunt: string, capacitance: string): readonly ImpedanceItem[] => [
  item(series, 'resistance'),
  { beside: [item(shunt, 'resistance'), item(capacitance, 'capacitance')] },
]

/**
 * Element values: harmonised reference ZR of TBR 21 / ES 203 021-2 (from memory), the 370 Ω national reference
 * (from memory), AS/CA S002:2010 figure 5 (from memory). Impedances derived from R + R₂/(1 + jωR₂C), four decimals.
 */
const NETWORKS = [
  [
    '270 Ω',
    '750 Ω',
    '150 nF',
    {
      300: [987.7251, -152.199],
      800: [838.2786, -321.354],
      1000: [770.1171, -353.512],
      1020: [763.4748, -355.7931],
      1600: [599.0772, -372.1775],
      3400: [380.6858, -266.0131],
    },
  ],
  [
    '370 Ω',
    '620 Ω',
    '310 nF',
    {
      300: [918.0649, -198.5576],
      800: [690.6862, -309.8158],
      1000: [622.2, -304.5639],
      1020: [616.2972, -303.3842],
      1600: [500.9836, -253.0872],
      3400: [404.717, -142.5456],
    },
  ],
  [
    '220 Ω',
    '820 Ω',
    '120 nF',
    {
      300: [1012.728, -147.0349],
      800: [878.8243, -325.8626],
      1000: [813.2347, -366.7765],
      1020: [806.6802, -369.9785],
      1600: [634.4417, -409.9759],
      3400: [371.324, -318.0986],
    },
  ],
] as const
/** Half a unit in the fourth decimal of each part, and a hair for the rounding of the last digit itself. */
const FOUR_DECIMALS = { relative: 0, absolute: 0.00005 * Math.SQRT2 * 1.01 }

describe('a terminating impedance', () => {
  test.each(NETWORKS)(
    'of %s in series with %s beside %s has the derived values',
    (series, shunt, capacitance, table) => {
      for (const [frequency, [re, im]] of Object.entries(table)) {
        const z = impedanceOf(network(series, shunt, capacitance), 2 * Math.PI * Number(frequency))
        assertClose(z, { re, im }, FOUR_DECIMALS, `${series} network at ${frequency} Hz`)
        // the two halves that a line has of it
        const half = {
          kind: 'termination' as const,
          ...ends,
          impedance: network(series, shunt, capacitance),
          share: 0.5,
          speech: 0,
        }
        const point = alternating(2 * Math.PI * Number(frequency))
        const [heard] = hear((sink) => termination.law(half, point, 'closed', sink)).branches
        const stated = heard?.form === 'equation' ? { re: 2 * heard.z.re, im: 2 * heard.z.im } : undefined
        assertClose(stated, { re, im }, FOUR_DECIMALS, `${series} termination at ${frequency} Hz`)
      }
    },
  )

  test('has the return losses against 600 Ω and against another that are derived from them', () => {
    // 20 log |(Za + Zb)/(Za − Zb)|, derived; four decimals
    const of = (k: 0 | 1 | 2, frequency: number) => {
      const [series, shunt, capacitance] = NETWORKS[k]
      return impedanceOf(network(series, shunt, capacitance), 2 * Math.PI * frequency)
    }
    type Z = { readonly re: number; readonly im: number }
    const loss = (p: Z, q: Z) =>
      20 * Math.log10(Math.hypot(p.re + q.re, p.im + q.im) / Math.hypot(p.re - q.re, p.im - q.im))
    const plain = { re: 600, im: 0 }
    const table: Readonly<Record<number, readonly number[]>> = {
      300: [11.6624, 12.2199, 11.355, 27.2942, 25.2012],
      1000: [11.1424, 12.3079, 10.7348, 19.8988, 17.9387],
      3400: [9.3885, 12.4592, 8.3292, 16.9494, 14.066],
    }
    for (const [written, row] of Object.entries(table)) {
      const f = Number(written)
      const found = [
        loss(of(0, f), plain),
        loss(of(1, f), plain),
        loss(of(2, f), plain),
        loss(of(0, f), of(1, f)),
        loss(of(1, f), of(2, f)),
      ]
      for (const [k, expected] of row.entries())
        assertClose(found[k], expected, { relative: 0, absolute: 0.0000505 }, `${f} Hz, column ${k}`)
    }
  })

  test('holds inductances and nested groups as well', () => {
    // closed form, ω = 2 rad/s: j2·3 beside 6 Ω = 3 + j3; with 1 Ω in front 4 + j3
    const z = impedanceOf(
      [
        item('1 Ω', 'resistance'),
        {
          beside: [
            item('3 H', 'inductance'),
            { beside: [item('12 Ω', 'resistance'), item('12 Ω', 'resistance')] },
          ],
        },
      ],
      2,
    )
    assertClose(z, { re: 4, im: 3 }, { relative: 1e-14 }, 'nested group')
  })

  test('with a short in a group is no impedance there, whatever stands beside it', () => {
    const group = (...items: readonly ImpedanceItem[]) => impedanceOf([{ beside: items }], 5)
    expect(group(item('0 Ω', 'resistance'), item('310 nF', 'capacitance'))).toEqual({ re: 0, im: 0 })
    expect(group(item('1 H', 'inductance'), item('0 H', 'inductance'))).toEqual({ re: 0, im: 0 })
    assertClose(
      group(item('4 Ω', 'resistance'), item('0 F', 'capacitance')),
      { re: 4, im: 0 },
      { relative: 1e-14 },
      'no capacitor',
    )
  })

  test('through which nothing passes is an open branch, never a law without numbers', () => {
    const farad = item('1 F', 'capacitance')
    const henry = item('1 H', 'inductance') // resonates with 1 F at 1 rad/s exactly
    for (const impedance of [
      [item('370 Ω', 'resistance'), item('0 F', 'capacitance')],
      [{ beside: [farad, henry] }],
    ]) {
      const spec = { kind: 'termination' as const, ...ends, impedance, share: 0.5, speech: 0.5 }
      expect(hear((sink) => termination.law(spec, alternating(1), 'closed', sink)).branches).toEqual([OPEN])
    }
  })

  test('of anything but ohms, farads and henries is a mistake of ours', () => {
    expect(() => impedanceOf([item('1 V', 'voltage')], 1)).toThrow(TypeError)
  })

  test('stands as the stated share, with the speech of the far end, for alternating current in its own states alone', () => {
    const spec = {
      kind: 'termination' as const,
      ...ends,
      impedance: [item('600 Ω', 'resistance')],
      share: 0.5,
      speech: 0.25,
    }
    const heard = (at: typeof DIRECT, gate: 'open' | 'closed') =>
      hear((sink) => termination.law(spec, at, gate, sink)).branches
    expect(heard(alternating(1000), 'closed')).toEqual([
      { form: 'equation', a: 1, z: { re: 300, im: 0 }, e: { re: 0.25, im: 0 } },
    ])
    expect(heard(alternating(1000), 'open')).toEqual([OPEN])
    expect(heard(DIRECT, 'closed')).toEqual([OPEN])
    expect(termination.branches(spec)).toHaveLength(1)
  })
})

describe('a leg of the exchange', () => {
  const spec = (passes: LegSpec['passes']): LegSpec => ({
    kind: 'leg',
    ...ends,
    resistance: 200,
    direct: -50,
    alternating: 75,
    passes,
  })
  const heard = (passes: LegSpec['passes'], at: typeof DIRECT, gate: 'open' | 'closed' = 'closed') =>
    hear((sink) => leg.law(spec(passes), at, gate, sink)).branches

  test('of the feed carries direct current alone', () => {
    expect(heard('direct', DIRECT)).toEqual([
      { form: 'equation', a: 1, z: { re: 200, im: 0 }, e: { re: -50, im: 0 } },
    ])
    expect(heard('direct', alternating(1))).toEqual([OPEN])
  })

  test('of the ringing supply carries both', () => {
    expect(heard('both', DIRECT)).toMatchObject([{ e: { re: -50 } }])
    expect(heard('both', alternating(1))).toMatchObject([{ a: 1, e: { re: 75, im: 0 } }])
    expect(heard('both', DIRECT, 'open')).toEqual([OPEN])
  })

  test('has the EMF of its wave at the frequency of it alone, and is a short through its resistance elsewhere', () => {
    const ringing = { ...spec('both'), wave: { frequency: 25 } }
    const emf = (frequency: number) =>
      hear((sink) => leg.law(ringing, alternating(2 * Math.PI * frequency), 'closed', sink)).branches
    expect(emf(25)).toEqual([{ form: 'equation', a: 1, z: { re: 200, im: 0 }, e: { re: 75, im: 0 } }])
    for (const other of [20, 24.999, 50, 75, 1000]) {
      expect(emf(other)).toEqual([{ form: 'equation', a: 1, z: { re: 200, im: 0 }, e: { re: 0, im: 0 } }])
    }
  })

  test('is the same elements for the second opinion', () => {
    const heardElements = (
      one: LegSpec,
      at: Parameters<NonNullable<typeof leg.elements>>[1],
      gate: 'open' | 'closed',
    ) => {
      const heard: unknown[] = []
      leg.elements?.(one, at, gate, {
        open: (branch) => heard.push(['open', branch]),
        series: (...all) => heard.push(['series', ...all]),
        beside: (...all) => heard.push(['beside', ...all]),
        coupled: (...all) => heard.push(['coupled', ...all]),
      })
      return heard
    }
    const limited = { ...spec('direct'), limit: 0.06 }
    expect(heardElements(spec('both'), alternating(1), 'closed')).toEqual([['series', 0, 200, 0, 75]])
    expect(heardElements(spec('direct'), alternating(1), 'closed')).toEqual([['open', 0]])
    expect(heardElements(spec('both'), DIRECT, 'open')).toEqual([['open', 0]])
    expect(heardElements(limited, DIRECT, 'closed')).toEqual([['series', 0, 200, 0, -50]])
    const beyond = { ...DIRECT, direct: () => ({ voltage: -10, current: 0.06 }) }
    expect(heardElements(limited, beyond, 'closed')).toEqual([
      ['beside', 0, Number.POSITIVE_INFINITY, 0, 0.06],
    ])
  })
})
