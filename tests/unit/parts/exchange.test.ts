import {
  type ImpedanceItem,
  impedanceOf,
  type LegSpec,
  leg,
  termination,
  wire,
} from 'ringproof/parts/exchange'
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
      }
    },
  )

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

  test('says why it stands in for something else, where it does', () => {
    expect(leg.standIn?.(spec('both'), DIRECT)).toBeUndefined()
    expect(leg.standIn?.({ ...spec('both'), because: 'a straight line' }, DIRECT)).toBe('a straight line')
    expect(leg.branches(spec('both'))).toHaveLength(1)
  })
})

describe('a wire of a cable', () => {
  const spec = { kind: 'wire' as const, ...ends, resistance: 88 }
  test('is its resistance, which is approximate for alternating current', () => {
    expect(hear((sink) => wire.law(spec, DIRECT, 'closed', sink)).branches).toEqual([
      { form: 'equation', a: 1, z: { re: 88, im: 0 }, e: { re: 0, im: 0 } },
    ])
    expect(wire.standIn?.(spec, DIRECT)).toBeUndefined()
    expect(wire.standIn?.(spec, alternating(1))).toBe('cable by its resistance alone')
    expect(wire.branches(spec)).toHaveLength(1)
  })
})
