import type { Problem } from 'ringproof/problem'
import { PLAIN } from 'ringproof/report/paint'
import { problemsText } from 'ringproof/report/text-problems'
import { columns } from 'ringproof/report/wrap'
import { describe, expect, test } from 'vitest'

const page = (width = 80) => ({ width, paint: PLAIN })
const PROBLEM: Problem = {
  code: 'unit-wrong',
  severity: 'error',
  place: { file: 'sets/kiosk.yaml', line: 12, column: 17, length: 6 },
  found: '`3.3 µF`',
  expected: 'a resistance such as 3.3 kΩ',
  mend: 'write `3.3 kΩ`',
  excerpt: '    resistance: 3.3 µF # of the bell',
}

describe('a problem as text', () => {
  test('begins with its place, is underlined, and ends with the mend', () => {
    expect(problemsText([PROBLEM], page(120))).toBe(
      [
        'sets/kiosk.yaml:12:17: found `3.3 µF`, expected a resistance such as 3.3 kΩ [unit-wrong]',
        '  12 |     resistance: 3.3 µF # of the bell',
        '     |                 ^^^^^^',
        '  mend: write `3.3 kΩ`',
        '',
        '1 problem',
        '',
      ].join('\n'),
    )
  })

  test.each([60, 80, 120])(
    'fits %d columns, however long its line is, with the underline below its word',
    (width) => {
      const excerpt = `${'x'.repeat(300)}HERE${'y'.repeat(300)}`
      const place = { file: 'a'.repeat(90), line: 1, column: 301, length: 4 }
      const lines = problemsText([{ ...PROBLEM, place, excerpt }], page(width)).split('\n')
      expect(lines.filter((line) => columns(line) > width)).toEqual([])
      const under = lines.find((line) => line.includes('^'))!
      const above = lines[lines.indexOf(under) - 1]!
      expect(above.slice(under.indexOf('^'), under.lastIndexOf('^') + 1)).toBe('HERE')
    },
  )

  test('shows nothing invisible that could steer a terminal', () => {
    const text = problemsText(
      [{ ...PROBLEM, found: 'a\u001b[31mb', excerpt: '\u001b]0;x\u0007 resistance: 1' }],
      page(),
    )
    expect([...text].filter((one) => one !== '\n' && one < ' ')).toEqual([])
  })

  test('counts warnings apart and needs no place', () => {
    const { place: _, excerpt: __, mend: ___, ...bare } = PROBLEM
    const text = problemsText([bare, bare, { ...bare, severity: 'warning' }], page())
    expect(text).toContain('warning: found')
    expect(text).toMatch(/\n2 problems, 1 warning\n$/)
    expect(text).not.toContain('|')
    expect(problemsText([], page())).toBe('')
  })
})
