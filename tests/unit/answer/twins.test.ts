import { check, type Shelf } from 'ringproof'
import { expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

test('a sheet that stands twice is taken once, with a warning that names both files', () => {
  const shelf: Shelf = { ...DEMO, twins: (_, name) => (name === 'fescue' ? ['a.yaml', 'b.yaml'] : [name]) }
  const answer = check({ target: 'fescue' }, shelf)
  expect(answer.problems).toMatchObject([{ code: 'key-doubled', severity: 'warning' }])
  expect(answer.problems[0]?.found).toContain('a.yaml, b.yaml')
  expect(check({ target: 'fescue' }, DEMO).problems).toEqual([])
})
