import type { Book } from 'ringproof/book/book'
import { caseOf } from 'ringproof/diagnosis/case'
import { looseOf, spreadBy } from 'ringproof/diagnosis/loose'
import { answer, begin } from 'ringproof/diagnosis/state'
import { beliefIn, expectedIn } from 'ringproof/diagnosis/weigh'
import { expect, test } from 'vitest'
import { BOOK, FAULTS, ODDS, TESTS } from './_book.ts'

/** One tolerance, a fault's own size and a transmitter. Every row is moved by a tenth, and by its own size times its number. */
const EACH = 9
const stepsOf = (row: number): number[] => [0.1, -2 * row, -row, row, 2 * row, -0.2, -0.1, 0.1, 0.2]
const LOOSE: Book = {
  ...BOOK,
  spreads: BOOK.spreads.map(() => 0.2),
  loadings: {
    straight: 1,
    curved: 2,
    steps: Float32Array.from([0, ...FAULTS].flatMap((_, row) => TESTS.flatMap(() => stepsOf(row / 100)))),
  },
}
const close = (all: readonly number[]) => all.map((one) => expect.closeTo(one, 6))

test('a row’s steps are the book’s', () => {
  const loose = looseOf(LOOSE)
  const into = new Float64Array(EACH).fill(7)
  loose?.steps(2, 1, into)
  expect([...into]).toEqual(close(stepsOf(0.02)))
  expect(looseOf(BOOK)).toBeUndefined()
})

test('two faults share the parts’ values, and each has a size of its own', () => {
  const pairs = { count: 1, first: Uint16Array.of(0), second: Uint16Array.of(2) }
  const loose = looseOf(LOOSE, pairs)
  expect(loose).toMatchObject({ straight: 1, curved: 3 })
  const into = new Float64Array(EACH + 4).fill(7)
  loose?.steps(0, 1, into)
  expect([...into].slice(EACH)).toEqual([0, 0, 0, 0])
  loose?.steps(1 + FAULTS.length, 0, into)
  const [first, second] = [stepsOf(0.01), stepsOf(0.03)]
  expect([...into]).toEqual(close([...first, ...second.slice(1, 5)]))
  // b makes the second test open on the first reading: there d alone moves it
  const open = looseOf(LOOSE, { count: 1, first: Uint16Array.of(1), second: Uint16Array.of(3) })
  open?.steps(1 + FAULTS.length, 2, into)
  expect([...into].slice(0, 1)).toEqual(close([0.1]))
  if (loose !== undefined) {
    loose.steps(1 + FAULTS.length, 0, into)
    expect(spreadBy(loose, into)).toBeCloseTo(Math.hypot(0.1, 0.01, 0.1, 0.03), 6)
  }
})

test('what a reading tells of the parts’ values narrows what further ones are expected to show', () => {
  const one = caseOf(LOOSE, ODDS)
  const state = answer(begin(), 'ohms plug.a plug.b off-hook', { x: 115 })
  const after = expectedIn(one, beliefIn(one, state))
  const t = TESTS.findIndex(({ id }) => id === 'ohms A1 A2 on-hook')
  expect(after.expected[t]).toBeGreaterThan(52)
  expect(after.spread[t]).toBeLessThan(0.05)
  // and nothing before anything was read
  expect(expectedIn(one, beliefIn(one, begin()))).toBe(one.among)
})
