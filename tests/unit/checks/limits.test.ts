import { ProblemError } from 'ringproof'
import { deliveredLimits } from 'ringproof/answer/limits-table'
import { limitOf, readLimits } from 'ringproof/checks/limits'
import { describe, expect, test } from 'vitest'
import { limitsInUse } from '../../support/limits-in-use.ts'

const GOOD = `ringproof: 1
limits:
  trial: {value: 12, side: at-most, unit: A, says: what it limits, source: a source, clause: '1', grade: MEMORY}
`

function problemsOf(text: string) {
  try {
    readLimits(text, 'limits.yaml')
  } catch (error) {
    if (error instanceof ProblemError) return error.problems
    throw error
  }
  return []
}

describe('the delivered limits', () => {
  const limits = [...deliveredLimits().values()]

  test.each(limits.map((one) => [one.id, one] as const))(
    '%s has a source, a grade and a sentence',
    (_id, one) => {
      expect(one.source.length).toBeGreaterThan(5)
      expect(one.says.length).toBeGreaterThan(10)
      expect(one.value).toBeGreaterThan(0)
      // a trade fact says so; what comes from a paper names its clause
      expect(one.grade === 'COMMON PRACTICE').toBe(one.source === 'common practice, no source')
      expect(one.clause === '-').toBe(one.grade === 'COMMON PRACTICE')
    },
  )

  test('are all used by some check, and none is used that is not there', () => {
    expect(limitsInUse()).toEqual(limits.map(({ id }) => id).sort())
  })

  test('are read once', () => {
    expect(deliveredLimits()).toBe(deliveredLimits())
  })
})

describe('a table of limits', () => {
  test('is read with its names', () => {
    expect(limitOf(readLimits(GOOD, 'limits.yaml'), 'trial')).toMatchObject({
      id: 'trial',
      value: 12,
      unit: 'A',
    })
    expect(problemsOf(GOOD)).toEqual([])
  })

  test.each([
    ['no YAML', 'limits: [', 'no YAML'],
    ['another version', GOOD.replace('ringproof: 1', 'ringproof: 2'), 'ringproof'],
    ['a value that is no number', GOOD.replace('value: 12', 'value: twelve'), 'limits.trial.value'],
    ['a value that is not finite', GOOD.replace('value: 12', 'value: .inf'), 'limits.trial.value'],
    ['a side that is none', GOOD.replace('at-most', 'most'), 'limits.trial.side'],
    ['a grade that is none', GOOD.replace('MEMORY', 'HEARSAY'), 'limits.trial.grade'],
    ['no source', GOOD.replace('source: a source, ', ''), 'limits.trial.source'],
    ['a key that is none', GOOD.replace('clause:', 'section: 1, clause:'), 'limits.trial'],
    ['nothing', '', ''],
  ])('is refused with %s', (_says, text, where) => {
    const [problem, ...others] = problemsOf(text)
    expect(others).toEqual([])
    expect(problem).toMatchObject({ code: 'syntax', severity: 'error' })
    expect(problem?.found).toBe(`limits.yaml: ${where}`)
  })

  test('has no limit of an unknown name', () => {
    expect(() => limitOf(readLimits(GOOD, 'limits.yaml'), 'trail')).toThrow(RangeError)
  })
})
