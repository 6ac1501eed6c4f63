import type { Problem } from 'ringproof/problem'
import { merge, overlay } from 'ringproof/sheet/merge'
import { plainOf, type RawMap } from 'ringproof/sheet/raw'
import { readSource } from 'ringproof/sheet/source'
import { describe, expect, test } from 'vitest'

function raw(text: string, file = 'variant.yaml'): RawMap {
  const { root } = readSource({ file, text })
  if (root === undefined) throw new Error(`not a map: ${text}`)
  return root
}

describe('an overlay', () => {
  const base = raw('a: 1\nm: {x: 1, y: [1, 2]}\nl: [1, 2]\ns: {z: 1}\n', 'base.yaml')

  test('merges maps by key, in the order of the base and then of the variant', () => {
    const merged = overlay(base, raw('m: {w: 3, x: 2}\nb: 4\n'))
    expect(JSON.stringify(plainOf(merged))).toBe(
      '{"a":1,"m":{"x":2,"y":[1,2],"w":3},"l":[1,2],"s":{"z":1},"b":4}',
    )
  })

  test('replaces lists, scalars, and values of another shape', () => {
    const merged = overlay(base, raw('l: [3]\na: 2\ns: 5\nm: {y: {q: 1}}\n'))
    expect(plainOf(merged)).toEqual({ a: 2, m: { x: 1, y: { q: 1 } }, l: [3], s: 5 })
  })

  test('is neutral over the same, and changes neither of the two', () => {
    const before = JSON.stringify(plainOf(base))
    expect(JSON.stringify(plainOf(overlay(base, base)))).toBe(before)
    overlay(base, raw('m: {x: 9}\n'))
    expect(JSON.stringify(plainOf(base))).toBe(before)
  })

  test('leaves every value at the place where it was written', () => {
    const merged = overlay(base, raw('m: {x: 2}\n'))
    const m = merged.entries.get('m')
    const entries = m?.value.shape === 'map' ? m.value.entries : new Map()
    expect(m?.place).toMatchObject({ file: 'variant.yaml', line: 1 })
    expect(entries.get('x').place.file).toBe('variant.yaml')
    expect(entries.get('y').place).toMatchObject({ file: 'base.yaml', line: 2 })
  })
})

describe('a merge', () => {
  const base = raw('name: base\nbased on: other\nparts: {a: 1, b: {c: 2, d: 3}}\n', 'base.yaml')
  const merged = (text: string) => {
    const problems: Problem[] = []
    return { plain: plainOf(merge(base, raw(text), problems)), problems }
  }

  test('removes dotted paths before it lays the variant on top', () => {
    expect(merged('name: v\nwithout: [parts.a, parts.b.c]\nparts: {b: {e: 4}}\n')).toEqual({
      plain: { name: 'v', parts: { b: { d: 3, e: 4 } }, without: ['parts.a', 'parts.b.c'] },
      problems: [],
    })
  })

  test('lets a removed key come back as something else', () => {
    expect(merged('without: [parts.b]\nparts: {b: {x: 1}}\n').plain).toMatchObject({
      parts: { a: 1, b: { x: 1 } },
    })
  })

  test('names a path that the base does not have, with the nearest one', () => {
    const { problems } = merged('without: [parts.b.x, parts.q.r, prts.a, name.x, parts]\n')
    expect(problems.map(({ code, place, mend }) => [code, place?.column, mend])).toEqual([
      ['name-unknown', 11, 'write `parts.b.c`'],
      ['name-unknown', 22, 'write `parts.b.c`'],
      ['name-unknown', 33, 'write `parts.a`'],
      ['name-unknown', 41, 'write `name`'],
    ])
  })

  test('calls a base without a name a base', () => {
    const problems: Problem[] = []
    merge(raw('a: 1'), raw('without: [b]'), problems)
    expect(problems).toMatchObject([
      { found: '`b`, which `the base` does not have', expected: '`a`', mend: 'write `a`' },
    ])
  })
})
