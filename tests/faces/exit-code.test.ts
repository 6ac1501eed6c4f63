import type { Problem, ProblemCode } from 'ringproof'
import { codeOfCounts, codeOfProblems } from 'ringproof/cli/exit-code'
import { describe, expect, test } from 'vitest'
import { beside, jsonOf, ringproof } from './ringproof.ts'

const problem = (code: ProblemCode): Problem => ({ code, severity: 'error', found: 'a', expected: 'b' })
const counts = { holds: 5, marginal: 0, fails: 0, unknown: 0, faults: 0 }

describe('the exit code', () => {
  test.each(['no-unique-solution', 'no-convergence', 'contradiction', 'ours'] as const)(
    'is 3 for %s',
    (code) => {
      expect(codeOfProblems([problem(code)])).toBe(3)
    },
  )

  test('is 2 for all others, and where both apply', () => {
    expect(codeOfProblems([problem('syntax')])).toBe(2)
    expect(codeOfProblems([problem('contradiction'), problem('unit-missing')])).toBe(2)
    expect(codeOfProblems([{ ...problem('syntax'), severity: 'warning' }, problem('ours')])).toBe(3)
  })

  test('is 1 for what fails and for a fault by name, and when strict for what is marginal or unknown', () => {
    expect(codeOfCounts(counts, true)).toBe(0)
    expect(codeOfCounts({ ...counts, fails: 1 }, false)).toBe(1)
    expect(codeOfCounts({ ...counts, faults: 1 }, false)).toBe(1)
    for (const open of [{ marginal: 1 }, { unknown: 1 }]) {
      expect(codeOfCounts({ ...counts, ...open }, false)).toBe(0)
      expect(codeOfCounts({ ...counts, ...open }, true)).toBe(1)
    }
  })

  test('of a network that contradicts itself is 3, as text and as JSON', async () => {
    const argv = ['solve', beside('contradiction.yaml')]
    const { code, out, err } = await ringproof(argv)
    expect({ code, out }).toEqual({ code: 3, out: '' })
    expect(err).toContain('[contradiction]')
    const ran = await ringproof([...argv, '--json'])
    expect(ran.code).toBe(3)
    expect(jsonOf(ran)).toMatchObject({ wrong: [], data: { problems: [{ code: 'contradiction' }] } })
  })

  test('of the demo is 3 when the right conversion is spoilt', async () => {
    const options = ['--sheets', beside('spoilt'), '--width', '60', '--no-colour']
    const { code, out } = await ringproof(['demo', ...options], { colour: { out: true, err: true } })
    expect(code).toBe(3)
    expect(out).toContain('$ ringproof compare sedge-converted\n')
    expect(out.split('\n').filter((line) => Array.from(line).length > 60)).toEqual([])
    expect(out).not.toContain('\u001b')
  })
})
