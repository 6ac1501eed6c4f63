import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { PROBLEM_CODES, type Problem } from 'ringproof/problem'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { SKELETONS, sheetsIn, shelfOf } from '../support/sheets.ts'

const here = fileURLToPath(new URL('.', import.meta.url))
const sheets = sheetsIn(here)
const neighbours = sheetsIn(`${here}shelf`)
const shelf = shelfOf([...sheetsIn(SKELETONS), ...neighbours])

/** Per sheet its problems in order: `code line:column`, a warning so called, the file where it is another one. */
const expected: Record<string, string[]> = JSON.parse(readFileSync(`${here}expected.json`, 'utf8'))

function shown({ code, severity, place }: Problem, file: string): string {
  const where = place?.file === file ? '' : `${place?.file} `
  return `${severity === 'warning' ? 'warning ' : ''}${code} ${where}${place?.line}:${place?.column}`
}

/** Codes that no sheet alone can reach, and who does. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  'too-big': 'a sheet of more than 1 MiB is made in hostile.test.ts, not kept',
  'file-missing': 'files: the host and the command line',
  'move-refused': 'moves on a wiring: rewire',
  contradiction: 'a circuit that cannot be solved: solver',
  'no-unique-solution': 'a circuit that cannot be solved: solver',
  'no-convergence': 'a circuit that cannot be solved: solver',
  'request-wrong': 'what is asked, not a sheet: the command line',
  ours: 'only a mistake of ours reaches it: the command line, with a failure planted',
}

describe('a bad sheet', () => {
  test.each(sheets)('$file has its problems at their places', (sheet) => {
    const { problems } = readSheet(sheet, shelf)
    expect(problems.map((problem) => shown(problem, sheet.file))).toEqual(expected[sheet.file])
  })

  test.each(sheets)('$file has as first code the one that it is named after', ({ file }) => {
    const code = file.replace(/(--.*)?\.yaml$/, '')
    const first = expected[file]?.[0]?.replace('warning ', '').split(' ')[0]
    if (code in PROBLEM_CODES) expect(expected[file]?.join('\n')).toContain(code)
    else expect(first).toBeDefined()
  })

  test.each(sheets)('$file says what was found and expected, and shows the line', (sheet) => {
    for (const { found, expected: wanted, place, excerpt } of readSheet(sheet, shelf).problems) {
      expect(found).not.toBe('')
      expect(wanted).not.toBe('')
      const text = [sheet, ...neighbours].find(({ file }) => file === place?.file)?.text.split('\n')
      expect(excerpt).toBe(text?.[Number(place?.line) - 1]?.replace(/\p{Cc}/u, '·'))
      expect(Number(place?.column) - 1 + Number(place?.length)).toBeLessThanOrEqual(
        Number(excerpt?.length) + 1,
      )
    }
  })

  test('gives a sheet only where all that is wrong is a warning', () => {
    for (const sheet of sheets) {
      const { sheet: read, problems } = readSheet(sheet, shelf)
      expect(read !== undefined, sheet.file).toBe(problems.every(({ severity }) => severity === 'warning'))
    }
  })

  test('stands in the list of expected problems, and nothing else does', () => {
    expect(Object.keys(expected).sort()).toEqual(sheets.map(({ file }) => file).sort())
  })
})

test('six different mistakes are six problems at six places', () => {
  const lines = expected['six-mistakes.yaml'] ?? []
  const [codes, places] = [0, 1].map((at) => new Set(lines.map((line) => line.split(' ')[at])))
  expect([lines.length, codes?.size, places?.size]).toEqual([6, 6, 6])
})

describe('every code', () => {
  const reached = new Set(
    Object.values(expected).flatMap((lines) =>
      lines.map((line) => line.replace('warning ', '').split(' ')[0]),
    ),
  )

  test.each(Object.keys(PROBLEM_CODES))(
    '%s is reached by a sheet here or, with a reason, elsewhere',
    (code) => {
      expect([reached.has(code), code in ELSEWHERE]).toContain(true)
      expect([reached.has(code), code in ELSEWHERE]).toContain(false)
    },
  )

  const rows = fileURLToPath(new URL('../../docs/problems.md', import.meta.url))
  test.each(Object.entries(PROBLEM_CODES))('%s has its row in docs/problems.md', (code, meaning) => {
    expect(existsSync(rows)).toBe(true)
    const row = readFileSync(rows, 'utf8')
      .split('\n')
      .find((line) => line.startsWith(`| \`${code}\``))
    expect(row).toContain(meaning)
  })
})
