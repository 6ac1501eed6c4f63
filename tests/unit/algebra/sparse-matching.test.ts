import fc from 'fast-check'
import { columnsOf } from 'ringproof/algebra/sparse-columns'
import { matchRows } from 'ringproof/algebra/sparse-matching'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

type Entry = readonly [row: number, column: number, size: number]

/** The row of each column. */
function matched(order: number, entries: readonly Entry[]): number[] {
  const columns = columnsOf({ order, rows: entries.map(([i]) => i), columns: entries.map(([, j]) => j) })
  const sizes = new Float64Array(columns.rows.length)
  entries.forEach(([, , size], k) => {
    sizes[columns.slots[k] ?? -1] = size
  })
  return [...matchRows(columns, sizes)]
}

/** The largest number of columns that can have a row, by trying paths one by one. */
function mostMatched(order: number, entries: readonly Entry[]): number {
  const owner = new Map<number, number>()
  const place = (column: number, tried: Set<number>): boolean => {
    for (const [row, own, size] of entries) {
      if (own !== column || size === 0 || tried.has(row)) continue
      tried.add(row)
      const other = owner.get(row)
      if (other !== undefined && !place(other, tried)) continue
      owner.set(row, column)
      return true
    }
    return false
  }
  return [...Array(order).keys()].filter((column) => place(column, new Set())).length
}

const problems = fc.integer({ min: 1, max: 9 }).chain((n) =>
  fc.tuple(
    fc.constant(n),
    fc.uniqueArray(fc.tuple(fc.nat(n - 1), fc.nat(n - 1), fc.constantFrom(0, 1e-9, 1e-3, 1, 2)), {
      maxLength: 3 * n,
      selector: ([row, column]) => row * n + column,
    }),
  ),
)

describe('rows matched with columns', () => {
  it('are entries that are not zero, each row once, as many as there can be', () => {
    fc.assert(
      fc.property(problems, ([n, entries]) => {
        const rows = matched(n, entries)
        const found = rows.flatMap((row, column) => (row === -1 ? [] : [[row, column] as const]))
        for (const [row, column] of found)
          expect(entries.some(([i, j, size]) => i === row && j === column && size > 0)).toBe(true)
        expect(new Set(found.map(([row]) => row)).size).toBe(found.length)
        expect(found.length).toBe(mostMatched(n, entries))
      }),
      { seed: SEED, numRuns: 500 },
    )
  })

  it('stay on a diagonal that is large enough', () => {
    const entries: Entry[] = [
      [0, 0, 0.2],
      [1, 0, 1],
      [0, 1, 1],
      [1, 1, 0.2],
    ]
    expect(matched(2, entries)).toEqual([0, 1])
  })

  it('leave a diagonal that is nothing beside its column', () => {
    const entries: Entry[] = [
      [0, 0, 1e-3],
      [1, 0, 1],
      [0, 1, 1],
      [1, 1, 1e-3],
    ]
    expect(matched(2, entries)).toEqual([1, 0])
  })

  it('take a small entry where only it completes them', () => {
    const entries: Entry[] = [
      [0, 0, 1],
      [1, 0, 1e-12],
      [0, 1, 1],
    ]
    expect(matched(2, entries)).toEqual([1, 0])
  })

  it('turn a whole ring to make room for the last column', () => {
    // columns 0 … 7 like row k most and could have row k + 1; column 8 has row 0 only
    const n = 9
    const entries: Entry[] = [[0, 8, 1]]
    for (let k = 0; k < 8; k++) entries.push([k, k, 1], [k + 1, k, 0.5])
    expect(matched(n, entries)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 0])
  })
})
