import { longestQuantity, type QuantityResult, readQuantity } from 'ringproof/quantities/quantity'
import { DIMENSIONS, type Dimension } from 'ringproof/quantities/units'
import { describe, expect, it } from 'vitest'

function valueIn(text: string, dimension: Dimension): number {
  const result = readQuantity(text, dimension)
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.fault)}`)
  return result.quantity.value
}

function faultOf(result: QuantityResult): {
  code: string
  mend?: string
  at?: number
  expected: string
  found: string
} {
  if (result.ok) throw new Error(`read as ${result.quantity.value}`)
  return result.fault
}

describe('a quantity with its unit', () => {
  // prefixes and unit symbols: ISO 80000-1, from memory
  it.each<[string, Dimension, number]>([
    ['3.3 kΩ', 'resistance', 3300],
    ['3.3kΩ', 'resistance', 3300],
    ['3.3 k\u2126', 'resistance', 3300],
    ['3.3kohm', 'resistance', 3300],
    ['1 kohm', 'resistance', 1000],
    ['500 ohm', 'resistance', 500],
    ['500 ohms', 'resistance', 500],
    ['2 Megohm'.toLowerCase(), 'resistance', 2e6],
    ['10 mΩ', 'resistance', 0.01],
    ['1 GΩ', 'resistance', 1e9],
    ['1e3 Ω', 'resistance', 1000],
    ['1.5E-2 Ω', 'resistance', 0.015],
    ['0 Ω', 'resistance', 0],
    ['1.8 µF', 'capacitance', 1.8e-6],
    ['1.8 \u03bcF', 'capacitance', 1.8e-6],
    ['1.8uF', 'capacitance', 1.8e-6],
    ['310 nF', 'capacitance', 310e-9],
    ['100 pF', 'capacitance', 100e-12],
    ['0.107 H', 'inductance', 0.107],
    ['20 mH', 'inductance', 0.02],
    ['-50 V', 'voltage', -50],
    ['\u221250 V', 'voltage', -50],
    ['+50 V', 'voltage', 50],
    ['40 mA', 'current', 0.04],
    ['25 Hz', 'frequency', 25],
    ['3.4 kHz', 'frequency', 3400],
    ['2 km', 'length', 2000],
    ['0.5 mm', 'length', 0.0005],
    ['.5 mm', 'length', 0.0005],
    ['12 cm', 'length', 0.12],
    ['130 ms', 'time', 0.13],
    ['5 µs', 'time', 5e-6],
    ['20 °C', 'temperature', 20],
    ['-5\u2103', 'temperature', -5],
    ['5 %', 'ratio', 0.05],
    ['63%', 'ratio', 0.63],
    ['0.985', 'ratio', 0.985],
    ['2 mS', 'conductance', 0.002],
    ['50 mW', 'power', 0.05],
    ['-12 dB', 'level', -12],
    ['0.5 rad', 'angle', 0.5],
  ])('%s is read as %s of %d', (text, dimension, value) => {
    const result = readQuantity(text, dimension)
    expect(result).toEqual({
      ok: true,
      quantity: { value, unit: DIMENSIONS[dimension].unit, text: text.trim() },
    })
  })

  it('may stand apart from its unit by any blank, and is kept as written but trimmed', () => {
    for (const blank of [' ', '\u00a0', '\u2009', '\u202f', '  ', '']) {
      expect(readQuantity(` 3.3${blank}kΩ `, 'resistance')).toMatchObject({
        ok: true,
        quantity: { value: 3300, text: `3.3${blank}kΩ` },
      })
    }
  })

  it('may group its thousands by blanks, in threes only', () => {
    expect(valueIn('47 000 Ω', 'resistance')).toBe(47000)
    expect(valueIn('1\u202f000\u202f000 Ω', 'resistance')).toBe(1e6)
    expect(readQuantity('47 00 Ω', 'resistance').ok).toBe(false)
    expect(readQuantity('4700 000 Ω', 'resistance').ok).toBe(false)
  })

  it('reads every spelling of the table, for every dimension', () => {
    for (const [dimension, row] of Object.entries(DIMENSIONS)) {
      for (const [spelling, scale] of row.spellings) {
        const expected = scale === 'degree' ? (1e-6 * Math.PI) / 180 : 10 ** (scale - 6)
        const text = `1e-6 ${spelling}`
        if (expected < 1e-17) continue
        expect(Math.abs(valueIn(text, dimension as Dimension) / expected - 1), text).toBeLessThan(1e-15)
      }
    }
  })

  it('reads the example of every dimension, within its own limits', () => {
    for (const [dimension, { example, least, most, usual, spellings }] of Object.entries(DIMENSIONS)) {
      const value = valueIn(example, dimension as Dimension)
      expect(value).toBeGreaterThanOrEqual(least)
      expect(value).toBeLessThanOrEqual(most)
      expect(spellings.has(usual)).toBe(true)
    }
  })
})

describe('a letter code', () => {
  // IEC 60062 (secondary copy)
  it.each<[string, Dimension, number]>([
    ['R47', 'resistance', 0.47],
    ['4R7', 'resistance', 4.7],
    ['470R', 'resistance', 470],
    ['4K7', 'resistance', 4700],
    ['47K', 'resistance', 47e3],
    ['47K3', 'resistance', 47.3e3],
    ['470K', 'resistance', 470e3],
    ['4M7', 'resistance', 4.7e6],
    ['p33', 'capacitance', 0.33e-12],
    ['4n7', 'capacitance', 4.7e-9],
    ['1µ8', 'capacitance', 1.8e-6],
    ['100n', 'capacitance', 100e-9],
    // common practice beside the standard
    ['3k3', 'resistance', 3300],
    ['3k3 Ω', 'resistance', 3300],
    ['1u8', 'capacitance', 1.8e-6],
    ['4n7F', 'capacitance', 4.7e-9],
    ['4.7k', 'resistance', 4700],
  ])('%s is a %s of %d', (text, dimension, value) => {
    expect(valueIn(text, dimension)).toBe(value)
  })

  it('in the wrong letter case is refused with the right one', () => {
    expect(faultOf(readQuantity('4r7', 'resistance'))).toMatchObject({
      code: 'unit-wrong',
      mend: 'write `4R7`',
    })
    expect(faultOf(readQuantity('4N7', 'capacitance'))).toMatchObject({
      code: 'unit-wrong',
      mend: 'write `4n7`',
    })
    expect(faultOf(readQuantity('4m7', 'resistance'))).toMatchObject({
      code: 'unit-wrong',
      mend: 'write `4M7`',
    })
  })

  it('of another dimension is a wrong unit', () => {
    expect(faultOf(readQuantity('4n7', 'resistance')).code).toBe('unit-wrong')
    expect(faultOf(readQuantity('3k3', 'voltage')).code).toBe('unit-wrong')
    expect(faultOf(readQuantity('3k3 V', 'resistance')).code).not.toBe('unit-missing')
  })

  it('is no power of ten, and has no sign', () => {
    expect(faultOf(readQuantity('4e7', 'resistance')).code).toBe('unit-missing')
    expect(readQuantity('-4R7', 'resistance').ok).toBe(false)
  })
})

describe('a tolerance', () => {
  it.each(['3.3 kΩ ± 5 %', '3.3kΩ±5%', '3.3 kΩ +- 5 %', '3.3 kΩ +/- 5 %', '3k3 ± 5.0 %'])(
    'behind the value is a fraction: %s',
    (text) => {
      expect(readQuantity(text, 'resistance')).toMatchObject({
        ok: true,
        quantity: { value: 3300, tolerance: 0.05 },
      })
    },
  )

  it('is correctly rounded too', () => {
    expect(readQuantity('2 µF ± 0.3 %', 'capacitance')).toMatchObject({ quantity: { tolerance: 0.003 } })
    expect(readQuantity('2 µF ± 7 %', 'capacitance')).toMatchObject({ quantity: { tolerance: 0.07 } })
  })

  it('is left out where none is written', () => {
    const result = readQuantity('3.3 kΩ', 'resistance')
    expect(result.ok && 'tolerance' in result.quantity).toBe(false)
  })

  it.each([
    ['3.3 kΩ ± 5', 'unit-missing'],
    ['3.3 kΩ ± 5 Ω', 'unit-wrong'],
    ['3.3 kΩ ± ', 'quantity-unreadable'],
    ['3.3 kΩ ± -5 %', 'quantity-unreadable'],
    ['3.3 kΩ ± 100 %', 'quantity-out-of-range'],
    ['3.3 kΩ ± 1e999 %', 'quantity-out-of-range'],
    ['± 5 %', 'quantity-unreadable'],
    ['3.3 kΩ ± 5 % ± 5 %', 'unit-wrong'],
  ])('%s is refused as %s', (text, code) => {
    expect(faultOf(readQuantity(text, 'resistance')).code).toBe(code)
  })

  it('has no meaning behind temperatures, angles and levels', () => {
    for (const [text, dimension] of [
      ['20 °C ± 5 %', 'temperature'],
      ['30° ± 5 %', 'angle'],
      ['-12 dB ± 5 %', 'level'],
    ] as const) {
      expect(faultOf(readQuantity(text, dimension)).code).toBe('quantity-unreadable')
    }
  })
})

describe('a refusal', () => {
  it('of a bare number names the unit and shows it with the same digits', () => {
    expect(readQuantity('1.8', 'capacitance')).toEqual({
      ok: false,
      fault: {
        code: 'unit-missing',
        found: '`1.8`',
        expected: 'a capacitance such as 1.8 µF, with its unit',
        mend: 'name the unit, for instance `1.8 µF`',
        at: 0,
      },
    })
    for (const dimension of Object.keys(DIMENSIONS) as Dimension[]) {
      if (dimension === 'ratio') continue
      const fault = faultOf(readQuantity('47', dimension))
      expect(fault.code).toBe('unit-missing')
      const example = /`(.+)`/.exec(fault.mend ?? '')?.[1] ?? ''
      expect(readQuantity(example, dimension).ok, example).toBe(true)
    }
  })

  it('of another dimension points at the unit', () => {
    expect(faultOf(readQuantity('10 V', 'resistance'))).toEqual({
      code: 'unit-wrong',
      found: '`10 V`',
      expected: 'a resistance such as 3.3 kΩ',
      at: 3,
    })
    expect(faultOf(readQuantity('  10 furlong', 'length'))).toMatchObject({ code: 'unit-wrong', at: 5 })
  })

  it.each<[string, Dimension, string]>([
    ['25 hz', 'frequency', 'write `25 Hz`'],
    ['25 HZ', 'frequency', 'write `25 Hz`'],
    ['3 MA', 'current', 'write `3 mA`'],
    ['3.3 KΩ', 'resistance', 'write `3.3 kΩ`'],
    ['5 mS', 'time', 'write `5 ms`'],
    ['10 v', 'voltage', 'write `10 V`'],
    ['10 Db', 'level', 'write `10 dB`'],
    ['25 mhz', 'frequency', 'write `25 mHz` or `25 MHz`'],
    ['10 k Ω', 'resistance', 'write `10 kΩ`'],
    ['20 C', 'temperature', 'write `20 °C`'],
    ['25 c/s', 'frequency', 'write `25 Hz`'],
    ['1.8 MF', 'capacitance', 'write `1.8 µF`'],
    ['2 mfd', 'capacitance', 'write `2 µF`'],
    ['30DEG', 'angle', 'write `30 deg`'],
    ['30 DEG', 'angle', 'write `30 deg`'],
  ])('of %s for a %s says: %s', (text, dimension, mend) => {
    expect(faultOf(readQuantity(text, dimension))).toMatchObject({ code: 'unit-wrong', mend })
  })

  it('offers no unit that would be absurd', () => {
    // 20000 MHz lies beyond the limits
    expect(faultOf(readQuantity('20000 mhz', 'frequency')).mend).toBe('write `20000 mHz`')
    expect(faultOf(readQuantity('300 C', 'temperature'))).not.toHaveProperty('mend')
    expect(faultOf(readQuantity('1e-99 hz', 'frequency'))).not.toHaveProperty('mend')
  })

  it.each([
    ['3,3 kΩ', 'write `3.3 kΩ`'],
    ['1,000 Ω', 'write `1.000 Ω` or, if thousands are meant, `1000 Ω`'],
    ['0,047 Ω', 'write `0.047 Ω`'],
  ])('of a decimal comma in %s says: %s', (text, mend) => {
    expect(faultOf(readQuantity(text, 'resistance'))).toMatchObject({ code: 'quantity-unreadable', mend })
  })

  it.each([
    '',
    '   ',
    'Ω',
    'open',
    '--5 Ω',
    '.',
    '. Ω',
    'e5 Ω',
    '5 Ω 5',
    '5;Ω',
    '0x10 Ω',
    '٣ Ω',
    '5 Ω!',
    '{}',
  ])('of unreadable text is unreadable: "%s"', (text) => {
    expect(['quantity-unreadable', 'unit-wrong']).toContain(faultOf(readQuantity(text, 'resistance')).code)
  })

  it.each([
    'NaN',
    'NaN Ω',
    'nan',
    'Infinity Ω',
    '-Infinity',
    'inf',
    '+inf Ω',
    '∞ Ω',
    '1e999 Ω',
    '1e99999999999999999999999 Ω',
    '1e-400 Ω',
    '1e-99999999999999999999999 Ω',
    '-1 Ω',
    '1.1e15 Ω',
    '1e-19 Ω',
  ])('of %s calls it out of range', (text) => {
    expect(faultOf(readQuantity(text, 'resistance')).code).toBe('quantity-out-of-range')
  })

  it('names the limits that the key sets', () => {
    const at = (text: string, range: { min?: number; max?: number; above?: number }) =>
      faultOf(readQuantity(text, 'resistance', range))
    expect(at('0 Ω', { above: 0 })).toMatchObject({
      code: 'quantity-out-of-range',
      expected: 'a resistance above 0 Ω',
    })
    expect(at('0.5 Ω', { min: 1 }).expected).toBe('a resistance of at least 1 Ω')
    expect(at('20 Ω', { max: 10 }).expected).toBe('a resistance of at most 10 Ω')
    expect(at('20 kΩ', { min: 1, max: 4700 }).expected).toBe('a resistance from 1 Ω to 4.7 kΩ')
    expect(at('20 kΩ', { above: 0, max: 4700 }).expected).toBe('a resistance above 0 Ω and of at most 4.7 kΩ')
  })

  it('keeps the limits themselves allowed, but not `above`', () => {
    expect(readQuantity('1 Ω', 'resistance', { min: 1, max: 1 }).ok).toBe(true)
    expect(readQuantity('1 Ω', 'resistance', { above: 1 }).ok).toBe(false)
    expect(readQuantity('1e15 Ω', 'resistance').ok).toBe(true)
  })

  it('asks for % where a bare ratio is a hundred times too large', () => {
    expect(faultOf(readQuantity('63', 'ratio', { min: 0, max: 1 })).mend).toBe(
      'write `63 %` if a percentage is meant',
    )
    expect(faultOf(readQuantity('630', 'ratio', { min: 0, max: 1 })).mend).toBeUndefined()
  })

  it('cuts long text, looks no further into it, and shows nothing invisible', () => {
    const long = faultOf(readQuantity('1'.repeat(100_000), 'resistance'))
    expect(long.code).toBe('quantity-unreadable')
    expect(long.found.length).toBeLessThan(40)
    expect(readQuantity(`${' '.repeat(longestQuantity - 3)}1 Ω`, 'resistance').ok).toBe(true)
    expect(readQuantity(`${' '.repeat(longestQuantity - 2)}1 Ω`, 'resistance').ok).toBe(false)
    expect(faultOf(readQuantity('1 \u001b[31mΩ\u202e', 'resistance')).found).toBe('`1 ·[31mΩ·`')
    expect(faultOf(readQuantity('', 'resistance')).found).toBe('nothing')
  })
})
