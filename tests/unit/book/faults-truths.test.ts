/** What faults do to a small set whose every figure is a closed form: sums of its ohms and henries. */
import { between } from 'ringproof/figures/between'
import { loopResistance, loopVoltage } from 'ringproof/figures/loop'
import { ringingCurrent, withRole } from 'ringproof/figures/ringing'
import { speechPlans } from 'ringproof/figures/speech'
import { OPEN } from 'ringproof/figures/variants'
import { describe, expect, test } from 'vitest'
import { rewireText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { type Faulty, faulty } from './_faults.ts'

/** A loop of hook, two windings and a straight transmitter; a bell beside it on terminals of its own. */
const SMALL = `ringproof: 1
sheet: set
name: small
strips: {A: 4, B: 2, C: 3}
contacts: {hook: {from: A1, to: A2, closed when: off-hook, resistance: 0 Ω, leakage: open}}
parts:
  coil:
    kind: induction-coil
    windings:
      a: {from: A2, to: A3, resistance: 25 Ω, inductance: 0.4 H}
      b: {from: A3, to: A4, resistance: 37 Ω, inductance: 0.9 H}
    coupling: 0.5
  bell: {kind: bell, from: C1, to: C2, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}
  capacitor: {kind: capacitor, from: C2, to: C3, capacitance: 2 µF}
straps: {C3-B2: {hold: screw, resistance: 0 Ω}}
cords:
  line:
    ends in: plug
    cores: {a: {lands: A1, resistance: 0 Ω}, b: {lands: B2, resistance: 0 Ω}}
  handset:
    ends in: handset
    cores: {t1: {lands: A4, resistance: 0 Ω}, t2: {lands: B2, resistance: 0 Ω}}
plug: {numbered by: wiring, contacts: {5: a, 2: b}}
handset: {transmitter: {kind: transmitter, from: t1, to: t2, resistance: 150 Ω at 40 mA, falls with exponent: 0}}
`
const set = faulty({ file: 'small.yaml', text: SMALL }, 'none')
const LOOP = 25 + 37 + 150

/** Ohms between two points of the small set, with a fault. */
function ohms(from: string, to: string, written: string, fault?: string, frequency?: number): number {
  const how = { condition: set.when(written), ...(frequency === undefined ? {} : { frequency }) }
  return set.read(between(set.net, set.node(from), set.node(to), how), fault)
}

describe('in a small set', () => {
  test.each([
    ['coil open-a', OPEN],
    ['coil open-b', OPEN],
    ['hook open', OPEN],
    ['transmitter open', OPEN],
    ['handset.t1 parked', OPEN],
    ['line.b parked', OPEN],
    ['hook dirty', LOOP + 200],
    ['handset.t1 high-resistance', LOOP + 20],
    ['transmitter packed', LOOP + 2 * 150],
    ['transmitter damp', LOOP - 0.6 * 150],
    ['coil shorted-turns-a', LOOP - 0.1 * 25],
    ['coil turned-a', LOOP],
    // a second way of 10 mΩ, or of the 100 mΩ of a short, beside 150 Ω
    ['handset.t1+handset.t2 touching', LOOP - 150 + 1 / (1 / 150 + 1 / 0.01)],
    ['transmitter shorted', LOOP - 150 + 1 / (1 / 150 + 1 / 0.1)],
    ['handset.t1+handset.t2 damp', LOOP - 150 + 1 / (1 / 150 + 1 / 30e3)],
    ['A2-A3 damp', LOOP - 25 + 1 / (1 / 25 + 1 / 30e3)],
    ['A3-A4 extra', LOOP - 37 + 1 / (1 / 37 + 1 / 0.01)],
    // winding b is left out
    ['handset.t1 one-off A3', LOOP - 37],
    // onto a terminal where nothing lies
    ['handset.t2 one-off B1', OPEN],
    // a transmitter is the same both ways round, and so is the whole loop
    ['handset.t1+handset.t2 crossed', LOOP],
    ['line.a+line.b reversed', LOOP],
    ['bell open', LOOP],
  ])('the loop with %s is the sum of what is left', (fault, due) => {
    const found = ohms('plug.a', 'plug.b', 'off-hook', fault)
    if (due === OPEN) expect(found).toBe(OPEN)
    else assertClose(found, due, { relative: 1e-9 }, fault)
  })

  test('the loop as its sheet has it is the sum of its ohms, and open on-hook but for a welded hook', () => {
    assertClose(ohms('plug.a', 'plug.b', 'off-hook'), LOOP, { relative: 1e-9 }, 'sound')
    expect(ohms('plug.a', 'plug.b', 'on-hook')).toBe(OPEN)
    assertClose(ohms('plug.a', 'plug.b', 'on-hook', 'hook welded'), LOOP + 0.05, { relative: 1e-9 }, 'welded')
    assertClose(ohms('plug.a', 'plug.b', 'on-hook', 'hook leaky'), LOOP + 50e3, { relative: 1e-9 }, 'leaky')
  })

  test('the bell with shorted turns has the impedance of 0.9 R and 0.4 L, with a weak magnet its own', () => {
    const omega = 2 * Math.PI * 25
    const sound = Math.hypot(1000, omega * 12)
    const read = (fault?: string): number => ohms('C1', 'C2', 'on-hook', fault, 25)
    assertClose(read(), sound, { relative: 1e-9 }, 'sound')
    const ratio = Math.hypot(900, omega * 4.8) / sound
    assertClose(read('bell shorted-turns') / read(), ratio, { relative: 1e-9 }, 'shorted turns')
    assertClose(read('bell weak-magnet'), sound, { relative: 1e-9 }, 'weak magnet')
    expect(read('bell open')).toBe(OPEN)
  })

  test('a capacitor reads as its fault leaves it: half of it, a leak beside it, a joint within it', () => {
    const x = 1 / (2 * Math.PI * 25 * 2e-6)
    const read = (fault?: string): number => ohms('C2', 'C3', 'on-hook', fault, 25)
    assertClose(read(), x, { relative: 1e-9 }, 'sound')
    assertClose(read('capacitor lost-value'), 2 * x, { relative: 1e-9 }, 'half')
    assertClose(read('capacitor leaky'), 1 / Math.hypot(1 / 100e3, 1 / x), { relative: 1e-9 }, 'leaky')
    assertClose(read('capacitor lossy'), Math.hypot(1000, x), { relative: 1e-9 }, 'lossy')
    expect(read('capacitor open')).toBe(OPEN)
  })

  test('two windings in series have L + L′ + 2M, and L + L′ − 2M with one the wrong way round', () => {
    const omega = 2 * Math.PI * 1000
    const m = 0.5 * Math.sqrt(0.4 * 0.9)
    const z = (l: number): number => Math.hypot(25 + 37, omega * l)
    const read = (fault?: string): number => ohms('A2', 'A4', 'on-hook', fault, 1000)
    assertClose(read(), z(0.4 + 0.9 + 2 * m), { relative: 1e-9 }, 'sound')
    assertClose(read('coil turned-a'), z(0.4 + 0.9 - 2 * m), { relative: 1e-9 }, 'turned')
    expect(set.faults.some(({ id }) => id.endsWith('turned-b'))).toBe(false)
  })
})

/** The figures of a set in the workshop by which a fault and a change of its sheet are compared. */
function figures(one: Faulty, fault?: string): readonly number[] {
  const { net, place, when } = one
  const [bell] = withRole(net, place, 'sounder')
  const [sender] = withRole(net, place, 'sender')
  const [receiver] = withRole(net, place, 'receiver')
  if (net.line === undefined || bell === undefined || sender === undefined || receiver === undefined)
    throw new Error('no whole set')
  return [
    loopResistance(net, place, when('off-hook')),
    ringingCurrent(bell, when('on-hook/ringing'), net.line.ringingFrequency ?? 25),
    ...speechPlans({ line: net.line, sender, receiver }, when('off-hook/speech')),
  ].map((plan) => one.read(plan, fault))
}

describe('a fault is the same as the move that makes it', () => {
  test.each([
    // the trap: in a sedge this core belongs on B2
    ['sedge', 'handset.r2 one-off B3', ['land core: handset.r2, onto: B3']],
    ['fescue', 'handset.r2 one-off B4', ['land core: handset.r2, onto: B4']],
    ['fescue', 'handset.t1 parked', ['park core: handset.t1']],
    ['fescue', 'regulator missing', ['pull unit: regulator']],
    ['fescue', 'B2-B3 missing', ['lift strap: B2-B3']],
    ['fescue', 'B1-B2 extra', ['fit strap: B1-B2']],
    [
      'fescue',
      'handset.t1+handset.r1 crossed',
      ['land core: handset.t1, onto: B1', 'land core: handset.r1, onto: A5'],
    ],
    ['fescue', 'line.a+line.b reversed', ['land core: line.a, onto: B5', 'land core: line.b, onto: A1']],
  ])('in a %s: %s', (name, fault, moves) => {
    const before = figures(faulty(name))
    const found = figures(faulty(name), fault)
    const due = figures(faulty(rewireText(name, ...moves)))
    found.forEach((one, k) => {
      const other = due[k] ?? Number.NaN
      if (Number.isFinite(other)) assertClose(one, other, { relative: 1e-6, absolute: 1e-12 }, `${k}`)
      else expect(one).toBe(other)
    })
    expect(found.some((one, k) => Math.abs(one - (before[k] ?? 0)) > 1e-3 * (before[k] ?? 0))).toBe(true)
  })

  /** A fescue behind a master socket and a cable of three wires. */
  const house = (desk: boolean, line: boolean): Faulty =>
    faulty({
      file: 'two.yaml',
      text: `ringproof: 1
sheet: premises
name: two
line: depot-exchange
reversed: ${line ? 'yes' : 'no'}
sockets:
  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}
  back: {is: secondary, fed from: front, over: {type: house-three, gauge: 0.5 mm, length: 1 m}}
sets: {desk: {set: fescue, in: back, reversed: ${desk ? 'yes' : 'no'}}}
`,
    })

  test('in premises: the pair exchanged at a socket is the set that stands there reversed', () => {
    const found = figures(house(false, false), 'back/cable reversed')
    const due = figures(house(true, false))
    // 0.35 µH of each wire are left out, 2 mΩ at 1 kHz
    found.forEach((one, k) => {
      assertClose(one, due[k] ?? Number.NaN, { relative: 3e-5, absolute: 1e-15 }, `${k}`)
    })
    // the bell now hangs across the capacitor that feeds it
    expect(found[1]).toBeLessThan(0.05 * (figures(house(false, false))[1] ?? 0))
  })

  test('in premises: the line exchanged where it ends is the line reversed', () => {
    const straight = house(false, false)
    const found = figures(straight, 'front/cable reversed')
    const due = figures(house(false, true))
    found.forEach((one, k) => {
      assertClose(one, due[k] ?? Number.NaN, { relative: 1e-9, absolute: 1e-15 }, `${k}`)
    })
    const [a, b] = ['a', 'b'].map((wire) => straight.net.nodeIndex.get(`back/${wire}`) ?? -1)
    const plan = loopVoltage(straight.place, straight.when('on-hook'))
    if (plan === undefined) throw new Error('no line')
    const signed = { ...plan, value: (readings: Float64Array) => readings[0] ?? 0 }
    expect([a, b]).toEqual([straight.place.socket?.a, straight.place.socket?.b])
    const volts = straight.read(signed)
    expect(Math.abs(volts)).toBeGreaterThan(40)
    assertClose(straight.read(signed, 'front/cable reversed'), -volts, { relative: 1e-9 }, 'turned')
  })
})
