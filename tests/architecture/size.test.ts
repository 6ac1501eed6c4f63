import { describe, expect, test } from 'vitest'
import { readSources, readTree, type Sources } from './sources.ts'

const LONGEST = 400
const MEDIAN = 90

function lengths(sources: Sources): Map<string, number> {
  return new Map([...sources].map(([path, text]) => [path, text.trimEnd().split('\n').length]))
}

/** The files that are too long to be read in one sitting. */
function tooLong(sources: Sources): string[] {
  return [...lengths(sources)]
    .filter(([, lines]) => lines >= LONGEST)
    .map(([path, lines]) => `${path}: ${lines}`)
}

/** The length that half of the files do not exceed. */
function median(sources: Sources): number {
  const sorted = [...lengths(sources).values()].sort((a, b) => a - b)
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
}

describe('the size of files', () => {
  test(`is below ${LONGEST} lines in src and tests`, () => {
    expect(tooLong(readSources())).toEqual([])
    expect(tooLong(readTree('tests', (path) => /\.(ts|mjs)$/.test(path)))).toEqual([])
  })

  test(`is below ${MEDIAN} lines for half of src`, () => {
    expect(median(readSources())).toBeGreaterThan(0)
    expect(median(readSources())).toBeLessThan(MEDIAN)
  })

  test('is counted: a file of 400 lines is too long, one of 399 is not', () => {
    const text = (lines: number) => 'x\n'.repeat(lines)
    expect(tooLong(new Map([['a.ts', text(400)]]))).toEqual(['a.ts: 400'])
    expect(tooLong(new Map([['a.ts', text(399)]]))).toEqual([])
    expect(median(new Map([1, 2, 9].map((lines) => [`${lines}.ts`, text(lines)])))).toBe(2)
  })
})
