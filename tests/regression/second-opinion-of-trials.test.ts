/**
 * A check that tries mends asks questions of several netlists. The second opinion once kept them by their words alone, so
 * that a question about one netlist was answered by another's solution, or named a branch that is not there.
 */
import { checkTwice } from 'ringproof/opinion/answers'
import { expect, test } from 'vitest'
import { DEMO } from '../support/bench.ts'

test('every mend that was tried is tried again by the second opinion', async () => {
  // an adapter lead and a converter are tried here
  const answer = await checkTwice({ target: 'cottage-bare' }, DEMO)
  const mended = answer.verdicts.flatMap(({ consequences = [] }) =>
    consequences.flatMap(({ mended: one }) => (one === undefined ? [] : [one.id])),
  )
  expect(mended).toEqual(expect.arrayContaining(['ringing.current', 'loop.current']))
  expect(answer['second opinion']?.largest?.relative).toBeLessThan(1e-9)
})
