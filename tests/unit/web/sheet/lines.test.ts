import type { Problem } from 'ringproof'
import { indexOf, lineCount, pieces, problemLines } from 'ringproof/web/views/sheet/lines'
import { describe, expect, test } from 'vitest'

const TEXT = 'one: 1\ntwo: 2\n\nfour: 4'

function problem(
  line: number,
  column: number,
  length: number,
  severity: Problem['severity'] = 'error',
): Problem {
  return {
    code: 'key-unknown',
    severity,
    place: { file: 'a.yaml', line, column, length },
    found: 'it',
    expected: 'another',
  }
}

describe('lines of a sheet', () => {
  test('are counted, the last one without an end too', () => {
    expect(lineCount('')).toBe(1)
    expect(lineCount(TEXT)).toBe(4)
  })

  test('a place is an index into the text', () => {
    expect(TEXT.slice(indexOf(TEXT, 2, 1), indexOf(TEXT, 2, 4))).toBe('two')
    expect(indexOf(TEXT, 4, 1)).toBe(TEXT.indexOf('four'))
  })

  test('a place beyond its line or beyond the text stays within', () => {
    expect(indexOf(TEXT, 1, 99)).toBe(TEXT.indexOf('\n'))
    expect(indexOf(TEXT, 99, 1)).toBe(TEXT.length)
  })

  test('an error outweighs a warning, and other files do not count', () => {
    const other: Problem = { ...problem(3, 1, 1), place: { file: 'b.yaml', line: 3, column: 1, length: 1 } }
    const lines = problemLines(
      [problem(1, 1, 2, 'warning'), problem(1, 4, 1), problem(2, 1, 1, 'warning'), other],
      'a.yaml',
    )
    expect([...lines]).toEqual([
      [1, 'error'],
      [2, 'warning'],
    ])
  })

  test('a line comes in pieces that make it up, what is wrong marked', () => {
    const found = pieces('two: 2', 2, [problem(2, 6, 1, 'warning'), problem(2, 1, 3)], 'a.yaml')
    expect(found).toEqual([
      { text: 'two', severity: 'error' },
      { text: ': ' },
      { text: '2', severity: 'warning' },
    ])
    expect(
      pieces('two: 2', 2, [problem(2, 1, 4), problem(2, 3, 2)], 'a.yaml')
        .map(({ text }) => text)
        .join(''),
    ).toBe('two: 2')
    expect(pieces('', 3, [problem(3, 1, 1)], 'a.yaml')).toEqual([])
  })
})
