import fc from 'fast-check'
import { equivalentPi } from 'ringproof/parts/equivalent-pi'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { modulus, polar } from '../../support/complex.ts'
import { SEED } from '../../support/seed.ts'
import {
  type Chain,
  cascade,
  chainOf,
  determinant,
  imageOf,
  inputOf,
  pair,
  piChain,
  root,
} from './_two-port.ts'

const NEPER = 20 / Math.LN10
const degrees = ({ re, im }: { re: number; im: number }) => (Math.atan2(im, re) * 180) / Math.PI

/** J. Bird, Electrical Circuit Theory and Technology: ohms, henries, farads, siemens per km, Hz. */
const BIRD = {
  '44.2': [0, 4e-3, 0.004e-6, 0, 1000],
  '44.7': [15, 3.4e-3, 10e-9, 3e-6, 2000],
  '44.9': [25, 5e-3, 0.04e-6, 80e-6, 1000],
  '44.10': [8, 3e-3, 7500e-12, 0.25e-6, 1000],
  '44.12': [80, 0.2, 5e-9, 2e-6, 1500],
} as const
const bird = (example: keyof typeof BIRD, kilometres = 1) => {
  const [r, l, c, g, frequency] = BIRD[example]
  const constants = pair(r, l, c, g, kilometres)
  return { constants, frequency, ...imageOf(chainOf(constants, frequency)) }
}
const LAST = (places: number) => ({ relative: 0, absolute: 0.5 * 10 ** -places })

describe('a pair of a uniform line', () => {
  test('has the characteristic impedances of Bird 44.7, 44.9 and 44.10', () => {
    const { zc: first } = bird('44.7')
    assertClose(modulus(first), 600.2017, LAST(4), '44.7 modulus')
    assertClose(degrees(first), -8.9887, LAST(4), '44.7 angle')
    const { zc: second } = bird('44.9')
    assertClose(modulus(second), 390.1577, LAST(4), '44.9 modulus')
    assertClose(degrees(second), -10.4276, LAST(4), '44.9 angle')
    const { zc: third } = bird('44.10', 7)
    assertClose(modulus(third), 659.1877, LAST(4), '44.10 modulus')
    assertClose(degrees(third), -11.3465, LAST(4), '44.10 angle')
  })

  test('has the attenuation and phase of Bird 44.9, 44.10, 44.12 and 44.2, and so their wavelengths and speeds', () => {
    const of = (example: keyof typeof BIRD) => bird(example).theta
    assertClose(of('44.9').re, 0.0484447, LAST(7), '44.9 attenuation')
    assertClose(of('44.9').im, 0.0907886, LAST(7), '44.9 phase')
    assertClose(of('44.10').re, 0.00627308, LAST(8), '44.10 attenuation')
    assertClose(of('44.10').im, 0.0304239, LAST(7), '44.10 phase')
    assertClose((2 * Math.PI) / of('44.10').im, 206.521, LAST(3), '44.10 wavelength')
    assertClose((2 * Math.PI * 1000) / of('44.10').im, 206_521, LAST(0), '44.10 speed')
    assertClose(of('44.12').re, 0.0126491, LAST(7), '44.12 attenuation')
    assertClose(of('44.12').im, 0.2980376, LAST(7), '44.12 phase')
    assertClose((2 * Math.PI * 1500) / of('44.12').im, 31_622.78, LAST(2), '44.12 speed')
    assertClose(of('44.2').re, 0, { relative: 0, absolute: 1e-12 }, '44.2 attenuation')
    assertClose(of('44.2').im, 0.0251327, LAST(7), '44.2 phase')
    assertClose((2 * Math.PI) / of('44.2').im, 250, { relative: 1e-9 }, '44.2 wavelength')
  })

  test('has no distortion with the inductance of Bird 44.11: attenuation and speed the same at any frequency', () => {
    // cable 10 Ω, 1.5 mH, 1.2 µS, 0.06 µF with C·R/G − L = 0.4985 H more: the printed four digits
    const cable = (frequency: number) =>
      imageOf(chainOf(pair(10, 0.0015 + 0.4985, 0.06e-6, 1.2e-6, 1), frequency)).theta
    const low = cable(100)
    const high = cable(800)
    assertClose(low.re, Math.sqrt(10 * 1.2e-6), { relative: 1e-6 }, 'attenuation √(RG)')
    assertClose(high.re, low.re, { relative: 1e-6 }, 'attenuation at 800 Hz')
    assertClose(high.im / 800, low.im / 100, { relative: 1e-6 }, 'delay')
  })

  test('of Bird 44.6 has the geometric mean of its open and shorted impedances', () => {
    // open 800 Ω at −50°, shorted 413 Ω at −20°: 574.8043 Ω at −35°. The line that has them: tanh γl = √(413/800)
    const open = polar(800, -50)
    const short = polar(413, -20)
    const zc = root({
      re: open.re * short.re - open.im * short.im,
      im: open.re * short.im + open.im * short.re,
    })
    assertClose(modulus(zc), 574.8043, LAST(4), 'modulus')
    assertClose(degrees(zc), -35, { relative: 1e-12 }, 'angle')
    const { constants, frequency } = bird('44.9', 13)
    const chain = chainOf(constants, frequency)
    const image = imageOf(chain).zc
    const product = modulus(inputOf(chain)) * modulus(inputOf(chain, { re: 0, im: 0 }))
    assertClose(Math.sqrt(product), modulus(image), { relative: 1e-12 }, 'of a cable of ours')
  })
})

/**
 * R, L, C, G of a kilometre at f. @source the parametric form of the DSL standards (G.996.1, TS 101 388),
 * secondary copies; constants of 26 and 24 AWG and drop wire from the same, of 0.4 mm from memory
 */
function parametric(
  [r0, ac, l0, linf, fm, b, cinf, c0, ce, g0, ge]: readonly number[],
  f: number,
): [number, number, number, number] {
  const x = (f / (fm! * 1000)) ** b!
  return [
    (r0! ** 4 + ac! * f * f) ** 0.25,
    ((l0! + linf! * x) / (1 + x)) * 1e-6,
    (cinf! + c0! * f ** -ce!) * 1e-9,
    g0! * f ** ge!,
  ]
}
const AWG26 = [286.17578, 0.1476962, 675.36888, 488.95186, 806.33863, 0.92930728, 49, 0, 0, 43e-9, 0.7]
const AWG24 = [174.55888, 0.053073481, 617.29539, 478.97099, 553.76, 1.1529766, 50, 0, 0, 2.3487476e-13, 1.38]
const DROP = [179, 0.03589, 695, 585, 1000, 1.2, 55, 1, 0.1, 0.5e-9, 1.033]
const PE04 = [280, 0.0969, 587.132, 426, 745.9, 1.385, 50, 0, 0, 0, 0]

describe('cables by their parametric constants', () => {
  test.each([
    ['26 AWG', AWG26, 800, 286.1768, 675.0678, 1.6365, 0.1871, 773.7519, -750.389],
    ['26 AWG', AWG26, 1020, 286.1774, 674.9917, 1.8436, 0.21176, 685.9137, -663.9148],
    ['26 AWG', AWG26, 100e3, 300.7749, 651.9414, 10.7713, 3.75611, 122.1762, -39.7393],
    ['26 AWG', AWG26, 1e6, 626.8507, 572.8689, 25.4049, 33.41122, 108.5421, -9.2598],
    ['24 AWG', AWG24, 800, 174.5605, 617.2219, 1.2751, 0.14943, 594.5649, -584.0859],
    ['24 AWG', AWG24, 1020, 174.5615, 617.1982, 1.4363, 0.16914, 527.8451, -516.0143],
    ['24 AWG', AWG24, 100e3, 195.447, 600.4163, 7.5134, 3.54959, 112.9887, -27.5273],
    ['24 AWG', AWG24, 1e6, 482.0614, 525.4398, 20.3886, 32.29032, 102.7844, -7.4571],
    ['drop wire', DROP, 1000, 179.0016, 694.9724, 1.5173, 0.17868, 513.2748, -500.0049],
    ['0.4 mm, from memory', PE04, 800, 280.0007, 587.1196, 1.6207, 0.18857, 750.2972, -742.4308],
  ] as const)('%s at %i Hz', (_name, constants, f, r, l, alpha, beta, re, im) => {
    const [ohms, henries, farads, siemens] = parametric(constants, f)
    assertClose(ohms, r, LAST(4), 'R')
    assertClose(henries * 1e6, l, LAST(4), 'L')
    // ten metres, far below half a wave, so that the phase is read without whole turns
    const { zc, theta } = imageOf(chainOf(pair(ohms, henries, farads, siemens, 0.01), f))
    assertClose(100 * theta.re * NEPER, alpha, LAST(4), 'dB/km')
    assertClose(100 * theta.im, beta, LAST(5), 'rad/km')
    assertClose(zc, { re, im }, { relative: 0, absolute: 0.00005 * Math.SQRT2 * 1.01 }, 'Zc')
  })

  test.each([
    // constants at 0 Hz of ETR 328, from memory; losses derived
    [0.32, 409, 607.639, 40, [1.7547, 1.96, 1.9793, 2.4723]],
    [0.4, 280, 587.132, 50, [1.6207, 1.8096, 1.8274, 2.28]],
    [0.5, 179, 673.574, 50, [1.2904, 1.4394, 1.4533, 1.8078]],
    [0.63, 113, 699.258, 45, [0.9668, 1.0767, 1.087, 1.3462]],
    [0.9, 55, 750.796, 40, [0.6241, 0.6918, 0.6981, 0.853]],
  ])('a pair of %f mm loses what its constants say', (_gauge, r, l, c, losses) => {
    for (const [k, f] of [800, 1000, 1020, 1600].entries()) {
      const { theta } = imageOf(chainOf(pair(r, l * 1e-6, c * 1e-9, 0, 1), f))
      assertClose(theta.re * NEPER, losses[k] ?? 0, LAST(4), `${f} Hz`)
    }
  })
})

describe('the equivalent π', () => {
  const constants = pair(168, 0.7e-3, 50e-9, 1e-6, 5)

  test('is the limit of a chain of many short lumped sections, which it nears with the square of their number', () => {
    const exact = chainOf(constants, 3400)
    const apart = (n: number): number => {
      const w = 2 * Math.PI * 3400
      const z = { re: (168 * 5) / n, im: (w * 0.7e-3 * 5) / n }
      const y = { re: (1e-6 * 5) / n / 2, im: (w * 50e-9 * 5) / n / 2 }
      let whole: Chain = piChain(z, y)
      for (let k = 1; k < n; k += 1) whole = cascade(whole, piChain(z, y))
      return modulus({ re: whole.a.re - exact.a.re, im: whole.a.im - exact.a.im })
    }
    expect(apart(64)).toBeLessThan(2e-4 * modulus(exact.a))
    assertClose(apart(32) / apart(64), 4, { relative: 0.01 }, 'error by halving')
    expect(apart(1024)).toBeLessThan(1e-6 * modulus(exact.a))
  })

  test('two lengths after each other are the sum of the lengths', () => {
    const of = (km: number) => chainOf(pair(25, 5e-3, 0.04e-6, 80e-6, km), 1000)
    const [one, two, both] = [of(3), of(11), of(14)]
    const joined = cascade(one, two)
    for (const key of ['a', 'b', 'c', 'd'] as const)
      assertClose(joined[key], both[key], { relative: 1e-12 }, key)
  })

  test('is reciprocal and passive at any length, frequency and loss', () => {
    const ohms = fc.double({ min: 0, max: 1000, noNaN: true })
    fc.assert(
      fc.property(
        fc.record({
          r: ohms,
          l: fc.double({ min: 0, max: 5e-3, noNaN: true }),
          c: fc.double({ min: 1e-9, max: 100e-9, noNaN: true }),
          g: fc.double({ min: 0, max: 1e-4, noNaN: true }),
          km: fc.double({ min: 0, max: 30, noNaN: true }),
          f: fc.double({ min: 0, max: 4000, noNaN: true }),
          load: fc.double({ min: 1, max: 1e6, noNaN: true }),
        }),
        ({ r, l, c, g, km, f, load }) => {
          const chain = chainOf(pair(r, l, c, g, km), f)
          const size = Math.max(1, modulus(chain.a) ** 2)
          assertClose(
            determinant(chain),
            { re: 1, im: 0 },
            { relative: 0, absolute: 1e-11 * size },
            'AD − BC',
          )
          // power goes in at the near end, and no more comes out than goes in
          const input = inputOf(chain, { re: load, im: 0 })
          expect(input.re).toBeGreaterThanOrEqual(-1e-9 * modulus(input))
        },
      ),
      { seed: SEED, numRuns: 500 },
    )
  })

  test('needs no other code at 0 Hz, at 0 km and without losses', () => {
    const plain = equivalentPi(pair(168, 0.7e-3, 50e-9, 0, 2), 2, 0)
    expect(plain).toEqual({ series: { re: 168, im: 0 }, shunt: { re: 0, im: 0 } })
    // leaky, direct current: √(RG) = 0.1 a kilometre, √(R/G) = 1000 Ω
    const leaky = imageOf(chainOf(pair(100, 1e-3, 50e-9, 1e-4, 20), 0))
    assertClose(leaky.theta.re, 2, { relative: 1e-12 }, 'leaky attenuation')
    assertClose(leaky.zc, { re: 1000, im: 0 }, { relative: 1e-12 }, 'leaky impedance')
    const none = equivalentPi(pair(168, 0.7e-3, 50e-9, 1e-6, 0), 2, 6000)
    expect(none).toEqual({ series: { re: 0, im: 0 }, shunt: { re: 0, im: 0 } })
    const nothing = equivalentPi(pair(0, 0, 0, 0, 1), 2, 6000)
    expect(nothing).toEqual({ series: { re: 0, im: 0 }, shunt: { re: 0, im: 0 } })
    // lossless, an eighth of 250 km: Z sin βl and (1/Z)·tan(βl/2), both without a real part
    const { series, shunt } = equivalentPi(pair(0, 4e-3, 4e-9, 0, 31.25), 2, 2000 * Math.PI)
    expect([series?.re, shunt.re].map((x) => Math.abs(x ?? 1))).toEqual([0, 0])
    assertClose(2 * (series?.im ?? 0), 1000 * Math.SQRT1_2, { relative: 1e-14 }, 'series')
    assertClose(shunt.im, Math.tan(Math.PI / 8) / 1000, { relative: 1e-14 }, 'shunt')
  })

  test('passes without a step from its series to its closed form', () => {
    const at = (km: number) => equivalentPi(pair(100, 0, 50e-9, 1e-4, km), 2, 0)
    const edge = 10 // √(RG)·10 km is 1, where the code changes
    for (const [below, above] of [[edge * (1 - 1e-13), edge * (1 + 1e-13)]] as const) {
      assertClose(at(below).series, at(above).series ?? 0, { relative: 1e-12 }, 'series')
      assertClose(at(below).shunt, at(above).shunt, { relative: 1e-12 }, 'shunt')
    }
    assertClose(2 * (at(edge).series?.re ?? 0), 1000 * Math.sinh(1), { relative: 1e-14 }, 'sinh 1')
    assertClose(at(edge).shunt.re, Math.tanh(0.5) / 1000, { relative: 1e-14 }, 'tanh ½')
  })

  test('of a line without end is its characteristic impedance at each end, and nothing gets through', () => {
    const { zc } = imageOf(chainOf(pair(168, 0.7e-3, 50e-9, 0, 1), 1000))
    for (const km of [300, 3000, 30_000, 1e7]) {
      const { series, shunt } = equivalentPi(pair(168, 0.7e-3, 50e-9, 0, km), 2, 2000 * Math.PI)
      expect(series).toBeUndefined()
      const one = modulus(zc) ** 2
      assertClose(shunt, { re: zc.re / one, im: -zc.im / one }, { relative: 1e-12 }, `1/Zc at ${km} km`)
    }
  })
})
