import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { ringingCurrent, ringingVoltage } from 'ringproof/figures/ringing'
import { branchAt, type Netlist } from 'ringproof/netlist/netlist'
import { TRAPEZOID_HARMONICS, trapezoidHarmonic } from 'ringproof/parts/ringing-wave'
import { currentIn, sizeOf, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { line, replacing, set, stationHouse } from './_nets.ts'

const FEED =
  'feed: {voltage: 50 V, resistance: 400 Ω, shared: half in each wire, negative: b wire, earth: positive pole}'
const CABLE = 'cable: {type: twin, gauge: 0.5 mm, length: 1 km, temperature: 20 °C}\n'
const IDLE = { line: 'idle', sets: {} } as const
const RINGING = { line: 'ringing', sets: {} } as const
const node = (net: Netlist, id: string): number => net.nodeIndex.get(id) ?? -1
const branch = (net: Netlist, id: string) => branchAt(net, net.branchIndex.get(id) ?? -1)

describe('a feed with a current limit', () => {
  const shorted = (feed: string) => {
    const net = stationHouse({ line: line(replacing([FEED, `feed: {${feed}}`], [CABLE, ''])), sets: {} })
    const added = [{ from: node(net, 'front/a'), to: node(net, 'front/b') }]
    const solution = solve(net, { analysis: 'direct', condition: IDLE, added })
    const voltage = voltageBetween(solution, node(net, 'exchange/a'), 0)
    return {
      current: currentIn(solution, branch(net, 'exchange/feed.b').index).re,
      volts: voltage?.re ?? Number.NaN,
    }
  }

  test('gives its limit into a short, and keeps the pair at its earthed pole', () => {
    // 50 V, 230 Ω, 60 mA: worst short-line feed of TBR 21, secondary copy; unlimited 50/230 = 217.39 mA, derived
    const rest = 'voltage: 50 V, resistance: 230 Ω, negative: b wire, earth: positive pole'
    assertClose(shorted(rest).current, 50 / 230.01, { relative: 1e-9 }, 'unlimited')
    const limited = shorted(`${rest}, current limit: 60 mA`)
    assertClose(limited.current, 0.06, { relative: 1e-9 }, 'limited')
    assertClose(limited.volts, -0.06 * 115, { relative: 1e-9 }, 'a wire to earth')
  })

  test('is a straight resistance below it', () => {
    const rest =
      'voltage: 50 V, resistance: 230 Ω, current limit: 300 mA, negative: b wire, earth: positive pole'
    assertClose(shorted(rest).current, 50 / 230.01, { relative: 1e-9 }, 'current')
  })

  test('gives what published loop limits say, at the corner of its limit too', () => {
    const loaded = (feed: string, ohms: number) => {
      const net = stationHouse({ line: line(replacing([FEED, `feed: {${feed}}`], [CABLE, ''])), sets: {} })
      const bridges = [{ from: node(net, 'exchange/a'), to: node(net, 'exchange/b'), ohms }]
      const solution = solve(net, { analysis: 'direct', condition: IDLE, bridges })
      const volts =
        voltageBetween(solution, node(net, 'exchange/a'), node(net, 'exchange/b'))?.re ?? Number.NaN
      return { volts, current: volts / ohms }
    }
    // ministerial ordinance on telecommunications facilities (Japan), article 27, secondary copy
    assertClose(loaded('voltage: 42 V, resistance: 2500 Ω', 300).current, 0.015, { relative: 1e-5 }, 'least')
    assertClose(loaded('voltage: 53 V, resistance: 357.692 Ω', 50).current, 0.13, { relative: 1e-5 }, 'most')
    // loop simulator of 47 CFR 68.3, from memory
    assertClose(
      loaded('voltage: 42.5 V, resistance: 1740 Ω', 200).current,
      0.021907,
      { relative: 3e-5 },
      '1740 Ω',
    )
    assertClose(
      loaded('voltage: 56.5 V, resistance: 400 Ω', 200).current,
      0.094167,
      { relative: 1e-5 },
      '400 Ω',
    )
    // TBR 21, secondary copy: 60 mA through 230 Ω leave 36.2 V and 2.172 W for the set; corner of both laws
    const tbr = loaded('voltage: 50 V, resistance: 230 Ω, current limit: 60 mA', 36.2 / 0.06)
    assertClose(tbr.volts, 36.2, { relative: 1e-6 }, 'volts')
    assertClose(tbr.volts * tbr.current, 2.172, { relative: 1e-6 }, 'watts')
    const lower = loaded('voltage: 50 V, resistance: 230 Ω, current limit: 60 mA', 200)
    assertClose(lower.volts, 12, { relative: 1e-6 }, '60 mA into 200 Ω')
    const higher = loaded('voltage: 50 V, resistance: 230 Ω, current limit: 60 mA', 1000)
    assertClose(higher.current, 50 / 1230, { relative: 1e-5 }, 'below the limit')
  })

  test('is its whole voltage on an idle line', () => {
    const net = stationHouse({
      line: line(replacing([FEED, 'feed: {voltage: 21 V, current limit: 20 mA}'])),
      sets: {},
    })
    const solution = solve(net, { analysis: 'direct', condition: IDLE })
    const volts = voltageBetween(solution, node(net, 'front/a'), node(net, 'front/b'))
    assertClose(volts?.re, 21, { relative: 1e-6 }, 'open voltage')
  })
})

describe('a line that rings with a trapezoid', () => {
  const wave = (written: string) =>
    stationHouse({ line: line(replacing(['wave: sine', `wave: ${written}`], [CABLE, ''])), sets: {} })
  const open = (net: Netlist, harmonics?: readonly number[]) => {
    // the pair at the socket: 75 V behind 400 Ω with next to no load
    const figure = readFigure(
      net,
      ringingVoltage(branch(net, 'front/gas-tube'), RINGING, 25, harmonics),
      freshSupplier(net),
    )
    return figure
  }

  test('has at its socket the root of the sum of the squares of its harmonics', () => {
    const net = wave('{trapezoid: 1}')
    const all = open(net, net.line?.ringingHarmonics)
    const share = Math.sqrt(TRAPEZOID_HARMONICS.reduce((sum, h) => sum + trapezoidHarmonic(1, h) ** 2, 0))
    // the 470 kΩ and its capacitor take less than a thousandth
    assertClose(all.value, 75 * share, { relative: 1e-3 }, 'square wave')
    assertClose(open(net).value, (75 * 4) / (Math.PI * Math.SQRT2), { relative: 1e-3 }, 'its fundamental')
    expect(all.frequency).toBe(25)
    expect(all.approximate).toBeUndefined()
    const mild = wave('{trapezoid: 1.25}')
    assertClose(open(mild, mild.line?.ringingHarmonics).value, 75, { relative: 1e-3 }, 'crest factor 1.25')
  })

  test('is one frequency where it is a sine', () => {
    const net = wave('sine')
    expect(net.line?.ringingHarmonics).toEqual([1])
    assertClose(open(net, net.line?.ringingHarmonics).value, 75, { relative: 1e-3 }, 'sine')
    expect(ringingVoltage(branch(net, 'front/gas-tube'), RINGING, 25, [1]).taps).toHaveLength(1)
  })

  test('drives a bell with currents that add by their squares, fewer by the bell’s rising impedance', () => {
    const net = stationHouse({
      line: line(replacing(['wave: sine', 'wave: {trapezoid: 1}'])),
      sets: { office: { set: set('fescue'), in: 'front' } },
    })
    const bell = branch(net, 'office/bell')
    const one = (h: number) =>
      sizeOf(
        currentIn(solve(net, { analysis: 'alternating', frequency: 25 * h, condition: RINGING }), bell.index),
      )
    const sum = Math.hypot(...TRAPEZOID_HARMONICS.map(one))
    const plan = ringingCurrent(bell, RINGING, 25, net.line?.ringingHarmonics)
    assertClose(readFigure(net, plan, freshSupplier(net)).value, sum, { relative: 1e-9 }, 'root of squares')
    expect(one(3)).toBeGreaterThan(0)
    expect(one(2)).toBe(0)
    expect(one(15)).toBeLessThan(one(1) / 50)
  })
})
