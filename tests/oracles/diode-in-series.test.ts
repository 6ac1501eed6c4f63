import { all, create } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { resistor, solved, source, two } from './_circuit.ts'

const math = create(all ?? {}, { number: 'BigNumber', precision: 50 })
type Big = ReturnType<typeof big>
const big = (value: number | string) => math.bignumber(value)

/** Boltzmann's constant and the charge of an electron, J/K and C. SI brochure, 9th edition (2019), exact. */
const BOLTZMANN = big('1.380649e-23')
const CHARGE = big('1.602176634e-19')

/** w with w·eʷ = e^x, x positive or negative, by Halley's iteration on w + ln w − x in 50 digits. */
function lambert(x: Big): Big {
  let w = x.gt(1) ? x.minus(x.ln()) : x.exp()
  for (let step = 0; step < 200; step += 1) {
    const f = w.plus(w.ln()).minus(x)
    const slope = w.plus(1).div(w)
    const change = f.div(slope.plus(f.div(w.times(w).times(slope).times(2))))
    w = w.minus(change)
    if (change.abs().lte(w.abs().times('1e-45'))) return w
  }
  throw new Error('no convergence')
}

/**
 * The current of a source of V behind R in a junction of I_s and n at some °C:
 * I = (nV_t/R)·W((I_s R/nV_t)·exp((V + I_s R)/nV_t)) − I_s.
 * @source the closed form of Shockley's law with a series resistance, textbooks, from memory; grade DERIVED
 */
function current(volts: number, ohms: number, saturation: number, emission: number, celsius: number): number {
  const unit = BOLTZMANN.div(CHARGE).times(big(celsius).plus('273.15')).times(emission)
  const drop = big(saturation).times(ohms)
  const x = drop.div(unit).ln().plus(big(volts).plus(drop).div(unit))
  return unit.div(ohms).times(lambert(x)).minus(saturation).toNumber()
}

/** I_s in A, n, °C. */
type Junction = readonly [saturation: number, emission: number, celsius: number]
const JUNCTIONS: readonly Junction[] = [
  [1e-9, 1.8, 20],
  [1e-14, 1, 27],
  [5e-6, 1.2, 40],
  [2e-12, 2, -10],
]
const diode = (from: string, to: string, [saturation, emission, celsius]: Junction, more = '') =>
  two(
    'd',
    'diode',
    from,
    to,
    `saturation current: ${saturation} A, emission: ${emission}, temperature: ${celsius} °C${more}`,
  )

describe('the W of e^x by which all this is checked', () => {
  test('has its known values: the omega constant, W(e) = 1 and W(2e²) = 2', () => {
    // omega constant 0.567143290409783872999968662210… (textbooks, from memory)
    expect(lambert(big(0)).toString().slice(0, 32)).toBe('0.567143290409783872999968662210')
    expect(lambert(big(1)).minus(1).abs().lt('1e-45')).toBe(true)
    expect(
      lambert(big(2).plus(big(2).ln()))
        .minus(2)
        .abs()
        .lt('1e-45'),
    ).toBe(true)
  })
})

describe.each(JUNCTIONS)('a diode of %d A, n = %d at %d °C', (...junction) => {
  test.each([0.02, 0.3, 0.65, 1, 5, 48, 300])('behind a resistor carries what W says of %d V', (volts) => {
    for (const ohms of [1, 470, 22_000, 1e6]) {
      const net = solved([
        source('e', 'p', volts),
        resistor('r', 'p', 'q', ohms),
        diode('q', 'earth', junction),
      ])
      const expected = current(volts, ohms, ...junction)
      assertClose(net.current('d'), expected, { relative: 1e-9 }, `${ohms} Ω`)
      assertClose(
        net.voltage('q'),
        volts - expected * ohms,
        { relative: 0, absolute: 1e-9 * volts },
        `${ohms} Ω`,
      )
    }
  })

  test('with a resistance of its own carries the same', () => {
    for (const volts of [0.3, 1, 5]) {
      for (const ohms of [0.5, 20, 1000]) {
        const net = solved([
          source('e', 'p', volts),
          diode('p', 'earth', junction, `, resistance: ${ohms} Ω`),
        ])
        assertClose(
          net.current('d'),
          current(volts, ohms, ...junction),
          { relative: 1e-9 },
          `${volts} V, ${ohms} Ω`,
        )
      }
    }
  })

  test('with both resistances carries what W says of their sum', () => {
    const parts = [
      source('e', 'p', 5),
      resistor('r', 'p', 'q', 180),
      diode('q', 'earth', junction, ', resistance: 20 Ω'),
    ]
    assertClose(solved(parts).current('d'), current(5, 200, ...junction), { relative: 1e-9 }, 'current')
  })

  test('the other way round lets its saturation current pass, which W says too', () => {
    for (const ohms of [470, 22_000]) {
      const net = solved([source('e', 'p', 5), resistor('r', 'p', 'q', ohms), diode('earth', 'q', junction)])
      const expected = current(-5, ohms, ...junction)
      // the node stands at 5 V less a drop that may be far below its rounding
      assertClose(net.current('d'), expected, { relative: 1e-9, absolute: 1e-15 / ohms }, `${ohms} Ω`)
    }
  })
})

test('a diode given by its drop carries that current at that drop, and W finds the rest', () => {
  // 0.7 V at 10 mA with 1 Ω of its own: I_s from the definition, then the closed form
  const unit = BOLTZMANN.div(CHARGE).times('293.15').times('1.8')
  const saturation = big('0.01').div(big('0.69').div(unit).exp().minus(1)).toNumber()
  const parts = (volts: number) => [
    source('e', 'p', volts),
    resistor('r', 'p', 'q', 99),
    two(
      'd',
      'diode',
      'q',
      'earth',
      'drop: 0.7 V at 10 mA, emission: 1.8, temperature: 20 °C, resistance: 1 Ω',
    ),
  ]
  assertClose(solved(parts(0.7 + 0.99)).current('d'), 0.01, { relative: 1e-9 }, 'the given point')
  for (const volts of [0.4, 3, 50]) {
    assertClose(
      solved(parts(volts)).current('d'),
      current(volts, 100, saturation, 1.8, 20),
      { relative: 1e-9 },
      `${volts} V`,
    )
  }
})
