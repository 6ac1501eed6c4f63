import type { Problem } from 'ringproof/problem'
import { pageOf } from 'ringproof/sheet/page'
import { tidy } from 'ringproof/sheet/tidy'
import { describe, expect, test } from 'vitest'

const problem = (file: string, line: number, column: number): Problem => ({
  code: 'key-unknown',
  severity: 'error',
  place: { file, line, column, length: 1 },
  found: `the key ${column}`,
  expected: 'another one',
  mend: 'write it',
})
const pages = new Map([
  ['a.yaml', pageOf({ file: 'a.yaml', text: 'one\ntwo\n' })],
  ['b.yaml', pageOf({ file: 'b.yaml', text: 'three\n' })],
])
const places = (problems: readonly Problem[]) =>
  problems.map(({ place }) =>
    place === undefined ? 'nowhere' : `${place.file} ${place.line}:${place.column}`,
  )

describe('a list of problems', () => {
  test('is sorted by line and column, the asking file first, then by file', () => {
    const { place: _, ...nowhere } = problem('a.yaml', 1, 1)
    const all = [
      problem('b.yaml', 1, 1),
      problem('c.yaml', 1, 1),
      problem('a.yaml', 2, 1),
      problem('a.yaml', 1, 3),
      problem('a.yaml', 1, 2),
      nowhere,
    ]
    const order = ['nowhere', 'a.yaml 1:2', 'a.yaml 1:3', 'a.yaml 2:1', 'b.yaml 1:1', 'c.yaml 1:1']
    expect(places(tidy(all, 'a.yaml', pages))).toEqual(order)
    expect(places(tidy(all.toReversed(), 'a.yaml', pages))).toEqual(order)
    expect(places(tidy(all, 'b.yaml', pages)).slice(0, 2)).toEqual(['nowhere', 'b.yaml 1:1'])
  })

  test('shows the line of each, of whichever file, and keeps a line that is there already', () => {
    const kept = { ...problem('a.yaml', 2, 2), excerpt: 'kept' }
    const all = [problem('a.yaml', 2, 1), kept, problem('b.yaml', 1, 1), problem('c.yaml', 1, 1)]
    expect(tidy(all, 'a.yaml', pages).map(({ excerpt }) => excerpt)).toEqual([
      'two',
      'kept',
      'three',
      undefined,
    ])
  })

  test('says each thing once', () => {
    const all = [
      problem('a.yaml', 1, 1),
      problem('a.yaml', 1, 1),
      { ...problem('a.yaml', 1, 1), found: 'other' },
    ]
    expect(tidy(all, 'a.yaml', pages)).toHaveLength(2)
  })

  test('ends after a hundred with one that counts the rest', () => {
    const all = Array.from({ length: 103 }, (_, i) => problem('a.yaml', 1, i + 1))
    expect(tidy(all.slice(0, 100), 'a.yaml', pages)).toHaveLength(100)
    const cut = tidy(all, 'a.yaml', pages)
    expect(cut).toHaveLength(101)
    expect(cut[100]).toMatchObject({ found: '3 more problems', severity: 'error', place: { column: 101 } })
    expect(cut[100]).not.toHaveProperty('mend')
  })

  test('counts one as one', () => {
    const all = Array.from({ length: 101 }, (_, i) => problem('a.yaml', 1, i + 1))
    expect(tidy(all, 'a.yaml', pages)[100]).toMatchObject({ found: '1 more problem' })
  })

  test('lets an error be counted by an error even when the first one left out is a warning', () => {
    const all: Problem[] = Array.from({ length: 102 }, (_, i) => problem('a.yaml', 1, i + 1))
    all[100] = { ...problem('a.yaml', 1, 101), severity: 'warning' }
    expect(tidy(all, 'a.yaml', pages)[100]).toMatchObject({ severity: 'error' })
  })
})
