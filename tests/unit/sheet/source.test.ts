import { entriesOf, itemsOf, type Raw } from 'ringproof/sheet/raw'
import { readSource } from 'ringproof/sheet/source'
import { describe, expect, test } from 'vitest'

const read = (text: string) => readSource({ file: 'a.yaml', text })
const codes = (text: string) =>
  read(text).problems.map(({ code, place }) => `${code} ${place?.line}:${place?.column}`)

/** A tree as plain data, scalars by what was written. */
function shown(raw: Raw | undefined): unknown {
  if (raw === undefined) return undefined
  if (raw.shape === 'scalar') return raw.text
  if (raw.shape === 'list') return itemsOf(raw).map(shown)
  return [...entriesOf(raw)].map(([key, { value }]) => [key, shown(value)])
}

describe('a tree', () => {
  test('keeps keys in the order of the text, numbers as keys in their own words', () => {
    expect(shown(read('b: x\n5: y\n2: z\n007: w\n"q r": v').root)).toEqual([
      ['b', 'x'],
      ['5', 'y'],
      ['2', 'z'],
      ['007', 'w'],
      ['q r', 'v'],
    ])
  })

  test('knows where every key and value stands', () => {
    const parts = read('a: 1\nparts: {r1: {to: "x y"}}').root?.entries.get('parts')
    const r1 = entriesOf(parts?.value).get('r1')
    const to = entriesOf(r1?.value).get('to')
    expect(parts?.place).toMatchObject({ line: 2, column: 1, length: 5 })
    expect(r1?.place).toMatchObject({ line: 2, column: 9, length: 2 })
    expect(r1?.value.place).toMatchObject({ line: 2, column: 13, length: 11 })
    expect(to?.value).toMatchObject({ text: 'x y', indent: 1, place: { line: 2, column: 18, length: 5 } })
  })

  test('puts a value that is not written at its key', () => {
    expect(entriesOf(read('ab:\ncd: 1').root).get('ab')?.value).toMatchObject({
      value: null,
      place: { line: 1, column: 1, length: 2 },
    })
    expect(entriesOf(read('{ab, cd: 1}').root).get('ab')?.value).toMatchObject({
      value: null,
      place: { column: 2 },
    })
  })

  test('takes `yes`, `no`, `on` and `off` as words, `true` and `false` as truth values', () => {
    const entries = entriesOf(read('a: yes\nb: no\nc: on\nd: off\ne: true\nf: false').root)
    const values = [...entries.values()].map(({ value }) => value.shape === 'scalar' && value.value)
    expect(values).toEqual(['yes', 'no', 'on', 'off', true, false])
  })

  test('reads block scalars, folded texts and comments', () => {
    const text = 'a: |\n  # no comment\n  - no list\nb: >\n  one\n  two\n# a comment: [\nc: one\n  two\n'
    expect(shown(read(text).root)).toEqual([
      ['a', '# no comment\n- no list\n'],
      ['b', 'one two\n'],
      ['c', 'one two'],
    ])
  })

  test('lets a byte order mark, carriage returns and a leading `---` pass', () => {
    expect(shown(read('\uFEFF---\r\na: 1\r\n').root)).toEqual([['a', '1']])
  })
})

describe('a key', () => {
  test('that stands twice is named once, at its second place, and its first value counts', () => {
    const text = 'a: 1\nb: 2\na: 3\na: 4\nc: {x: 1, x: 2}\n'
    expect(codes(text)).toEqual(['key-doubled 3:1', 'key-doubled 5:11'])
    expect(shown(read(text).root)).toEqual([
      ['a', '1'],
      ['b', '2'],
      ['c', [['x', '1']]],
    ])
  })

  test('that stands more than a hundred times is named without the parser', () => {
    let calls = 0
    const parse = () => {
      calls += 1
      return { contents: null }
    }
    const text = `x: 1\n${'a: 1\n'.repeat(102)}`
    const source = readSource({ file: 'a.yaml', text }, parse)
    expect(source.problems).toMatchObject([{ code: 'key-doubled', place: { line: 3, column: 1 } }])
    expect(calls).toBe(0)
    readSource({ file: 'a.yaml', text: 'a: 1\n'.repeat(101) }, parse)
    expect(calls).toBe(1)
  })

  test('may stand in many maps, and in many pairs of a list', () => {
    const maps = Array.from({ length: 150 }, (_, i) => `m${i}: {a: 1, b: 2}\nn${i}:\n  a: 1\n`).join('')
    const pairs = `p: [${'a: 1, '.repeat(150)}]\n`
    const dashes = `d:\n${'- a: 1\n  b: 2\n'.repeat(150)}`
    expect(codes(maps + pairs + dashes)).toEqual([])
  })

  test.each(['__proto__', 'constructor', 'prototype'])('is not %s', (key) => {
    const { problems, root } = read(`a: {${key}: {x: 1}, b: 2}`)
    expect(problems).toMatchObject([{ code: 'key-forbidden', place: { line: 1, column: 5 } }])
    expect(shown(root)).toEqual([['a', [['b', '2']]]])
    expect(({} as { x?: unknown }).x).toBeUndefined()
  })

  test.each([
    ['[a]: 1', '1:1'],
    ['{a: 1}: 2', '1:1'],
    ['a: 1\n: 2', '2:1'],
    ['? \n: 2', '1:3'],
    ['"": 2', '1:1'],
  ])('is a word: %j is refused', (text, place) => {
    expect(codes(text)).toEqual([`syntax ${place}`])
  })
})

describe('nesting', () => {
  const brackets = (levels: number) => `a: ${'['.repeat(levels - 1)}${']'.repeat(levels - 1)}`
  const blocks = (levels: number) => Array.from({ length: levels }, (_, i) => `${' '.repeat(i)}a:`).join('\n')
  const dashes = (levels: number) => `a:\n ${'- '.repeat(levels - 1)}x`

  test.each([brackets, blocks, dashes])('of 32 levels is read, of 33 refused', (text) => {
    expect(codes(text(32))).toEqual([])
    expect(read(text(33)).problems).toMatchObject([{ code: 'too-deep' }])
    expect(read(text(33)).problems).toHaveLength(1)
  })

  test('that columns do not show is counted on the nodes', () => {
    // each line opens a list in the column of its key, and a map
    const text = (lines: number) =>
      `a:\n${Array.from({ length: lines }, (_, i) => `${' '.repeat(2 * i)}- a:`).join('\n')}\n`
    expect(codes(text(15))).toEqual([])
    expect(read(text(16)).problems).toMatchObject([{ code: 'too-deep' }])
  })

  test('does not count brackets in texts, comments and block scalars', () => {
    const many = '['.repeat(100)
    expect(codes(`a: "${many}"\nb: '${many}'\nc: x${many}\n# ${many}\nd: |\n  ${many}\n`)).toEqual([])
  })

  test('that the lexer gives up is forgotten', () => {
    expect(read(`a: [[\nb: 1\n`).problems).toMatchObject([{ code: 'syntax' }])
  })
})

describe('the parser is not asked about', () => {
  const never = () => {
    throw new Error('the parser was reached')
  }
  const refused = (text: string) => readSource({ file: 'a.yaml', text }, never).problems

  test.each<[string, string, string]>([
    ['more than 1 MiB', 'too-big', '#'.repeat((1 << 20) + 1)],
    ['more than 1 MiB of UTF-8 in fewer characters', 'too-big', 'Ω'.repeat((1 << 19) + 1)],
    ['more than 60000 words', 'too-big', '- a\n'.repeat(25_000)],
    ['deep brackets', 'too-deep', '['.repeat(100_000)],
    ['deep blocks', 'too-deep', Array.from({ length: 1400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
    ['deep dashes', 'too-deep', '- '.repeat(100_000)],
    ['deep question marks', 'too-deep', '? '.repeat(10_000)],
    ['deep keys in one line', 'too-deep', 'a: '.repeat(10_000)],
    ['keys over lines, which nest without a column', 'syntax', `a: ${' a: b\n'.repeat(10_000)}`],
    ['an anchor', 'alias-refused', 'a: &x 1'],
    ['an alias', 'alias-refused', 'a: *x'],
    ['a tag', 'syntax', 'a: !!binary x'],
    ['a directive', 'syntax', '%YAML 1.1\n---\na: 1'],
    ['a NUL', 'syntax', 'a: \u0000'],
    ['half a character', 'syntax', 'a: \ud83d'],
    ['the other half', 'syntax', 'a: \ude00 b'],
    ['a byte order mark within', 'syntax', 'a: \uFEFFb'],
    ['a carriage return alone', 'syntax', 'a: 1\rb: 2'],
  ])('%s', (_what, code, text) => {
    expect(refused(text)).toMatchObject([{ code }])
    expect(refused(text)).toHaveLength(1)
  })

  test('but about 1 MiB and a bit less it is', () => {
    expect(() => refused(`a: ${'#'.repeat((1 << 20) - 3)}`)).toThrow('reached')
    expect(() => refused('a: 1 # Ω 😀 é\tx')).toThrow('reached')
  })
})

describe('a parser that runs out of stack', () => {
  test('is a sheet that is too deep', () => {
    const exhausted = () => {
      throw new RangeError('Maximum call stack size exceeded')
    }
    const { root, problems } = readSource({ file: 'a.yaml', text: 'a: 1' }, exhausted)
    expect(root).toBeUndefined()
    expect(problems).toMatchObject([{ code: 'too-deep', place: { line: 1, column: 1 } }])
  })
})

describe('a mistake of the parser itself', () => {
  test('is not taken for one of the sheet', () => {
    const broken = () => {
      throw new TypeError('broken')
    }
    expect(() => readSource({ file: 'a.yaml', text: 'a: 1' }, broken)).toThrow('broken')
  })
})
