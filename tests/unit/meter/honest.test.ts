import { meter } from 'ringproof'
import { holdVoltmeter } from 'ringproof/meter/leads'
import { peakOf } from 'ringproof/meter/peak'
import { polarBranches } from 'ringproof/meter/polar'
import { describe, expect, test } from 'vitest'
import { DEMO, setText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { bench, leads, NEEDLE, read } from './_bench.ts'

describe('a reading without an answer', () => {
  // two ideal sources that disagree about one voltage
  const parts = [
    'e: {kind: voltage-source, from: p, to: earth, direct: 10 V}',
    'f: {kind: voltage-source, from: p, to: earth, direct: 9 V}',
    'r: {kind: resistor, from: p, to: earth, resistance: 1 kΩ}',
    's: {kind: resistor, from: x, to: y, resistance: 1 kΩ}',
  ]

  test('has a state and takes no other reading with it', () => {
    expect(read(parts, ['p', 'earth'], { shows: 'volts' })).toMatchObject({
      value: null,
      state: 'undetermined',
    })
    expect(read(parts, ['x', 'y']).value).toBe(1000)
  })
})

describe('the top of ringing on a battery', () => {
  // a sine of U rms has the top √2·U; on a battery the two add
  test('is the battery and √2 times the ringing, to earth and between the leads', () => {
    const on = bench([
      'e: {kind: voltage-source, from: p, to: earth, direct: 50 V, alternating: 75 V}',
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      's: {kind: resistor, from: q, to: earth, resistance: 3 kΩ}',
    ])
    const whole = 50 + Math.SQRT2 * 75
    const peak = peakOf(on.net, leads(on, 'p', 'q'), 25)
    assertClose(peak['to earth'], whole, { relative: 1e-9 }, 'to earth')
    assertClose(peak.between, whole / 4, { relative: 1e-9 }, 'between')
  })

  test('is none against an earth that nothing joins', () => {
    const on = bench([
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      's: {kind: resistor, from: x, to: earth, resistance: 1 kΩ}',
    ])
    expect(peakOf(on.net, leads(on, 'p', 'q'), 25)).toEqual({ between: 0 })
  })
})

describe('low ohms', () => {
  const row = ['r: {kind: resistor, from: p, to: q, resistance: 0.05 Ω}']

  // 3 counts of 0.1 Ω and 0.9 % of the instrument, 0.2 Ω of both leads
  test('may read higher by the leads, of the instrument that shows them', () => {
    const { band } = read(row, ['p', 'q'])
    expect(band?.least).toBe(0)
    assertClose(band?.most, 0.05 * 1.009 + 0.3 + 0.2, { relative: 1e-9 }, 'digital')
    const needle = read(row, ['p', 'q'], undefined, NEEDLE).band?.most
    expect(needle).toBeLessThan(1.3)
  })
})

describe('a capacitance', () => {
  const near = 'near: {kind: capacitor, from: p, to: q, capacitance: 1.8 µF}'
  const shown = (...more: readonly string[]) => read([near, ...more], ['p', 'q'], { shows: 'capacitance' })

  test('names what lies beside it and makes it another one', () => {
    const over = shown('over: {kind: capacitor, from: p, to: q, capacitance: 0.187 µF}')
    assertClose(over.value, 1.987e-6, { relative: 1e-9 }, 'both')
    expect(over.parts).toEqual(['trial/near'])
    expect(over.beside).toEqual(['trial/over'])
    expect(over.remarks.join()).toContain('With over in the way as well: without it 1.80 µF would be shown')
  })

  // the instrument is sure to 2 % and a count: a hundredth of it hides there
  test('keeps silent of what the instrument cannot tell', () => {
    const little = shown('over: {kind: capacitor, from: p, to: q, capacitance: 18 nF}')
    expect(little.beside).toEqual([])
    expect(little.remarks).toEqual([])
  })
})

describe('what has a polarity', () => {
  test('is told by its law alone', () => {
    const net = compiled(
      'd: {kind: diode, from: p, to: q, drop: 0.7 V at 10 mA}',
      'v: {kind: varistor, from: p, to: q, voltage at 1 A: 1.2 V, exponent: 5}',
      't: {kind: transmitter, from: p, to: q, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}',
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
    )
    expect([...polarBranches(net)].map((k) => net.branches[k]?.id)).toEqual(['trial/d'])
  })

  const set = setText(
    'sedge',
    'strips: {A: 8, B: 6}',
    'parts:',
    '  polarity: {kind: bridge, first: A7, second: A8, plus: A1, minus: B5, drop: 0.7 V at 10 mA}',
    '  bell: {to: A7}',
    'cords: {line: {cores: {a: {lands: A7}, b: {lands: A8}}}}',
    'without: [straps.C3-A1]',
  )
  const { readings } = meter({ target: 'trial', text: set }, DEMO)

  // drop 0.7 V at 10 mA with n·V_t = 1.8 · 25.26 mV: 0.7 V − 1.8 · 25.26 mV · ln 10 at 1 mA; Shockley's law
  test('reads its drop on the diode range', () => {
    const one = readings.find(
      ({ id, red, black }) => id === 'meter.diode' && red === 'trial/plug.a' && black === 'trial/A1',
    )
    assertClose(one?.value, 0.7 - 1.8 * 0.02526 * Math.log(10), { relative: 2e-3 }, 'drop')
    expect(one?.parts).toEqual(['trial/polarity.first-plus'])
  })

  test('fills no page with capacitances that are none', () => {
    for (const { phase } of readings.filter(({ id }) => id === 'meter.capacitance'))
      expect(phase).toBeLessThan(-Math.PI / 4)
  })

  test('gives sets without it no row of diodes', () => {
    const plain = meter({ target: 'sedge' }, DEMO).readings
    expect(plain.some(({ id }) => id === 'meter.diode')).toBe(false)
  })
})

describe('what no pair of points tells', () => {
  const { 'not told': untold, readings } = meter({ target: 'fescue' }, DEMO)

  test('is the balance behind its joints, and nothing that a reading shows', () => {
    expect(untold).toEqual(expect.arrayContaining(['fescue/balance-c', 'fescue/balance-r']))
    for (const part of ['bell', 'bell-resistor', 'hush-r', 'coil', 'impulse-quench'])
      expect(untold).not.toContain(`fescue/${part}`)
    // the resistor of a reading of its own is told by it
    expect(readings.some(({ parts }) => parts.join() === 'fescue/bell-resistor')).toBe(true)
  })
})

describe('what a table says besides', () => {
  const needle = meter({ target: 'fescue', instrument: 'needle' }, DEMO)
  const digital = meter({ target: 'fescue' }, DEMO)
  const blind = (answer: typeof digital, part: string) =>
    answer.readings.flatMap((one) => one.blind).filter(({ branch }) => branch === `fescue/${part}`)

  // common practice, no source: equal coils that oppose each other have the same resistance
  test('of a bell is that opposed coils read the same', () => {
    expect(blind(digital, 'bell')[0]?.says).toContain('oppose each other read the same')
  })

  test('of a regulator is the current that this instrument really sends through it', () => {
    const sent = (answer: typeof digital) =>
      Math.max(...blind(answer, 'regulator.series').map(({ current = 0 }) => current))
    // ohms-600 sends 0.5 mA; ohms-x1 has 1.5 V behind 20 Ω
    assertClose(sent(digital), 0.5e-3, { relative: 1e-2 }, 'digital')
    expect(sent(needle)).toBeGreaterThan(20e-3)
    // what a reading that shows nothing lets through is no current of the instrument
    for (const { current = 1 } of blind(digital, 'regulator.series')) expect(current).toBeGreaterThan(1e-6)
  })

  test('of a needle on its lowest range is that the receiver is kept from the ear', () => {
    const loud = (answer: typeof digital) =>
      answer.readings.flatMap(({ heard }) => heard).filter((one) => one.loud)
    expect(loud(needle).map(({ branch }) => branch)).toContain('fescue/receiver')
    for (const { current } of loud(needle)) expect(current).toBeGreaterThanOrEqual(1e-3)
    expect(loud(digital)).toEqual([])
    const remarks = needle.readings.flatMap((one) => one.remarks).join()
    expect(remarks).toMatch(/Not at the ear: [\d.]+ mA go through receiver/)
  })
})

test('a voltmeter by itself across a resistor finds no voltage, and no line', () => {
  const on = bench(['r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}'])
  expect(holdVoltmeter(on.net, leads(on, 'p', 'q'), 1e7).volts.re).toBe(0)
  expect(
    read(['r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}'], ['p', 'q'], { shows: 'volts' }),
  ).toMatchObject({ value: 0 })
})
