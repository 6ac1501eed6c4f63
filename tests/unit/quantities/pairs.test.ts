import fc from 'fast-check'
import { readAt, readPhasor, readSpan } from 'ringproof/quantities/quantity'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

describe('a quantity at another', () => {
  it('is read with both halves', () => {
    expect(readAt('150 Ω at 40 mA', 'resistance', 'current')).toEqual({
      ok: true,
      value: {
        value: { value: 150, unit: 'Ω', text: '150 Ω' },
        at: { value: 0.04, unit: 'A', text: '40 mA' },
      },
    })
    expect(readAt('3 mA at 25 Hz', 'current', 'frequency')).toMatchObject({
      value: { value: { value: 0.003 }, at: { value: 25 } },
    })
    expect(readAt('150 Ω ± 20 % at 40 mA', 'resistance', 'current')).toMatchObject({
      value: { value: { tolerance: 0.2 } },
    })
  })

  it('is refused without its second half', () => {
    expect(readAt('150 Ω', 'resistance', 'current')).toEqual({
      ok: false,
      fault: {
        code: 'quantity-unreadable',
        found: '`150 Ω`',
        expected: 'a resistance such as 3.3 kΩ at a current such as 40 mA',
        mend: 'write `150 Ω at` and a current such as 40 mA',
        at: 5,
      },
    })
  })

  it('has its faults placed in the whole text', () => {
    expect(readAt('150 V at 40 mA', 'resistance', 'current')).toMatchObject({
      fault: { code: 'unit-wrong', at: 4 },
    })
    expect(readAt('150 Ω at 40 V', 'resistance', 'current')).toMatchObject({
      fault: { code: 'unit-wrong', at: 12 },
    })
    expect(readAt('150 Ω at 40', 'resistance', 'current')).toMatchObject({
      fault: { code: 'unit-missing', at: 9 },
    })
    expect(readAt('', 'resistance', 'current')).toMatchObject({ fault: { code: 'quantity-unreadable' } })
  })

  it('keeps the range of each half', () => {
    expect(readAt('0 Ω at 1 mA', 'resistance', 'current', { above: 0 })).toMatchObject({
      fault: { code: 'quantity-out-of-range', at: 0 },
    })
    expect(readAt('1 Ω at 0 A', 'resistance', 'current', {}, { above: 0 })).toMatchObject({
      fault: { code: 'quantity-out-of-range', at: 7 },
    })
  })
})

describe('a span', () => {
  it.each([
    ['20 mA to 100 mA', 'current', 0.02, 0.1],
    ['50 ms to 130 ms', 'time', 0.05, 0.13],
    ['63 % to 72 %', 'ratio', 0.63, 0.72],
    ['5 Hz to 5 Hz', 'frequency', 5, 5],
  ] as const)('%s is read with both ends', (text, dimension, least, most) => {
    expect(readSpan(text, dimension)).toMatchObject({
      ok: true,
      value: { least: { value: least }, most: { value: most } },
    })
  })

  it('says its unit at both ends', () => {
    expect(readSpan('20 to 100 mA', 'current')).toMatchObject({
      fault: { code: 'unit-missing', mend: 'write `20 mA to 100 mA`' },
    })
    expect(readSpan('20 mA to 100', 'current')).toMatchObject({ fault: { code: 'unit-missing', at: 9 } })
    expect(readSpan('20 to 100', 'current')).toMatchObject({
      fault: { code: 'unit-missing', mend: 'name the unit, for instance `20 mA`' },
    })
  })

  it('has the smaller value first', () => {
    expect(readSpan('100 mA to 20 mA', 'current')).toMatchObject({
      fault: { code: 'quantity-out-of-range', mend: 'write `20 mA to 100 mA`' },
    })
  })

  it.each(['20 mA', '20 mA - 100 mA', '20…100 mA', '20 mA to', 'to 100 mA', '20 mA ± 5 % to 100 mA'])(
    'is not read from %s',
    (text) => {
      expect(readSpan(text, 'current').ok).toBe(false)
    },
  )

  it('keeps its range at both ends', () => {
    expect(readSpan('0.5 to 72', 'ratio', { min: 0, max: 1 })).toMatchObject({
      fault: { code: 'quantity-out-of-range', at: 7 },
    })
  })
})

describe('a phasor', () => {
  it('has a magnitude and an angle in radians', () => {
    expect(readPhasor('1 V at 30°')).toEqual({
      ok: true,
      value: { magnitude: { value: 1, unit: 'V', text: '1 V' }, angle: 0.5235987755982989 },
    })
    expect(readPhasor('2 mA at -90 deg', 'current')).toMatchObject({
      value: { magnitude: { value: 0.002 }, angle: -Math.PI / 2 },
    })
  })

  it('has the angle 0 where none is written', () => {
    expect(readPhasor('10 V')).toMatchObject({ value: { magnitude: { value: 10 }, angle: 0 } })
  })

  it('has no sign but an angle', () => {
    expect(readPhasor('-1 V')).toMatchObject({
      fault: { code: 'quantity-out-of-range', mend: 'write `1 V at 180°`' },
    })
    expect(readPhasor('-1 V at 30°').ok).toBe(false)
  })

  it('needs its angle in degrees or radians', () => {
    expect(readPhasor('1 V at 30')).toMatchObject({
      fault: { code: 'unit-missing', at: 7, mend: 'name the unit, for instance `30°`' },
    })
    expect(readPhasor('1 V at 30 Hz')).toMatchObject({ fault: { code: 'unit-wrong' } })
  })
})

describe('hostile pairs', () => {
  it('are read or refused, and never throw', () => {
    const fragment = fc.constantFrom(
      '1',
      ' at ',
      ' to ',
      'V',
      ' ',
      '30',
      '°',
      '-',
      ',',
      '%',
      'e9',
      'NaN',
      '\u0000',
      '\ud800',
      'x'.repeat(70),
    )
    const text = fc.oneof(
      fc.array(fragment, { maxLength: 10 }).map((parts) => parts.join('')),
      fc.string({ unit: 'binary' }),
    )
    fc.assert(
      fc.property(text, (written) => {
        for (const result of [
          readAt(written, 'voltage', 'angle'),
          readSpan(written, 'voltage'),
          readPhasor(written),
        ]) {
          if (result.ok) expect(JSON.stringify(result.value)).not.toMatch(/null/)
          else expect(result.fault.expected).not.toBe('')
        }
      }),
      { seed: SEED, numRuns: 3000 },
    )
  })
})
