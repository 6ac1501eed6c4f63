/**
 * L U = P A Q by columns, all in one array: column k holds the entries of U above its diagonal, then the inverse of its
 * pivot at `diagonals[k]`, then the entries of L below it (whose own diagonal is 1). Complex values are interleaved.
 */
export interface Factors {
  readonly order: number
  /** Start of each column (n + 1). */
  readonly starts: Int32Array
  /** Place of each pivot (n). */
  readonly diagonals: Int32Array
  /** Step at which the row of each place is the pivot: below k in U, in an order in which they can be solved for. */
  index: Int32Array
  /** Values of the places. */
  values: Float64Array
  /** Row and column of A that are eliminated at step k. */
  readonly rowOf: Int32Array
  readonly columnOf: Int32Array
  /** Multiply-adds of one factorisation. */
  operations: number
}

/** Room for factors, to be grown with `reserve`. */
export function emptyFactors(order: number, room: number, complex: boolean): Factors {
  return {
    order,
    starts: new Int32Array(order + 1),
    diagonals: new Int32Array(order),
    index: new Int32Array(room),
    values: new Float64Array(complex ? 2 * room : room),
    rowOf: new Int32Array(order).fill(-1),
    columnOf: new Int32Array(order),
    operations: 0,
  }
}

/** Makes room for `places` in all. */
export function reserve(factors: Factors, places: number): void {
  const { index, values } = factors
  if (places <= index.length) return
  const room = Math.max(places, 2 * index.length)
  factors.index = new Int32Array(room)
  factors.index.set(index)
  factors.values = new Float64Array((room * values.length) / index.length)
  factors.values.set(values)
}

/** Gives back the room that is not used. */
export function trim(factors: Factors): void {
  const { index, values, order, starts } = factors
  const places = starts[order]!
  if (places === index.length) return
  factors.index = index.slice(0, places)
  factors.values = values.slice(0, (values.length / index.length) * places)
}
