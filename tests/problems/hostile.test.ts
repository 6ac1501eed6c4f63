import type { Problem } from 'ringproof/problem'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { skeletonShelf } from '../support/sheets.ts'

/** Texts that somebody sends on purpose; all but the last are refused before anything is made of them. */
const HEAD =
  'ringproof: 1\nsheet: circuit\nname: bad\nparts:\n  r1: {kind: resistor, from: a, to: earth, resistance: 1 kΩ}\n'
const laughs = [
  'a: &a [x, x]',
  ...'bcdefghij'.split('').map((key, i) => `${key}: &${key} [*${'abcdefghi'[i]}, *${'abcdefghi'[i]}]`),
]

const HOSTILE: readonly (readonly [string, Problem['code'], string])[] = [
  ['100 kB of opening brackets', 'too-deep', '['.repeat(100_000)],
  ['100 kB of opening braces', 'too-deep', '{'.repeat(100_000)],
  ['100 kB of closing brackets', 'too-big', ']'.repeat(100_000)],
  ['50 kB of closing brackets', 'syntax', ']'.repeat(50_000)],
  ['pairs of brackets side by side', 'syntax', `a: ${'[]'.repeat(20_000)}`],
  ['1 MiB and a byte', 'too-big', '#'.repeat((1 << 20) + 1)],
  ['100 MB', 'too-big', 'a'.repeat(100_000_000)],
  ['a billion laughs', 'alias-refused', laughs.join('\n')],
  [
    'a block of 10,000 levels',
    'too-deep',
    Array.from({ length: 1440 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
  ],
  ['10,000 dashes in one line', 'too-deep', `a:\n  ${'- '.repeat(10_000)}x`],
  ['10,000 keys in one line', 'too-deep', 'a: '.repeat(10_000)],
  ['200,000 doubled keys', 'key-doubled', 'a: 1\n'.repeat(200_000)],
  ['200,000 doubled keys in braces', 'key-doubled', `{${'a: 1,'.repeat(150_000)}}`],
  [
    '9,000 different doubled keys',
    'key-doubled',
    `${Array.from({ length: 9000 }, (_, i) => `k${i}: 1\n`).join('')}`.repeat(2),
  ],
  ['200,000 list items', 'too-big', '- a\n'.repeat(200_000)],
  ['half a million commas', 'too-big', `a: [${','.repeat(500_000)}`],
  ['a million line ends', 'too-big', '\n'.repeat(1_000_000)],
  ['100,000 comments', 'too-big', '#a\n'.repeat(100_000)],
  ['20,000 quotations in a row', 'syntax', '"x" '.repeat(20_000)],
  ['20,000 keys over two lines', 'syntax', `a: ${' a: b\n'.repeat(20_000)}`],
  ['20,000 of them in brackets', 'syntax', `a: [${' a: b\n'.repeat(20_000)}`],
  ['a quotation that never closes', 'syntax', `a: "${'\\\\"'.repeat(200_000)}`],
  ['a key of 1 MB', 'syntax', `a: 1\n${'k'.repeat(1_000_000)}: 1`],
  ['a NUL', 'syntax', 'a: \u0000'],
  ['halves of characters', 'syntax', 'a: \ud800'.repeat(1000)],
  ['marks of byte order', 'syntax', '\uFEFF'.repeat(1000)],
  ['__proto__', 'key-forbidden', `${HEAD}  __proto__: {polluted: true}\n`],
  ['a constructor', 'key-forbidden', `${HEAD}  constructor: {prototype: {polluted: true}}\n`],
  [
    'no number',
    'quantity-out-of-range',
    `${HEAD}  v: {kind: varistor, from: a, to: earth, voltage at 1 A: 60 V, exponent: .NaN}\n`,
  ],
  [
    'infinity',
    'quantity-out-of-range',
    `${HEAD}  v: {kind: varistor, from: a, to: earth, voltage at 1 A: 60 V, exponent: -.inf}\n`,
  ],
  [
    'an overflow',
    'quantity-out-of-range',
    `${HEAD}  r2: {kind: resistor, from: a, to: earth, resistance: 1e400 Ω}\n`,
  ],
  [
    'a quantity of 1 MB',
    'quantity-unreadable',
    `${HEAD}  r2: {kind: resistor, from: a, to: earth, resistance: ${'9'.repeat(1_000_000)}Ω}\n`,
  ],
  [
    'a name of 1 MB',
    'name-malformed',
    `${HEAD}  r2: {kind: resistor, from: a, to: ${'B'.repeat(1_000_000)}, resistance: 1 kΩ}\n`,
  ],
  [
    'a kind of 1 MB',
    'part-kind-unknown',
    `${HEAD}  r2: {kind: ${'r'.repeat(1_000_000)}, from: a, to: earth}\n`,
  ],
]

describe('a hostile sheet is refused in one problem:', () => {
  test.each(HOSTILE)('%s', (_what, code, text) => {
    const { sheet, problems } = readSheet({ file: 'bad.yaml', text }, skeletonShelf())
    expect(sheet).toBeUndefined()
    expect(problems.filter(({ severity }) => severity === 'error')).toMatchObject([{ code }])
    for (const { found, expected, mend = '', excerpt = '' } of problems) {
      expect(found.length + expected.length + mend.length).toBeLessThan(500)
      expect(excerpt.length).toBeLessThanOrEqual(2000)
    }
  })

  test('and leaves no trace on other objects', () => {
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })
})

describe('a sheet that is wrong all over', () => {
  const many = Array.from({ length: 2500 }, (_, i) => `key-${i}: 1\n`).join('')
  const { problems } = readSheet({ file: 'bad.yaml', text: `${HEAD}${many}` }, skeletonShelf())

  test('names a hundred problems and counts the rest', () => {
    expect(problems).toHaveLength(101)
    expect(problems.at(-1)).toMatchObject({
      code: 'key-unknown',
      found: '2401 more problems',
      place: { line: 105 },
    })
  })

  test('names the first hundred by place', () => {
    // the end `a` that nothing else meets, then the unknown keys
    expect(problems.slice(0, 100).map(({ place }) => place?.line)).toEqual([
      5,
      ...Array.from({ length: 99 }, (_, i) => i + 6),
    ])
  })
})
