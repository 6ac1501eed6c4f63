/** Sets that are a reference network and nothing else: their impedance and return loss, as published or by the closed form. */
import { figures } from 'ringproof'
import { stand } from 'ringproof/answer/standing'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { REFERENCE_NETWORKS } from 'ringproof/figures/reference-networks'
import { portOf, returnLoss, setImpedance } from 'ringproof/figures/set-impedance'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { add, type Complex, divide, modulus, subtract } from '../support/complex.ts'
import { farads, ohms, PLUG, premises, type Wiring } from './_premises.ts'

/** R in series with R₂ beside C. */
type Network = readonly [r: number, beside: number, c: number]
/** From memory; clause texts of AS/CA S002:2010 5.4.3.2 seen, the values of its figure not. */
const NETWORKS: Readonly<Record<string, Network>> = {
  'european-harmonised': [270, 750, 150e-9],
  british: [370, 620, 310e-9],
  australian: [220, 820, 120e-9],
}

function impedance([r, beside, c]: Network, hertz: number): Complex {
  const z = divide({ re: beside, im: 0 }, { re: 1, im: 2 * Math.PI * hertz * beside * c })
  return add({ re: r, im: 0 }, z)
}
const loss = (z: Complex, other: Complex): number =>
  20 * Math.log10(modulus(add(z, other)) / modulus(subtract(z, other)))

const hook = 'contacts: {hook: {from: A1, to: A4, closed when: off-hook, resistance: 0 Ω, leakage: open}}'
const setOf = ([r, beside, c]: Network): Wiring => [
  hook,
  `parts: {${[ohms('r', 'A4', 'A5', r - PLUG), ohms('beside', 'A5', 'A2', beside), farads('c', 'A5', 'A2', c)].join(', ')}}`,
]
const resistance = (size: number): Wiring => [hook, `parts: {${ohms('r', 'A4', 'A2', size - PLUG)}}`]
const LINE = { battery: 50, feed: 400 }

/** Figures of a set at any frequency: its impedance, and its return loss against each network. */
function at(wiring: Wiring, hertz: number) {
  const { net } = stand({ target: 'house' }, premises(LINE, [wiring]))
  const [place] = net.places
  const port = place && portOf(net, place)
  if (net.line === undefined || port === undefined) throw new Error('the set stands nowhere')
  const { line } = net
  const condition = {
    line: 'speech',
    sets: { set1: { hook: 'off-hook', dial: 'rest', key: 'up' } },
  } as const
  const supplier = freshSupplier(net)
  return {
    impedance: readFigure(net, setImpedance(port, line, condition, hertz), supplier),
    against: (name: string): number => {
      const network = REFERENCE_NETWORKS.find((one) => one.name === name)
      if (network === undefined) throw new Error(`no network ${name}`)
      return readFigure(net, returnLoss(port, line, network, condition, hertz), supplier).value ?? Number.NaN
    },
  }
}
const printed = { relative: 0, absolute: 0.5e-4 }

describe('a set that is a reference network', () => {
  // grade DERIVED
  test.each([
    [300, 'european-harmonised', 987.7251, -152.199],
    [300, 'british', 918.0649, -198.5576],
    [300, 'australian', 1012.728, -147.0349],
    [800, 'european-harmonised', 838.2786, -321.354],
    [800, 'british', 690.6862, -309.8158],
    [800, 'australian', 878.8243, -325.8626],
    [1000, 'european-harmonised', 770.1171, -353.512],
    [1000, 'british', 622.2, -304.5639],
    [1000, 'australian', 813.2347, -366.7765],
    [1020, 'european-harmonised', 763.4748, -355.7931],
    [1020, 'british', 616.2972, -303.3842],
    [1020, 'australian', 806.6802, -369.9785],
    [1600, 'european-harmonised', 599.0772, -372.1775],
    [1600, 'british', 500.9836, -253.0872],
    [1600, 'australian', 634.4417, -409.9759],
    [3400, 'european-harmonised', 380.6858, -266.0131],
    [3400, 'british', 404.717, -142.5456],
    [3400, 'australian', 371.324, -318.0986],
  ])('has at %d Hz the impedance of the %s table', (hertz, name, re, im) => {
    const { impedance: figure } = at(setOf(NETWORKS[name] ?? [0, 0, 0]), hertz)
    // both parts may be rounded by half a digit
    assertClose(figure.value, Math.hypot(re, im), { relative: 0, absolute: 0.75e-4 }, 'size')
    if (figure.phasor !== undefined) {
      assertClose(figure.phasor.re, re, printed, 'resistance')
      assertClose(figure.phasor.im, im, printed, 'reactance')
    }
  })

  // grade DERIVED: 20 log |(Za + Zb)/(Za − Zb)|
  test.each([
    [300, 'european-harmonised', 'six-hundred-ohm', 11.6624],
    [300, 'british', 'six-hundred-ohm', 12.2199],
    [300, 'australian', 'six-hundred-ohm', 11.355],
    [300, 'european-harmonised', 'british', 27.2942],
    [300, 'british', 'australian', 25.2012],
    [1000, 'european-harmonised', 'six-hundred-ohm', 11.1424],
    [1000, 'british', 'six-hundred-ohm', 12.3079],
    [1000, 'australian', 'six-hundred-ohm', 10.7348],
    [1000, 'european-harmonised', 'british', 19.8988],
    [1000, 'british', 'australian', 17.9387],
    [3400, 'european-harmonised', 'six-hundred-ohm', 9.3885],
    [3400, 'british', 'six-hundred-ohm', 12.4592],
    [3400, 'australian', 'six-hundred-ohm', 8.3292],
    [3400, 'european-harmonised', 'british', 16.9494],
    [3400, 'british', 'australian', 14.066],
  ])(
    'has at %d Hz, being %s, the return loss against %s of the table: %f dB',
    (hertz, name, other, decibels) => {
      const set = NETWORKS[name] ?? [0, 0, 0]
      assertClose(at(setOf(set), hertz).against(other), decibels, printed, 'decibels')
      const second = NETWORKS[other]
      // it is the same seen from the other side
      if (second !== undefined)
        assertClose(at(setOf(second), hertz).against(name), decibels, printed, 'swapped')
    },
  )

  test('a set of 900 Ω has 13.9794 dB against 600 Ω at every frequency, which is the hybrid that it unbalances', () => {
    for (const hertz of [200, 300, 1000, 3400, 4000])
      assertClose(at(resistance(900), hertz).against('six-hundred-ohm'), 13.9794, printed, `${hertz} Hz`)
  })
})

const wordsOf = (name: string, [r, besideOhms, c]: Network): string =>
  name === 'six-hundred-ohm' ? '600 Ω' : `${r} Ω + ${besideOhms} Ω ∥ ${Math.round(c * 1e9)} nF`

/** The same networks as sets to speak with: 100 Ω of R is a transmitter, 100 Ω of R₂ a receiver. */
const speakingSet = ([r, besideOhms, c]: Network): Wiring => [
  'contacts: {hook: {from: A1, to: A8, closed when: off-hook, resistance: 0 Ω, leakage: open}}',
  `parts: {${[ohms('r', 'A8', 'A4', r - 100 - PLUG), ohms('beside', 'A5', 'A6', besideOhms - 100), farads('c', 'A5', 'A7', c), 'back: {kind: strap, from: A7, to: A2, resistance: 0 Ω}'].join(', ')}}`,
  'handset: {transmitter: {kind: transmitter, from: t1, to: t2, resistance: 100 Ω at 40 mA, falls with exponent: 0}, receiver: {kind: receiver, from: r1, to: r2, resistance: 100 Ω, inductance: 1e-12 H}}',
]

describe.each(Object.entries(NETWORKS))('the figures of a set that is %s', (_, network) => {
  const { figures: found } = figures(
    { target: 'house', only: 'speech' },
    premises(LINE, [speakingSet(network)]),
  )

  test('tell its impedance from 200 Hz to 4 kHz', () => {
    const all = found.filter(({ id }) => id === 'speech.impedance')
    const frequencies = all.map(({ frequency }) => frequency ?? 0)
    expect(Math.min(...frequencies)).toBe(200)
    expect(Math.max(...frequencies)).toBe(4000)
    expect(frequencies).toContain(1000)
    for (const { value, frequency = 0 } of all)
      assertClose(value, modulus(impedance(network, frequency)), { relative: 1e-8 }, `${frequency} Hz`)
  })

  test('tell its return loss against each other network', () => {
    const all = found.filter(({ id, value }) => id === 'speech.return-loss' && value !== null)
    for (const [name, other] of [...Object.entries(NETWORKS), ['six-hundred-ohm', [600, 0, 0]] as const]) {
      if (other === network) continue
      const against = all.filter(({ subject }) => subject === `set1 against ${wordsOf(name, other)}`)
      expect(against.map(({ frequency }) => frequency)).toContain(1000)
      for (const { value, frequency = 0 } of against) {
        const expected = loss(impedance(network, frequency), impedance(other, frequency))
        assertClose(value, expected, { relative: 1e-7 }, `${name} at ${frequency} Hz`)
      }
    }
  })
})
