import fc from 'fast-check'
import { followed, readRoute, routeHash } from 'ringproof/web/shell/fragment'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../../support/seed.ts'

describe('the fragment', () => {
  test('says which view, with the bench where it says none', () => {
    expect(readRoute('')).toEqual({ view: 'bench', more: {} })
    expect(readRoute('#view=lesson&token=ab&step=2')).toEqual({
      view: 'lesson',
      token: 'ab',
      more: { step: '2' },
    })
  })

  test('is read as it was written, whatever stands in it', () => {
    const word = fc.string({ unit: 'grapheme', minLength: 1 })
    const key = word.filter((one) => one !== 'view' && one !== 'token' && one !== '__proto__')
    fc.assert(
      fc.property(
        word,
        fc.option(word, { nil: undefined }),
        fc.dictionary(key, word),
        (view, token, more) => {
          const route = { view, ...(token === undefined ? {} : { token }), more: { ...more } }
          expect(readRoute(routeHash(route))).toEqual(route)
        },
      ),
      { seed: SEED },
    )
  })

  test('keeps the token when a link of the page is followed, and takes a new one', () => {
    const before = readRoute('#view=bench&token=ab')
    expect(followed(before, '#view=files')).toEqual({ view: 'files', token: 'ab', more: {} })
    expect(followed(before, '#view=files&token=cd').token).toBe('cd')
    expect(followed(readRoute(''), '#view=files').token).toBeUndefined()
  })
})
