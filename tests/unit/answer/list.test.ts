import { list, PROBLEM_CODES, ProblemError } from 'ringproof'
import { FIGURE_MEANINGS } from 'ringproof/answer/figure-meanings'
import { deliveredLimits } from 'ringproof/answer/limits-table'
import { CHECKS } from 'ringproof/checks/catalogue'
import { CONDITION_WORDS } from 'ringproof/netlist/condition'
import { PARTS } from 'ringproof/parts/index'
import { describe, expect, test } from 'vitest'
import { besides, DEMO } from '../../support/bench.ts'

const rowsOf = (what: string, shelf = DEMO) => list({ what }, shelf).rows

describe('a list', () => {
  test.each([
    ['checks', 'check', CHECKS.map(({ id }) => id)],
    ['limits', 'limit', [...deliveredLimits().keys()]],
    ['figures', 'figure', Object.keys(FIGURE_MEANINGS)],
    ['parts', 'part', [...PARTS.keys()]],
    ['problems', 'problem', Object.keys(PROBLEM_CODES)],
    ['conditions', 'word', CONDITION_WORDS],
  ] as const)('of %s is complete', (what, key, names) => {
    expect(rowsOf(what).map((row) => row[key])).toEqual(names)
  })

  test('of limits names the clause behind its source, where there is one', () => {
    const row = (id: string) => rowsOf('limits').find(({ limit }) => limit === id)
    expect(row('loop-make')?.source).toBe('AS/CA S002:2010, 5.5.1.8')
    expect(row('joined-cores')?.source).toBe('common practice, no source')
  })

  test.each(['sets', 'set', 'units', 'lines', 'premises', 'rewires', 'circuits', 'jobs'])(
    'of %s has those in reach, with title and file',
    (what) => {
      const kind = what === 'premises' ? what : (what.replace(/s$/, '') as 'set')
      const rows = rowsOf(what)
      expect(rows.map(({ name }) => name)).toEqual(DEMO.names(kind as 'set'))
      for (const { title, file } of rows) {
        expect(title).not.toBe('')
        expect(file).not.toBe('')
      }
    },
  )

  test('says of a sheet with mistakes that it cannot be read, and of one without title nothing', () => {
    const shelf = besides(
      'ringproof: 1\nsheet: unit\nname: broken\npins: 7\n',
      'ringproof: 1\nsheet: unit\nname: plain\npins: [p1, p2]\nparts: {r: {kind: resistor, from: p1, to: p2, resistance: 1 Ω}}\n',
    )
    const titles = Object.fromEntries(rowsOf('units', shelf).map(({ name, title }) => [name, title]))
    expect(titles).toMatchObject({ broken: 'cannot be read', plain: '' })
  })

  test('of a name without a sheet has the name alone', () => {
    expect(rowsOf('jobs', { find: () => undefined, names: () => ['ghost'] })).toEqual([
      { name: 'ghost', title: 'cannot be read', file: '' },
    ])
  })

  test.each([
    ['limit', 'limits'],
    ['chekcs', 'checks'],
    ['constructor', undefined],
  ])('of %s is refused', (what, near) => {
    try {
      list({ what }, DEMO)
      expect.unreachable()
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      expect(error.problems).toHaveLength(1)
      expect(error.problems[0]?.code).toBe('request-wrong')
      if (near !== undefined) expect(error.problems[0]?.mend).toContain(near)
    }
  })
})
