import { readSightingOdds, SIGHTING_SORTS } from 'ringproof/identify/odds'
import { describe, expect, test } from 'vitest'
import { ODDS } from './_bench.ts'

describe('the table of sightings', () => {
  test('has a line for every sort, with slip, effort and source', () => {
    for (const sort of SIGHTING_SORTS) {
      const { slip, effort, source } = ODDS.sightings[sort]
      expect(slip).toBeGreaterThan(0)
      expect(slip).toBeLessThan(0.5)
      expect(effort).toBeGreaterThan(0)
      expect(source).not.toBe('')
    }
  })

  test('takes colours for weaker evidence than all else, and looking for cheaper than reading', () => {
    const { colours, ...others } = ODDS.sightings
    for (const { slip } of Object.values(others)) expect(slip).toBeLessThan(colours.slip)
    for (const { effort } of Object.values(ODDS.sightings))
      expect(effort).toBeLessThan(ODDS.reading.effort.value)
  })

  test('reads quantities in SI units', () => {
    expect(ODDS.reading.contacts.value).toBe(0.3)
    expect(ODDS.reading.build.value).toBe(0.03)
  })

  test.each([
    ['no YAML', ': ['],
    ['a line missing', 'ringproof: 1\nsightings: {}\nreading: {}\nunknown: {}\n'],
  ])('is refused with %s', (_, text) => {
    expect(() => readSightingOdds({ file: 'sightings.yaml', text })).toThrow(/sightings.yaml/)
  })
})
