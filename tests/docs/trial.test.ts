import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8')
const page = read('../../docs/trial.md')
const laws = JSON.parse(read('../trial/laws.json')) as { sets: readonly string[] }

test('docs/trial.md was written by the laws as they stand', () => {
  const [, written = ''] = /```json\n([\s\S]*?)```/.exec(page) ?? []
  expect(JSON.parse(written)).toEqual(laws)
})

test('it reports every set in every table', () => {
  const tables = ['Single faults: the group', 'The same, those of which', 'Two faults at once']
  for (const title of tables) {
    const [, table = ''] = page.split(`## ${title}`)
    const [rows = ''] = table.split('\n## ')
    for (const name of laws.sets)
      expect(rows, `${title} ${name}`).toMatch(new RegExp(`^\\| ${name} \\| \\d+ \\|`, 'm'))
  }
})
