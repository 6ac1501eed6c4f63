import fc from 'fast-check'
import { alikeBut, placeAbout, placesText, withoutPlace } from 'ringproof/report/about-place'
import { PLAIN } from 'ringproof/report/paint'
import { commonPlace, shortId, solePlace, subjectText } from 'ringproof/report/place-names'
import { table } from 'ringproof/report/table'
import { conditionWords } from 'ringproof/report/words'
import { columns, hanging, wrap } from 'ringproof/report/wrap'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../support/seed.ts'
import { at } from './answers.ts'

const words = fc.array(
  fc.string({ unit: fc.constantFrom('a', 'Ω', '/', '-', '.'), minLength: 1, maxLength: 30 }),
)

describe('breaking text', () => {
  test('loses nothing and is never wider than asked', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 1, max: 40 }), (list, width) => {
        const lines = wrap(list.join(' '), width)
        expect(Math.max(...lines.map(columns))).toBeLessThanOrEqual(width)
        expect(lines.join('').replaceAll(' ', '')).toBe(list.join(''))
      }),
      { seed: SEED },
    )
  })

  test('breaks a long word behind a joint', () => {
    expect(wrap('station-house/kitchen', 16)).toEqual(['station-house/', 'kitchen'])
  })

  test('keeps a number and its unit together', () => {
    expect(wrap('sidetone at 1 kHz', 14)).toEqual(['sidetone at', '1 kHz'])
    expect(wrap('at least 100 MΩ', 12)).toEqual(['at least', '100 MΩ'])
    expect(wrap('of 12 moves', 5)).toEqual(['of 12', 'moves'])
  })

  test('lets further lines hang below the text', () => {
    expect(hanging('mend: ', 'one two three', 12)).toEqual(['mend: one', '      two', '      three'])
  })

  test('counts a combining mark as no column', () => {
    expect(columns('e\u0301Ω')).toBe(2)
  })
})

describe('a table', () => {
  test('is never wider than its page, whatever is in it', () => {
    const cell = fc.string({ maxLength: 60 })
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 5 })), (rows) => {
        const heads = ['a', 'bb', 'ccc', 'dddd', 'eeeee'].map((heading) => ({ heading }))
        const lines = table(heads, rows, { width: 60, paint: PLAIN })
        expect(Math.max(...lines.map(columns))).toBeLessThanOrEqual(60)
      }),
      { seed: SEED },
    )
  })

  test('stands numbers to the right', () => {
    const lines = table(
      [{ heading: 'n' }, { heading: 'value', align: 'right' }],
      [
        ['a', '1'],
        ['b', '22'],
      ],
      { width: 60, paint: PLAIN },
    )
    expect(lines).toEqual(['  n  value', '  a      1', '  b     22'])
  })
})

describe('ids', () => {
  test('lose their place when it is the only one', () => {
    expect(solePlace([at('off-hook'), at('on-hook')])).toBe('kiosk')
    expect(solePlace([at('off-hook'), at('on-hook', 'hall')])).toBeUndefined()
    expect(shortId('kiosk/B3', 'kiosk')).toBe('B3')
    expect(shortId('kiosk/B3', undefined)).toBe('kiosk/B3')
    expect(subjectText('kiosk/B3 and kiosk', 'kiosk')).toBe('B3 and kiosk')
    expect(commonPlace(['earth', 'n/a', 'n/b'])).toBe('n')
    expect(commonPlace(['m/a', 'n/b'])).toBeUndefined()
  })
})

describe('places', () => {
  const all = ['a', 'b', 'c', 'd', 'e', 'f']

  test('are named one by one, or by those that are missing where these are few', () => {
    expect(placesText(['a', 'c'], all)).toBe('a, c')
    expect(placesText(all, all)).toBe('all sets')
    expect(placesText(all.slice(1), all)).toBe('all sets but a')
    expect(placesText([undefined], all)).toBe('')
    expect(placesText(['a', 'b'], ['a', 'b'])).toBe('a, b')
  })

  test('of what is judged are the subject’s, else the one that its path keeps to', () => {
    expect(placeAbout({ subject: 'b/bell', path: ['a/B3'] }, all)).toBe('b')
    expect(placeAbout({ subject: 'handset.t2, handset.r2', path: ['hall/a', 'c/B3', 'c/B4'] }, all)).toBe('c')
    expect(placeAbout({ subject: 'house', path: ['a/bell', 'b/bell'] }, all)).toBeUndefined()
    expect(placeAbout({ subject: 'house', path: [] }, all)).toBeUndefined()
  })

  test('are left out of a sentence about one of them', () => {
    expect(withoutPlace('core a/line.b (on a/B3), not b/B3', 'a')).toBe('core line.b (on B3), not b/B3')
    expect(withoutPlace('core a/line.b', undefined)).toBe('core a/line.b')
    expect(alikeBut('gets 2.13 mA at B3')).toBe(alikeBut('gets 1.7 mA at B3'))
    expect(alikeBut('at B3')).not.toBe(alikeBut('at B4'))
  })
})

test('a condition of many sets names those that do something', () => {
  const down = at('on-hook').sets.kiosk!
  const sets = { a: down, b: at('off-hook').sets.kiosk!, c: down }
  expect(conditionWords({ line: 'speech', sets })).toBe('b handset up; the others handset down; speech')
  expect(conditionWords({ line: 'idle', sets: { a: down, b: down, c: down } })).toBe('handset down')
})

test('conditions are said in plain words', () => {
  expect(conditionWords(at('off-hook/break/key'))).toBe(
    'handset up, dial running, pulse contact open, key pressed',
  )
  expect(conditionWords(at('on-hook/ringing'))).toBe('handset down, ringing arrives')
  expect(conditionWords({ line: 'idle', sets: {} })).toBe('handset down')
  const both = { line: 'speech', sets: { ...at('off-hook').sets, ...at('on-hook', 'hall').sets } } as const
  expect(conditionWords(both)).toBe('kiosk handset up; hall handset down; speech')
})
