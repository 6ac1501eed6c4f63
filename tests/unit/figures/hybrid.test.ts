import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { speechPlans } from 'ringproof/figures/speech'
import type { NetLine } from 'ringproof/netlist/netlist'
import { branchAt } from 'ringproof/netlist/netlist'
import { describe, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'

const SPEECH = { line: 'speech', sets: {} } as const
const FREQUENCY = 1000

/**
 * A symmetrical hybrid: two equal halves of a coil, a line of 600 Ω at one end and a balance network at the other, the
 * sender in the middle, the receiver from end to end; both matched to 900 Ω. Derived for an ideal coil: of what the
 * sender could give, the receiver gets the fourth part of ((900 − 600)/(900 + 600))².
 */
function hybrid(balance: number) {
  const net = compiled(
    // k = 0.9999: leakage and magnetising current are both a hundredth, and in quadrature
    'coil: {kind: induction-coil, windings: {a: {from: m, to: p, resistance: 0 Ω, inductance: 15 H}, b: {from: q, to: m, resistance: 0 Ω, inductance: 15 H}}, coupling: 0.9999}',
    'half-a: {kind: resistor, from: p, to: e, resistance: 300 Ω}',
    'half-b: {kind: resistor, from: e, to: earth, resistance: 300 Ω}',
    `balance: {kind: resistor, from: q, to: earth, resistance: ${balance} Ω}`,
    'sender: {kind: resistor, from: m, to: earth, resistance: 450 Ω}',
    'receiver: {kind: resistor, from: p, to: q, resistance: 1.8 kΩ}',
  )
  const at = (name: string) => branchAt(net, net.branchIndex.get(`trial/${name}`) ?? -1)
  const line = { termination: [at('half-a').index, at('half-b').index] } as unknown as NetLine
  const plans = speechPlans({ line, sender: at('sender'), receiver: at('receiver') }, SPEECH, {}, FREQUENCY)
  const [send = 0, receive = 0, sidetone = 0] = plans.map(
    (plan) => readFigure(net, plan, freshSupplier(net)).value ?? 0,
  )
  return { send, receive, sidetone }
}

/** Of the power that 1 V behind 450 Ω could give at most, what reaches 1.8 kΩ, as a loss in dB. */
function transHybridLoss(sidetone: number): number {
  return -10 * Math.log10((1800 * sidetone ** 2) / (1 / (4 * 450)))
}

describe('a symmetrical hybrid', () => {
  test('with 600 Ω of line and 900 Ω of balance loses 13.979 dB more than its two divisions', () => {
    const excess = transHybridLoss(hybrid(900).sidetone) - 20 * Math.log10(2)
    assertClose(excess, 13.9794, { relative: 0, absolute: 0.01 }, '20 lg |(600 + 900)/(600 − 900)|')
  })

  test('sends and receives what an ideal one does', () => {
    const { send, receive } = hybrid(900)
    assertClose(send, 1 / 1500, { relative: 1e-3 }, 'send')
    assertClose(receive, 1 / 3000, { relative: 1e-3 }, 'receive')
  })

  test('with a balance equal to its line is silent to its own voice', () => {
    const { sidetone, receive } = hybrid(600)
    assertClose(sidetone / receive, 0, { relative: 0, absolute: 1e-12 }, 'sidetone beside receive')
  })
})
