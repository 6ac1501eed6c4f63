import { lineCurrent, ringingLineCurrent, tripMargin } from 'ringproof/figures/line-current'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { house, lineText, MASTER, plainSet, standing } from './_stand.ts'

const IDLE = { line: 'idle', sets: {} } as const
const RINGING = { line: 'ringing', sets: {} } as const
const NEAR = { relative: 1e-9 }

function two(leak: string, ...more: readonly string[]) {
  const parts = leak === '' ? '' : `drain: {kind: resistor, from: A1, to: A2, resistance: ${leak}}`
  const sockets = [MASTER, 'back: {is: secondary, fed from: front}']
  const sets = ['desk: {set: plain, in: front}', 'wall: {set: plain, in: back}']
  return standing(house(lineText({}, ...more), sockets, sets, plainSet(600, { parts })))
}

describe('the direct current of a whole line', () => {
  // each set leaks through 10 kΩ and two plug contacts of 50 mΩ; two of them in parallel behind 400 Ω
  const expected = 50 / (400 + 10_000.1 / 2)
  const house2 = two('10 kΩ')

  test('is what all sets draw together, on-hook and while it rings', () => {
    const idle = house2.context.figure(lineCurrent(house2.net, house2.line, 'leakage.on-hook', IDLE))
    assertClose(idle.value, expected, NEAR, 'on-hook')
    expect(idle).toMatchObject({ subject: 'trial-line', unit: 'A', id: 'leakage.on-hook' })
    const ringing = house2.context.figure(
      lineCurrent(house2.net, house2.line, 'leakage.ringing', RINGING, {}, 'trial'),
    )
    assertClose(ringing.value, expected, NEAR, 'while it rings')
    expect(ringing.subject).toBe('trial')
  })

  test('is what is left of it with a set unplugged', () => {
    const lifted = house2.net.branches
      .filter(({ part }) => part.place === 'wall' && part.sort === 'plug')
      .map(({ index }) => index)
    const one = house2.context.figure(
      lineCurrent(house2.net, house2.line, 'leakage.on-hook', IDLE, { lifted }),
    )
    assertClose(one.value, 50 / 10_400.1, NEAR, 'one set')
  })

  test('is open on a line that has no legs in this state', () => {
    const quiet = standing(
      house(lineText({ ringing: '' }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600)),
    )
    const none = quiet.context.figure(lineCurrent(quiet.net, quiet.line, 'leakage.ringing', RINGING))
    expect(none).toMatchObject({ value: null, state: 'open' })
    expect(ringingLineCurrent(quiet.net, quiet.line, RINGING)).toBeUndefined()
  })
})

describe('the margin to the ring trip', () => {
  test('is the part of the trip current that is not drawn', () => {
    const tripping = two('10 kΩ', 'trip: {current: 12 mA, within: 200 ms}')
    const plan = tripMargin(tripping.net, tripping.line, RINGING)
    if (plan === undefined) throw new Error('no plan')
    const margin = tripping.context.figure(plan)
    assertClose(margin.value, 1 - 50 / (400 + 5000.05) / 0.012, NEAR, 'margin')
    expect(margin).toMatchObject({ id: 'ringing.trip-margin', unit: '1' })
  })

  test('is negative where it trips by itself, and absent where no sheet names a trip', () => {
    const worse = two('2 kΩ', 'trip: {current: 12 mA, within: 200 ms}')
    const plan = tripMargin(worse.net, worse.line, RINGING)
    expect(plan && worse.context.figure(plan).value).toBeLessThan(0)
    const without = two('2 kΩ')
    expect(tripMargin(without.net, without.line, RINGING)).toBeUndefined()
  })
})

describe('the ringing current of a line', () => {
  test('is 75 V over source, capacitor and bells, by the closed form', () => {
    const { context, net, line } = two('')
    const plan = ringingLineCurrent(net, line, RINGING)
    if (plan === undefined) throw new Error('no plan')
    const w = 2 * Math.PI * 25
    // the 470 kΩ of the socket beside two bells of 4300 Ω + 12 H, each behind its contact of the ringing lead
    const g = { re: 4300.1, im: w * 12 }
    const size = g.re ** 2 + g.im ** 2
    const y = { re: (2 * g.re) / size + 1 / 470e3, im: (-2 * g.im) / size }
    const y2 = y.re ** 2 + y.im ** 2
    const z = { re: y.re / y2 + 400, im: -y.im / y2 - 1 / (w * 1.8e-6) }
    const expected = 75 / Math.hypot(z.re, z.im)
    // open leads leak through 1 TΩ of the sets' dials; the house has no cable
    assertClose(context.figure(plan).value, expected, { relative: 1e-6 }, 'line current')
    expect(context.figure(plan)).toMatchObject({
      id: 'ringing.line-current',
      subject: 'trial-line',
      frequency: 25,
    })
  })

  test('counts every harmonic of a wave that is no sine', () => {
    const ringing =
      '{voltage: 75 V, frequency: 25 Hz, wave: {trapezoid: 1.25}, source: 400 Ω, sent to: b wire, over battery: 50 V}'
    const wave = standing(
      house(lineText({ ringing }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600)),
    )
    const plan = ringingLineCurrent(wave.net, wave.line, RINGING)
    expect(plan?.taps).toHaveLength(2 * wave.line.ringingHarmonics.length)
    const first = ringingLineCurrent(wave.net, { ...wave.line, ringingHarmonics: [1] }, RINGING)
    const all = plan && wave.context.figure(plan).value
    expect(all).toBeGreaterThan((first && wave.context.figure(first).value) ?? Number.POSITIVE_INFINITY)
  })
})
