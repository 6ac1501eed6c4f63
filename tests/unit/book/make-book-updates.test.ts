import { seededRandom } from 'ringproof/algebra/random'
import { layOut } from 'ringproof/answer/book-order'
import { bookMaker } from 'ringproof/book/make-book'
import { pairMaker } from 'ringproof/book/pairs'
import { freshVariants } from 'ringproof/figures/variants'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { farApart } from '../../support/close.ts'
import { SEED } from '../../support/seed.ts'

/** Two amounts that are far apart; of what is less than a thousandth of the last digit nothing is asked. */
function apart(one: number, other: number, scale: number, relative: number): string | null {
  if (Object.is(one, other)) return null
  if (!Number.isFinite(other)) return `${one} is not ${other}`
  return farApart(one, other, { relative, absolute: relative * 1e-3 * scale })
}

describe.each([
  ['sedge', 'workshop', 3],
  ['fescue', 'cottage', 1],
])('a sample of the book of %s in the %s', (target, on, sampled) => {
  const { inputs } = layOut({ target, on }, DEMO)
  const { tests, faults } = inputs
  const random = seededRandom(Number(SEED))
  const drawn = Array.from({ length: sampled }, () => Math.floor(random() * (1 + faults.length)))

  test('is by updates what it is solved afresh, to a share of 1e-9', () => {
    const [quick, fresh] = [bookMaker(inputs), bookMaker(inputs, freshVariants)]
    const found = drawn.flatMap((row) => {
      const [one, other] = [quick.rows(row, row + 1), fresh.rows(row, row + 1)]
      return tests.flatMap(({ id, scale }, t) => {
        const wrong = apart(one.scores[t] ?? 0, other.scores[t] ?? 0, scale, 1e-9)
        // a spread is the difference of two scores, which leaves fewer digits
        const spread = farApart(one.spreads[t], other.spreads[t] ?? 0, { relative: 1e-6, absolute: 1e-9 })
        return [wrong, spread].flatMap((says) => (says === null ? [] : [`${row} ${id}: ${says}`]))
      })
    })
    expect(found).toEqual([])
  })

  test('so are pairs, to their seven digits', () => {
    const [quick, fresh] = [pairMaker(inputs), pairMaker(inputs, freshVariants)]
    expect(quick.count).toBeGreaterThan(10_000)
    const found = drawn.flatMap((row) => {
      const pair = (row * 97) % quick.count
      const [one, other] = [quick.rows(pair, pair + 1), fresh.rows(pair, pair + 1)]
      return tests.flatMap(({ id, scale }, t) => {
        const wrong = apart(one.scores[t] ?? 0, other.scores[t] ?? 0, scale, 1e-6)
        return wrong === null ? [] : [`${pair} ${id}: ${wrong}`]
      })
    })
    expect(found).toEqual([])
  })

  test('does not depend on which rows were made before', () => {
    const [maker, other] = [bookMaker(inputs), bookMaker(inputs)]
    const [first = 0, ...rest] = drawn
    const alone = maker.rows(first, first + 1)
    for (const row of rest) other.rows(row, row + 1)
    const late = other.rows(first, first + 1)
    expect(late.scores).toEqual(alone.scores)
    expect(late.spreads).toEqual(alone.spreads)
  })
})
