import { caseOf } from 'ringproof/diagnosis/case'
import { observationOf } from 'ringproof/diagnosis/weigh'
import { expect, test } from 'vitest'
import { BOOK, ODDS } from './_book.ts'

const index = BOOK.tests.findIndex(({ words }) => words === undefined)
const reading = BOOK.tests[index]?.id ?? ''
const most = 1e7
const limited = { ...BOOK, tests: BOOK.tests.map((one) => ({ ...one, most })) }

test('what reads above all that counts as a resistance is open', () => {
  const one = caseOf(limited, ODDS)
  expect(observationOf(one, { test: reading, outcome: { x: 3.5e7 } })).toEqual({
    observable: index,
    x: Number.POSITIVE_INFINITY,
  })
  expect(observationOf(one, { test: reading, outcome: { x: most } })).toEqual({ observable: index, x: most })
})

test('without such a limit a number stays a number', () => {
  const found = observationOf(caseOf(BOOK, ODDS), { test: reading, outcome: { x: 3.5e7 } })
  expect(found).toEqual({ observable: index, x: 3.5e7 })
})
