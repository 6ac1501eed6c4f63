import { oneOf, shownAs, ticked, write } from 'ringproof/sheet/wording'
import { describe, expect, test } from 'vitest'

const place = { file: 'a.yaml', line: 1, column: 1, length: 1 }
const scalar = (value: string | number | boolean | null, text: string) =>
  ({ shape: 'scalar', place, value, text, indent: 0 }) as const

describe('a word in a message', () => {
  test('stands in backticks, cut after 32 characters, without what could steer a terminal', () => {
    expect(ticked('B2')).toBe('`B2`')
    expect(ticked('x'.repeat(40))).toBe(`\`${'x'.repeat(31)}…\``)
    expect(ticked('a\u001b[31mb')).toBe('`a·[31mb`')
  })
})

describe('a choice of words', () => {
  test('is listed with `or`, a long one cut', () => {
    expect(oneOf([], 'nothing')).toBe('nothing')
    expect(oneOf(['a'], '')).toBe('`a`')
    expect(oneOf(new Set(['a', 'b']), '')).toBe('`a` or `b`')
    expect(oneOf(['a', 'b', 'c'], '')).toBe('`a`, `b` or `c`')
    const many = Array.from({ length: 14 }, (_, i) => `n${i}`)
    expect(oneOf(many, '')).toMatch(/^one of `n0`, .*`n11` and 2 more$/)
  })
})

describe('a mend', () => {
  test('is typed whole, however long the name', () => {
    const long = 'a-name-of-more-than-thirty-two-letters'
    expect(write(long)).toBe(`write \`${long}\``)
    expect(write('a\u202eb')).toBe('write `a·b`')
    expect(write(undefined)).toBeUndefined()
  })
})

describe('what stands there', () => {
  test.each([
    [{ shape: 'map', place, entries: new Map() } as const, 'a map'],
    [{ shape: 'list', place, items: [] } as const, 'a list'],
    [scalar(null, ''), 'nothing'],
    [scalar('', ''), 'an empty text'],
    [scalar(7, '007'), 'the number `007`'],
    [scalar(true, 'true'), 'the truth value `true`'],
    [scalar('B2', 'B2'), '`B2`'],
  ])('%o is shown as %s', (raw, words) => {
    expect(shownAs(raw)).toBe(words)
  })
})
