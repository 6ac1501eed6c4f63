import type { Pattern } from './system.ts'

/** A pattern by columns: rows ascending in each, repeated entries made one. Nothing in it is as long as n². */
export interface Columns {
  readonly order: number
  /** Column j has the places `starts[j]` … `starts[j + 1] - 1` (n + 1). */
  readonly starts: Int32Array
  /** Row of each place. */
  readonly rows: Int32Array
  /** Place of each entry of the pattern. */
  readonly slots: Int32Array
}

/**
 * Sorts a pattern by columns and rows, by counting, in time that grows with its entries.
 *
 * @throws RangeError where the order is no count, or an entry stands outside it
 */
export function columnsOf({ order, rows, columns }: Pattern): Columns {
  if (!Number.isInteger(order) || order < 0) throw new RangeError(`a system of order ${order}`)
  if (rows.length !== columns.length)
    throw new RangeError(`${rows.length} rows beside ${columns.length} columns`)
  for (let k = 0; k < rows.length; k++) {
    if (!inside(rows[k]!, order) || !inside(columns[k]!, order))
      throw new RangeError(`entry ${k} at (${rows[k]}, ${columns[k]}) is outside a system of order ${order}`)
  }
  const sorted = sortedBy(columns, sortedBy(rows, undefined, order), order)
  const starts = new Int32Array(order + 1)
  const kept = new Int32Array(rows.length)
  const slots = new Int32Array(rows.length)
  let count = 0
  let row = -1
  let column = -1
  for (const k of sorted) {
    if (rows[k] !== row || columns[k] !== column) {
      row = rows[k]!
      column = columns[k]!
      starts[column + 1] = starts[column + 1]! + 1
      kept[count++] = row
    }
    slots[k] = count - 1
  }
  for (let j = 0; j < order; j++) starts[j + 1] = starts[j + 1]! + starts[j]!
  return { order, starts, rows: kept.slice(0, count), slots }
}

function inside(index: number, order: number): boolean {
  return Number.isInteger(index) && index >= 0 && index < order
}

/** Entry numbers by ascending key; entries of one key stay in the order `before`, which defaults to their own. */
function sortedBy(keys: ArrayLike<number>, before: Int32Array | undefined, order: number): Int32Array {
  const next = new Int32Array(order + 1)
  for (let k = 0; k < keys.length; k++) next[keys[k]! + 1] = next[keys[k]! + 1]! + 1
  for (let j = 0; j < order; j++) next[j + 1] = next[j + 1]! + next[j]!
  const sorted = new Int32Array(keys.length)
  for (let place = 0; place < keys.length; place++) {
    const k = before === undefined ? place : before[place]!
    const to = next[keys[k]!]!
    next[keys[k]!] = to + 1
    sorted[to] = k
  }
  return sorted
}
