import { describe, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { house } from './_house.ts'

/** Ω of the loop of a kilometre by its gauge and temperature, both wires, off a solved house. */
function loop(millimetres: number, celsius: number): number {
  const cable = `{type: twin, gauge: ${millimetres} mm, length: 1 km, temperature: ${celsius} °C}`
  const net = house({ part: '{kind: resistor, from: A1, to: A2, resistance: 100 Ω}', cable }, false)
  const forth = net.voltage('exchange/a').re - net.voltage('front/a').re
  const back = net.voltage('front/b').re - net.voltage('exchange/b').re
  return (forth + back) / net.current('set1/bell').re
}

const TEMPERATURES = [20, 0, 10, 25, 40] as const
/**
 * Ω per km of pair at 20, 0, 10, 25 and 40 °C: 2·1000/(58·π·d²/4)·(1 + 0.00393(T − 20)). Resistivity 1/58 Ω·mm²/m of
 * IEC 60028 (1925), secondary copy; coefficient from memory; grade DERIVED. A hand-made table had 54.204 for 0.90 mm at
 * 20 °C; the formula gives 54.2035, which is 54.203.
 */
const LOOPS = [
  [0.32, 428.758, 395.058, 411.908, 437.183, 462.458],
  [0.4, 274.405, 252.837, 263.621, 279.797, 295.973],
  [0.5, 175.619, 161.816, 168.717, 179.07, 189.423],
  [0.6, 121.958, 112.372, 117.165, 124.354, 131.544],
  [0.63, 110.619, 101.925, 106.272, 112.793, 119.314],
  [0.8, 68.601, 63.209, 65.905, 69.949, 73.993],
  [0.9, 54.203, 49.943, 52.073, 55.269, 58.464],
] as const
const THREE_PLACES = { relative: 0, absolute: 0.5e-3 + 1e-9 }

describe('a kilometre of a pair of copper', () => {
  test.each(LOOPS)('of %d mm has the loop resistance of the table, warm and cold', (millimetres, ...row) => {
    row.forEach((ohms, at) => {
      const celsius = TEMPERATURES[at] ?? 20
      assertClose(loop(millimetres, celsius), ohms, THREE_PLACES, `${celsius} °C`)
    })
  })

  /**
   * American gauges at 20 °C: diameter by d = 0.127·92^((36−n)/39) mm, ASTM B258, from memory; loop from 1/58, DERIVED;
   * one wire as a wire table prints it, secondary copy, SEEN-S: that table's copper is 0.02 % better or its
   * thousand feet are rounded, so it is held to 5e-4.
   */
  test.each([
    [19, 0.91162, 52.83, 26.41],
    [22, 0.6438, 105.927, 52.94],
    [24, 0.51056, 168.43, 84.2],
    [26, 0.40489, 267.814, 133.86],
  ])('of American gauge %d has the loop resistance of its diameter', (gauge, printed, ohms, wire) => {
    const millimetres = 0.127 * 92 ** ((36 - gauge) / 39)
    assertClose(millimetres, printed, { relative: 0, absolute: 0.5e-5 }, 'diameter')
    const found = loop(millimetres, 20)
    assertClose(found, ohms, THREE_PLACES, 'loop')
    assertClose(found / 2, wire, { relative: 5e-4 }, 'one wire in the printed table')
  })

  test('of gauge 22 has at 25 °C the 16.46 Ω in a thousand feet that a trade article prints', () => {
    // secondary copy, SEEN-S: four digits
    const found = loop(0.127 * 92 ** (14 / 39), 25) / 2
    assertClose(found * 0.3048, 16.46, { relative: 0, absolute: 0.005 }, 'thousand feet')
  })
})
