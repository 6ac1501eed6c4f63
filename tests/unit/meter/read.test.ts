import { averaged } from 'ringproof/meter/show'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { DIGITAL, NEEDLE, read } from './_bench.ts'

const TIGHT = { relative: 1e-9 }
const KITS = [DIGITAL, NEEDLE]

describe('ohms', () => {
  // Ohm's law, resistors in series and side by side
  test.each(KITS)(
    'of two resistors in series are their sum, of two side by side their product over it',
    (kit) => {
      const one = '{kind: resistor, from: p, to: m, resistance: 220 Ω}'
      const two = '{kind: resistor, from: m, to: q, resistance: 330 Ω}'
      const beside = '{kind: resistor, from: p, to: m, resistance: 330 Ω}'
      assertClose(read([`a: ${one}`, `b: ${two}`], ['p', 'q'], undefined, kit).value, 550, TIGHT, 'series')
      assertClose(read([`a: ${one}`, `b: ${beside}`], ['p', 'm'], undefined, kit).value, 132, TIGHT, 'beside')
    },
  )

  test('show the least range that holds them', () => {
    const ofOhms = (ohms: string) =>
      read([`a: {kind: resistor, from: p, to: q, resistance: ${ohms}}`], ['p', 'q'])
    expect(ofOhms('599 Ω').range).toBe('ohms-600')
    expect(ofOhms('601 Ω').range).toBe('ohms-6k')
    expect(ofOhms('39 MΩ').range).toBe('ohms-40M')
  })

  test('are open beyond every range, and beyond one range where another would show them', () => {
    const part = ['a: {kind: resistor, from: p, to: q, resistance: 1 kΩ}']
    const huge = ['a: {kind: resistor, from: p, to: q, resistance: 41 MΩ}']
    const asked = { shows: 'ohms', range: 'ohms-600' } as const
    expect(read(part, ['p', 'q'], asked)).toMatchObject({
      value: null,
      state: 'beyond-range',
      range: 'ohms-600',
    })
    expect(read(huge, ['p', 'q'], asked)).toMatchObject({ value: null, state: 'open', range: 'ohms-600' })
    expect(read(huge, ['p', 'q'])).toMatchObject({ value: null, state: 'open' })
  })

  test.each(KITS)('are open through a capacitor and between islands', (kit) => {
    const parts = [
      'c: {kind: capacitor, from: p, to: q, capacitance: 2 µF}',
      'r: {kind: resistor, from: s, to: t, resistance: 1 kΩ}',
    ]
    expect(read(parts, ['p', 'q'], undefined, kit)).toMatchObject({ value: null, state: 'open' })
    expect(read(parts, ['p', 's'], undefined, kit)).toMatchObject({ value: null, state: 'open', parts: [] })
  })

  test('leave the circuit’s own sources at rest', () => {
    const parts = [
      'e: {kind: voltage-source, from: p, to: m, direct: 10 V}',
      'r: {kind: resistor, from: m, to: q, resistance: 100 Ω}',
    ]
    assertClose(read(parts, ['p', 'q']).value, 100, TIGHT, 'without the source')
  })

  test('of a needle stand nearest to the middle of their scale', () => {
    const parts = ['a: {kind: resistor, from: p, to: q, resistance: 2 kΩ}']
    const reading = read(parts, ['p', 'q'], undefined, NEEDLE)
    expect(reading.range).toBe('ohms-x100')
    // 1.5 V over 2 kΩ inside and 2 kΩ outside
    assertClose(reading.current, 1.5 / 4000, TIGHT, 'current')
  })

  test('name the parts on the way, the contacts, and what lies beside', () => {
    const parts = [
      'k: {kind: contact, from: p, to: m, open when: off-hook}',
      'r: {kind: resistor, from: m, to: q, resistance: 100 Ω}',
      's: {kind: resistor, from: m, to: q, resistance: 300 Ω}',
      't: {kind: resistor, from: m, to: q, resistance: 30 kΩ}',
    ]
    expect(read(parts, ['p', 'q'])).toMatchObject({
      contacts: ['trial/k'],
      parts: ['trial/r'],
      beside: ['trial/s'],
      path: ['trial/p', 'trial/m', 'trial/q'],
    })
  })
})

describe('a diode', () => {
  // Shockley's law: v = n·V_t·ln(1 + i/I_s), with the drop at 1 mA as the sheet states it
  const parts = ['d: {kind: diode, from: p, to: q, drop: 0.6 V at 1 mA}']

  test('drops at 1 mA what its sheet says, the red lead on its anode', () => {
    const reading = read(parts, ['p', 'q'], { shows: 'diode' })
    assertClose(reading.value, 0.6, { relative: 1e-8 }, 'drop')
    expect(reading.unit).toBe('V')
    expect(read(parts, ['q', 'p'], { shows: 'diode' })).toMatchObject({ value: null, state: 'open' })
  })

  test('conducts the other way round for a needle, whose red lead is negative', () => {
    expect(read(parts, ['p', 'q'], undefined, DIGITAL).value).not.toBeNull()
    expect(read(parts, ['p', 'q'], undefined, NEEDLE)).toMatchObject({ value: null, state: 'open' })
    expect(read(parts, ['q', 'p'], undefined, NEEDLE).value).toBeGreaterThan(0)
  })

  test('reads otherwise on every range, since each sends another current', () => {
    const on = (range: string) => read(parts, ['q', 'p'], { shows: 'ohms', range }, NEEDLE).value ?? 0
    expect(on('ohms-x10')).toBeLessThan(on('ohms-x100') / 3)
  })
})

describe('a buzz', () => {
  const through = (ohms: string) =>
    read([`a: {kind: resistor, from: p, to: q, resistance: ${ohms}}`], ['p', 'q'], { shows: 'buzz' })
  test('sounds below its limit and is silent above it and through nothing', () => {
    expect(through('29 Ω').buzzes).toBe(true)
    expect(through('31 Ω').buzzes).toBe(false)
    expect(through('10 kΩ')).toMatchObject({ buzzes: false, value: null, state: 'open' })
  })
})

describe('capacitance', () => {
  const shows = { shows: 'capacitance' } as const

  test('of a capacitor alone is its own, without a remark', () => {
    const reading = read(['c: {kind: capacitor, from: p, to: q, capacitance: 1.8 µF}'], ['p', 'q'], shows)
    assertClose(reading.value, 1.8e-6, TIGHT, 'capacitance')
    expect(reading).toMatchObject({ unit: 'F', remarks: [], range: 'capacitance-6u' })
  })

  // Y = 1/R + jωC: what is shown is |Y|/ω
  test('with a resistor beside it is shown too large, and that is said', () => {
    const parts = [
      'c: {kind: capacitor, from: p, to: q, capacitance: 100 nF}',
      'r: {kind: resistor, from: p, to: q, resistance: 10 kΩ}',
    ]
    const omega = 2 * Math.PI * 100
    const reading = read(parts, ['p', 'q'], shows)
    assertClose(reading.value, Math.hypot(1e-4, omega * 1e-7) / omega, TIGHT, 'shown')
    expect(reading.remarks.join()).toMatch(/resistance/)
  })

  test('of a coil is no capacitance, and that is said', () => {
    const reading = read(['l: {kind: inductor, from: p, to: q, inductance: 12 H}'], ['p', 'q'], shows)
    expect(reading.remarks.join()).toMatch(/90°.*coil/)
  })

  test('between two islands is none', () => {
    const parts = [
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      's: {kind: resistor, from: s, to: t, resistance: 1 kΩ}',
    ]
    expect(read(parts, ['p', 's'], shows).value).toBe(0)
  })
})

describe('volts', () => {
  const divider = [
    'e: {kind: voltage-source, from: p, to: earth, direct: 10 V, alternating: 10 V}',
    'r1: {kind: resistor, from: p, to: q, resistance: 1 MΩ}',
    'r2: {kind: resistor, from: q, to: earth, resistance: 1 MΩ}',
  ]
  // a divider of 1 MΩ and 1 MΩ is 5 V behind 500 kΩ (Thévenin)
  test('are what the instrument’s own resistance leaves of them', () => {
    const shows = { shows: 'volts' } as const
    assertClose(read(divider, ['q', 'earth'], shows).value, (5 * 10) / 10.5, TIGHT, 'digital')
    const needle = read(divider, ['q', 'earth'], { ...shows, range: 'volts-10' }, NEEDLE)
    assertClose(needle.value, (5 * 0.2) / 0.7, TIGHT, 'needle of 200 kΩ')
  })

  test('are negative with the leads changed over; a needle then goes the wrong way', () => {
    const wanted = { shows: 'volts', range: 'volts-10' } as const
    const turned = read(divider, ['earth', 'q'], wanted, NEEDLE)
    expect(turned.value).toBeLessThan(0)
    expect(turned.remarks.join()).toContain('wrong way')
  })

  test('of an alternating source are its rms value, and less sure below the range’s least frequency', () => {
    const wanted = { shows: 'alternating-volts', frequency: 25 } as const
    const reading = read(divider, ['p', 'earth'], wanted)
    assertClose(reading.value, 10, TIGHT, 'rms')
    expect(reading.remarks.join()).toContain('40 Hz')
    expect(read(divider, ['p', 'earth'], { ...wanted, frequency: 50 }).remarks.join()).not.toContain('40 Hz')
  })

  // mean of |d + √2 r sin x| by the midpoint rule, times π/(2√2)
  test.each([
    [1, 0],
    [1, 0.5],
    [1, 1.4],
    [1, 3],
    [0, 2],
  ])('of %f V alternating over %f V direct average as the rectified wave does', (rms, direct) => {
    const steps = 100_000
    let sum = 0
    for (let k = 0; k < steps; k += 1)
      sum += Math.abs(direct + Math.SQRT2 * rms * Math.sin((2 * Math.PI * (k + 0.5)) / steps))
    const expected = ((sum / steps) * Math.PI) / (2 * Math.SQRT2)
    assertClose(averaged(rms, direct), expected, { relative: 1e-7 }, 'averaged')
  })

  test('join direct and alternating where the range does not keep direct out', () => {
    const wanted = { shows: 'alternating-volts', frequency: 50, range: 'alternating-volts-50' } as const
    const reading = read(divider, ['p', 'earth'], wanted, NEEDLE)
    assertClose(reading.value, averaged(10, 10), TIGHT, 'needle')
    expect(reading.remarks.join()).toContain('direct voltage')
  })
})

describe('what ear and eye add', () => {
  const receiver = 'x: {kind: receiver, from: p, to: q, resistance: 150 Ω, inductance: 20 mH}'
  const sender =
    't: {kind: transmitter, from: p, to: q, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}'

  test('a click in a receiver that carries the current, none where it is too small', () => {
    expect(read([receiver], ['p', 'q']).heard).toMatchObject([
      { branch: 'trial/x', says: 'click', current: 5e-4 },
    ])
    const far = 'r: {kind: resistor, from: q, to: m, resistance: 5 MΩ}'
    expect(read([receiver, far], ['p', 'm']).heard).toEqual([])
  })

  test('a waver in a transmitter, its band as wide as carbon is', () => {
    const reading = read([sender], ['p', 'q'])
    expect(reading.heard).toMatchObject([{ branch: 'trial/t', says: 'scrape' }])
    expect(reading.blind.map(({ branch }) => branch)).toContain('trial/t')
    const spread = DIGITAL.habits['transmitter-spread'].value
    const value = reading.value ?? 0
    assertClose(reading.spread?.interval.most, value * spread, { relative: 1e-6 }, 'most')
    assertClose(reading.spread?.interval.least, value / spread, { relative: 1e-6 }, 'least')
  })

  test('a bell’s health and a capacitor’s leakage are said not to show', () => {
    const bell =
      'b: {kind: bell, from: p, to: m, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}'
    const blind = read([bell, 'c: {kind: capacitor, from: m, to: q, capacitance: 2 µF}'], ['p', 'q']).blind
    expect(blind.map(({ branch }) => branch).sort()).toEqual(['trial/b', 'trial/c'])
  })
})
