import { readFileSync } from 'node:fs'
import { check, list } from 'ringproof'
import { FAULT_RULES } from 'ringproof/faults/catalogue'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const PAGE = readFileSync(new URL('../../../docs/faults.md', import.meta.url), 'utf8')
const ROWS = [...PAGE.matchAll(/^\| `(.+?)` \| (.+?) \| (.+?) \| (.+?) \|$/gm)].map(
  ([, fault = '', title = '', shows = '', demo = '']) => ({
    fault,
    title,
    shows,
    demos: [...demo.matchAll(/`(.+?)`/g)].map(([, name = '']) => name),
  }),
)

describe('the faults by name', () => {
  test('are listed with their ids, names and checks', () => {
    const { rows } = list({ what: 'faults' }, DEMO)
    expect(rows.map(({ fault }) => fault)).toEqual(FAULT_RULES.map(({ id }) => id))
    expect(rows.find(({ fault }) => fault === 'quench-lost')).toMatchObject({
      title: expect.stringContaining('quench'),
      'may show in': expect.stringContaining('wiring.quench-present'),
    })
    expect(rows.find(({ fault }) => fault === 'earth-recall-unknown')?.['may show in']).toBe('no check')
  })

  test('stand in docs/faults.md, each by its name, in the order in which they are looked for', () => {
    expect(ROWS.map(({ fault, title }) => [fault, title])).toEqual(
      FAULT_RULES.map(({ id, title }) => [id, title]),
    )
    for (const { shows } of ROWS) expect(shows.length).toBeGreaterThan(20)
  })

  test.each(ROWS.flatMap(({ fault, demos }) => demos.map((demo) => [fault, demo] as const)))(
    '%s is found in its demo %s',
    (fault, demo) => {
      const answer = check({ target: demo }, DEMO)
      expect(answer.faults.map((one) => one.fault)).toContain(fault)
      expect(answer.outcome).toBe('fails')
      expect(answer.counts.faults).toBe(answer.faults.length)
    },
  )
})

describe('lists of what is published', () => {
  test.each([
    ['reference-networks', 'network', 'six-hundred-ohm', '600 Ω'],
    ['ringing-loads', 'load', 'type-a', 'ringing.load.type-a'],
  ])('%s have a source and a grade each', (what, key, name, word) => {
    const { rows } = list({ what }, DEMO)
    for (const row of rows) {
      expect(row.source).not.toBe('')
      expect(row.grade).toMatch(/^(SEEN|MEMORY|DERIVED)/)
    }
    expect(Object.values(rows.find((row) => row[key] === name) ?? {})).toContain(word)
  })
})

test('ranges are listed with the instruments that have them, what may be shown first', () => {
  const { rows } = list({ what: 'ranges' }, DEMO)
  expect(rows[0]).toEqual({ range: 'ohms', of: 'digital, needle' })
  expect(rows.find(({ range }) => range === 'volts-60')?.of).toBe('digital')
  expect(rows.filter((row) => row.of === '')).toEqual([])
})
