import type { BenchTest, BenchWords } from 'ringproof/book/bench-test'
import type { Book } from 'ringproof/book/book'
import { answerAt, bestReadings, clearness, TOLD } from 'ringproof/book/tell-apart'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { DIVIDER, faultOf, testOf, volts } from './_divider.ts'

const { POSITIVE_INFINITY: OPEN, NEGATIVE_INFINITY: UNSETTLED, NaN: UNFIXED } = Number

const plan = volts(compiled(...DIVIDER), 'trial/q')
const words: BenchWords = {
  answers: [
    { id: 'silent', says: 'it is silent', fine: false },
    { id: 'weak', says: 'it is weak', fine: false },
    { id: 'rings', says: 'it rings', fine: true },
  ],
  cuts: [0.5, 1],
  slip: 0.03,
}

/** A book of one fault: each test with the sound and the faulty score, and both spreads. */
function bookOf(...all: readonly (readonly [BenchTest, number, number, number?, number?])[]): Book {
  return {
    tests: all.map(([one]) => one),
    faults: [faultOf('x open', { lifted: 0 })],
    scores: Float64Array.from([...all.map(([, sound]) => sound), ...all.map(([, , faulty]) => faulty)]),
    spreads: Float64Array.from([
      ...all.map(([, , , one = 0]) => one),
      ...all.map(([, , , , one = 0]) => one),
    ]),
  }
}

const reading = (id: string, more: Partial<BenchTest> = {}): BenchTest => testOf(id, plan, more)

describe('the answer to a question', () => {
  const asked = reading('rings', { words })

  test.each([
    [-1, 'silent'],
    [0.4999, 'silent'],
    [0.5, 'weak'],
    [0.9999, 'weak'],
    [1, 'rings'],
    [OPEN, 'rings'],
  ])('hangs on where the score lies: %d is %s', (score, id) => {
    expect(answerAt(asked, score)?.id).toBe(id)
  })

  test('is none where nothing is known, and to what is no question', () => {
    expect([UNFIXED, UNSETTLED].map((score) => answerAt(asked, score))).toEqual([undefined, undefined])
    expect(answerAt(reading('ohms'), 1)).toBeUndefined()
  })
})

describe('how clearly a reading tells a fault', () => {
  test('counts standard deviations of both spreads and of the reading', () => {
    // u moves from asinh(2) to asinh(2.2); the reading's own error is 0.01 at 1, where u moves by 0.01/√(0.5² + 1)
    const book = bookOf([reading('v'), 1, 1.1, 0.03, 0.04])
    const expected = (Math.asinh(2.2) - Math.asinh(2)) / Math.hypot(0.03, 0.04, 0.01 / Math.sqrt(1.25))
    assertClose(clearness(book, 0, 0), expected, { relative: 1e-12 }, 'clearness')
  })

  test.each([
    [1, 1, 0],
    [OPEN, OPEN, 0],
    [1, OPEN, 10],
    [OPEN, 0, 10],
    [1, UNFIXED, 0],
    [UNFIXED, 1, 0],
    [UNSETTLED, 1, 0],
    [1, 1e9, 10],
  ])('of %d against %d is %d', (sound, faulty, clear) => {
    expect(clearness(bookOf([reading('v'), sound, faulty]), 0, 0)).toBe(clear)
  })

  test('asks for what the book holds', () => {
    const book = bookOf([reading('v'), 1, 2])
    expect(() => clearness(book, 0, 1)).toThrow(RangeError)
    expect(() => clearness(book, 1, 0)).toThrow(RangeError)
  })
})

describe('the readings that tell a fault best', () => {
  const cheap = reading('cheap', { effort: 1, error: () => 0.1 })
  const dear = reading('dear', { effort: 9 })
  const live = reading('live', { effort: 2, live: true })

  test('are the one of least effort, and one that tells more clearly', () => {
    const book = bookOf([dear, 1, 1.4], [cheap, 1, 1.4])
    expect(clearness(book, 0, 0)).toBeGreaterThan(clearness(book, 0, 1))
    expect(bestReadings(book, 0)).toEqual([1, 0])
  })

  test('are one where the cheapest is the clearest, and of equals the first', () => {
    expect(bestReadings(bookOf([dear, 1, OPEN], [cheap, 1, OPEN]), 0)).toEqual([1])
    expect(bestReadings(bookOf([reading('p'), 1, OPEN], [reading('q'), 1, OPEN]), 0)).toEqual([0])
  })

  test('are on a live line only where no other reading tells', () => {
    expect(bestReadings(bookOf([live, 1, OPEN], [dear, 1, 1.2]), 0)).toEqual([1])
    expect(bestReadings(bookOf([live, 1, OPEN], [dear, 1, 1]), 0)).toEqual([0])
  })

  test('are none where all differ by less than can be told, and questions are no readings', () => {
    const little = bookOf([reading('v'), 1, 1.02], [reading('rings', { words }), 1, 0])
    expect(clearness(little, 0, 0)).toBeLessThan(TOLD)
    expect(bestReadings(little, 0)).toEqual([])
  })
})
