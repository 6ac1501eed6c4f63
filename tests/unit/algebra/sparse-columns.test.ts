import { columnsOf } from 'ringproof/algebra/sparse-columns'
import { describe, expect, it } from 'vitest'

describe('a pattern by columns', () => {
  it('has its rows ascending and repeated entries once', () => {
    const columns = columnsOf({ order: 3, rows: [2, 0, 1, 2, 0, 2], columns: [0, 2, 1, 0, 0, 2] })
    expect([...columns.starts]).toEqual([0, 2, 3, 5])
    expect([...columns.rows]).toEqual([0, 2, 1, 0, 2])
    expect([...columns.slots]).toEqual([1, 3, 2, 1, 0, 4])
  })

  it('may be empty', () => {
    expect([...columnsOf({ order: 0, rows: [], columns: [] }).starts]).toEqual([0])
    expect([...columnsOf({ order: 2, rows: [], columns: [] }).starts]).toEqual([0, 0, 0])
  })

  it('takes nothing from outside the order', () => {
    for (const [row, column] of [
      [2, 0],
      [0, 2],
      [-1, 0],
      [0.5, 0],
      [0, Number.NaN],
    ] as const) {
      expect(() => columnsOf({ order: 2, rows: [row], columns: [column] })).toThrow(RangeError)
    }
    expect(() => columnsOf({ order: 2, rows: [0, 1], columns: [0] })).toThrow(RangeError)
    expect(() => columnsOf({ order: -1, rows: [], columns: [] })).toThrow(RangeError)
    expect(() => columnsOf({ order: 1.5, rows: [], columns: [] })).toThrow(RangeError)
  })
})
