import fc from 'fast-check'
import { editDistance, nearest } from 'ringproof/quantities/nearest'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../support/seed.ts'

describe('the nearest name', () => {
  const names = ['resistance', 'inductance', 'kind', 'from', 'to']

  test.each([
    ['resistence', 'resistance'],
    ['resistnace', 'resistance'],
    ['Resistance', 'resistance'],
    ['form', 'from'],
    ['kindd', 'kind'],
  ])('of %s is %s', (word, meant) => {
    expect(nearest(word, names)).toBe(meant)
  })

  test('is none when the word is too far from all of them', () => {
    expect(nearest('colour', names)).toBeUndefined()
    expect(nearest('xy', names)).toBeUndefined()
  })

  test('is the first of equally near ones, and a nearer one wins wherever it stands', () => {
    expect(nearest('r3', ['r1', 'r2'])).toBe('r1')
    expect(nearest('bells', ['bill', 'balls', 'bell'])).toBe('balls')
    expect(nearest('sedge-found', ['sedge-bound', 'sedge-foundd'])).toBe('sedge-bound')
  })

  test('is never the word itself', () => {
    expect(nearest('from', ['from', 'form'])).toBe('form')
  })

  test('is not sought for a word of more than 48 letters', () => {
    const long = 'a'.repeat(48)
    expect(nearest(long, [`${long}b`])).toBe(`${long}b`)
    expect(nearest(`${long}c`, [`${long}b`])).toBeUndefined()
  })
})

describe('the edit distance', () => {
  // published examples of the restricted Damerau-Levenshtein distance: `CA` to `ABC` is 3, from memory
  test.each([
    ['', '', 0],
    ['abc', '', 3],
    ['ab', 'ba', 1],
    ['ca', 'abc', 3],
    ['kitten', 'sitting', 3],
  ])('from %s to %s is %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance)
  })

  test('is symmetric, nought only between equals, and at most the longer length', () => {
    const word = fc.string({ maxLength: 12, unit: fc.constantFrom('a', 'b', 'c') })
    fc.assert(
      fc.property(word, word, (a, b) => {
        const distance = editDistance(a, b)
        expect(editDistance(b, a)).toBe(distance)
        expect(distance === 0).toBe(a === b)
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length))
        expect(distance).toBeGreaterThanOrEqual(Math.abs(a.length - b.length))
      }),
      { seed: SEED },
    )
  })
})
