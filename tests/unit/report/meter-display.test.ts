import { bandText, onDisplay } from 'ringproof/report/meter-display'
import { describe, expect, test } from 'vitest'

const ohms = (value: number, resolution: number, full: number) =>
  ({ value, unit: 'Ω', resolution, 'full scale': full }) as const

describe('a display', () => {
  test.each([
    [0.05, 0.1, 600, '0.1 Ω'],
    // what rounding leaves of 50 mΩ is no other reading
    [0.04999999, 0.1, 600, '0.1 Ω'],
    [4300, 1, 6000, '4.300 kΩ'],
    [825.2, 1, 6000, '825 Ω'],
    [25, 10, 9990, '30 Ω'],
    [0, 1, 6000, '0 Ω'],
    [999.6, 1, 6000, '1.000 kΩ'],
  ])('of %d Ω in steps of %d Ω up to %d Ω shows %s', (value, resolution, full, text) => {
    expect(onDisplay(ohms(value, resolution, full), value, resolution)).toBe(text)
  })

  test('keeps the sign of volts, except of nothing', () => {
    const volts = { value: -49.98, unit: 'V', resolution: 0.01, 'full scale': 60 } as const
    expect(onDisplay(volts, -49.98, 0.01)).toBe('-49.98 V')
    expect(onDisplay({ ...volts, value: -1e-9 }, -1e-9, 0.01)).toBe('0.00 V')
  })
})

describe('a band', () => {
  test.each([
    [0.2, 0.0685, 0.272, 0.1, 600, '0 to 0.3 Ω'],
    [825, 800.3, 848.1, 1, 6000, '800 to 849 Ω'],
    [449.5, 164.6, 1311, 0.1, 600, '164 to 1320 Ω'],
    [4300, 4096, 4507, 1, 6000, '4.09 to 4.51 kΩ'],
    [430, 41.7, null, 0.1, 600, 'from 41.7 Ω'],
  ])(
    'of a reading of %d Ω stands in its unit, outwards to what is shown',
    (value, least, most, resolution, full, text) => {
      expect(bandText({ least, most }, ohms(value, resolution, full))).toBe(text)
    },
  )

  test('of a needle stands in two digits and never in milliohms', () => {
    const needle = { value: 0.05, unit: 'Ω', 'full scale': 1000 } as const
    expect(bandText({ least: 0, most: 0.672 }, needle)).toBe('0 to 0.68 Ω')
    expect(bandText({ least: 22.1, most: 28.3 }, { ...needle, value: 25 })).toBe('22 to 29 Ω')
  })

  test('of a needle of volts has no end that nobody would see move', () => {
    const needle = { value: 0, unit: 'V', 'full scale': 50 } as const
    expect(bandText({ least: -2.6e-8, most: 0.75 }, needle)).toBe('0 to 0.75 V')
  })

  test('of volts may lie on both sides of nothing', () => {
    const volts = { value: 0, unit: 'V', resolution: 0.001, 'full scale': 6 } as const
    expect(bandText({ least: -0.00099, most: 0.00106 }, volts)).toBe('-0.001 to 0.002 V')
  })
})
