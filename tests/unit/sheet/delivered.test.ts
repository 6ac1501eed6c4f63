import { ProblemError } from 'ringproof'
import { readOdds } from 'ringproof/book/odds'
import { readLimits } from 'ringproof/checks/limits'
import { readAgeing } from 'ringproof/spread/ageing'
import { describe, expect, test } from 'vitest'

const READERS = [
  ['limits', readLimits],
  ['odds', readOdds],
  ['ageing', readAgeing],
] as const

function problemOf(read: () => unknown) {
  try {
    read()
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0]
    throw error
  }
  return undefined
}

describe.each(READERS)('the delivered table of %s', (noun, read) => {
  test('that is no YAML is a mistake of the installation', () => {
    expect(problemOf(() => read('a: [', `${noun}.yaml`))).toMatchObject({
      code: 'syntax',
      found: `${noun}.yaml: no YAML`,
      expected: `the table of ${noun} as it was delivered`,
    })
  })

  test('that has another shape is told by the key that is wrong', () => {
    expect(problemOf(() => read('ringproof: 2', `${noun}.yaml`))?.found).toBe(`${noun}.yaml: ringproof`)
  })
})
