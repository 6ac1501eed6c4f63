import { bookKey } from 'ringproof/book/book-key'
import { canonicalText } from 'ringproof/book/canonical'
import type { BookInputs } from 'ringproof/book/make-book'
import { describe, expect, test } from 'vitest'
import { compiled } from '../../support/compiled.ts'
import { DIVIDER, divider, faultOf, testOf, volts } from './_divider.ts'

describe('data as text', () => {
  test('is the same whatever the order of keys, and whatever does not count', () => {
    expect(canonicalText({ b: 1, a: [1, undefined, 'x'], f: () => 0, u: undefined })).toBe(
      '{"a":[1,,"x"],"b":1}',
    )
    expect(canonicalText({ a: 1, b: 2 })).toBe(canonicalText({ b: 2, a: 1 }))
    expect(
      canonicalText(
        new Map([
          ['b', 1],
          ['a', 2],
        ]),
      ),
    ).toBe('Map{"a":2,"b":1}')
    expect(canonicalText(new Set(['b', 'a']))).toBe('Set{"a","b"}')
    expect(canonicalText({ a: { file: 'x', b: 1 } }, new Set(['file']))).toBe('{"a":{"b":1}}')
  })

  test('differs for whatever differs, to the last digit', () => {
    const values = [
      ...[0, 1, 1 + Number.EPSILON, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
      ...[
        '',
        'a',
        '1',
        'null',
        null,
        true,
        [],
        {},
        [1],
        ['1'],
        [[1]],
        [1, 2],
        [12],
        { a: 1 },
        { 'a":1,"b': 1 },
      ],
      ...[{ a: 1, b: 1 }, { a: { b: 1 } }, new Map([['a', 1]]), new Set(['a']), Float64Array.of(1, 2, 3), 1n],
    ]
    const texts = values.map((value) => canonicalText(value))
    // 1n is the number 1, and the typed array the same list
    expect(new Set(texts).size).toBe(values.length - 1)
    expect(canonicalText(-0)).toBe('0')
  })
})

describe('the key of a book', () => {
  const premise = { program: '0.1.0 a', tables: { odds: { weight: 1 } } }
  const key = (more: Partial<BookInputs> = {}): string => bookKey({ ...divider(), ...more }, premise)
  const other = (from: string, to: string) => compiled(...DIVIDER.map((part) => part.replace(from, to)))

  test('is the same for the same, wherever its sheet lies', () => {
    expect(key()).toBe(key())
    const spaced = compiled(
      ...DIVIDER.map((part) => part.replace('resistance:  ', 'resistance: ')),
      '# a comment',
    )
    expect(key({ net: spaced })).toBe(key())
  })

  const { net, tests, faults } = divider()
  const [first = testOf('none', volts(net, 'trial/q')), ...others] = tests
  const cases: readonly (readonly [string, Partial<BookInputs>])[] = [
    ['a value', { net: other('1 kΩ', '1.1 kΩ') }],
    ['a tolerance', { net: other('± 6 %', '± 7 %') }],
    ['an end', { net: other('r3: {kind: resistor, from: q', 'r3: {kind: resistor, from: p') }],
    ['a name', { net: other('r3:', 'r4:') }],
    ['a fault less', { faults: faults.slice(1) }],
    ['the order of faults', { faults: [...faults].reverse() }],
    ['what a fault does', { faults: [faultOf('r1 open', { lifted: 2 }), ...faults.slice(1)] }],
    ['a test less', { tests: others }],
    ['a scale', { tests: [{ ...first, scale: 0.25 }, ...others] }],
    ['answers', { tests: [{ ...first, words: { answers: [], cuts: [1], slip: 0 } }, ...others] }],
    ['cuts', { tests: [{ ...first, words: { answers: [], cuts: [2], slip: 0 } }, ...others] }],
    ['a figure', { tests: [testOf('q', volts(net, 'trial/p')), ...others] }],
    ['the transmitter', { transmitterSpread: 4 }],
  ]
  test.each(cases)('differs by %s', (_, more) => {
    expect(key(more)).not.toBe(key())
  })

  test('differs from case to case, by the tables and by the build', () => {
    const keys = cases.map(([, more]) => key(more))
    expect(new Set(keys).size).toBe(keys.length)
    expect(bookKey(divider(), { ...premise, program: '0.1.0 b' })).not.toBe(key())
    expect(bookKey(divider(), { ...premise, tables: { odds: { weight: 2 } } })).not.toBe(key())
  })
})
