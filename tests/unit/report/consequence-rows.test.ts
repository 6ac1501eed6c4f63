import { consequenceRows, rangeText } from 'ringproof/report/consequence-rows'
import { PLAIN } from 'ringproof/report/paint'
import { describe, expect, test } from 'vitest'
import { figure } from './answers.ts'

const places = ['a', 'b', 'c']
const gets = (place: string, now: number, mended?: number) => {
  const of = (value: number) => figure({ id: 'ringing.current', subject: `${place}/bell`, value })
  return { figure: of(now), ...(mended === undefined ? {} : { mended: of(mended) }) }
}
const rows = (...all: ReturnType<typeof gets>[]) =>
  consequenceRows(all, places, { width: 100, paint: PLAIN }, 2).slice(1)

describe('what follows in several sets', () => {
  test('stands in one row where it is nearly alike, from the least to the most', () => {
    expect(rows(gets('a', 0.0233, 0.041), gets('b', 0.0231, 0.041), gets('c', 0.0232, 0.041))).toEqual([
      expect.stringMatching(/all sets +23\.1 mA to 23\.3 mA +41\.0 mA$/),
    ])
  })

  test('stands apart where one set differs from the others', () => {
    const [first, second] = rows(gets('a', 0.136, 0.05), gets('b', 0.0233, 0.041), gets('c', 0.0233, 0.041))
    expect(first).toMatch(/ a +136 mA +50\.0 mA$/)
    expect(second).toMatch(/ b, c +23\.3 mA +41\.0 mA$/)
  })

  test('has a dash where nothing was mended, and nothing at all where nothing follows', () => {
    expect(rows(gets('a', 0.01))[0]).toMatch(/10\.0 mA +–$/)
    expect(consequenceRows([], places, { width: 80, paint: PLAIN }, 2)).toEqual([])
    expect(rangeText([undefined])).toBe('–')
  })
})
