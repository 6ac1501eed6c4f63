/** A graph by the number of its nodes and its edges; an edge may stand more than once. */
export interface Graph {
  readonly nodes: number
  readonly edges: readonly (readonly [number, number])[]
}

/** A fraction of whole numbers, not reduced. */
export interface Fraction {
  readonly top: bigint
  readonly bottom: bigint
}

/**
 * How many spanning trees a graph has: any cofactor of its Laplacian.
 * @source Kirchhoff's matrix-tree theorem (1847); MEMORY
 */
export function spanningTrees(graph: Graph): bigint {
  return determinant(without(laplacian(graph), [0]))
}

/** The resistance between two nodes when every edge is 1 Ω: forests that part them by trees, exact. */
export function exactResistance(graph: Graph, a: number, b: number): Fraction {
  const matrix = laplacian(graph)
  return { top: determinant(without(matrix, [a, b])), bottom: determinant(without(matrix, [a])) }
}

/** Whether two fractions are the same number. */
export function sameFraction(a: Fraction, b: Fraction): boolean {
  return a.top * b.bottom === b.top * a.bottom
}

export function fractionValue({ top, bottom }: Fraction): number {
  return Number(top) / Number(bottom)
}

function laplacian({ nodes, edges }: Graph): bigint[][] {
  const matrix = Array.from({ length: nodes }, () => Array.from({ length: nodes }, () => 0n))
  const put = (row: number, column: number, value: bigint) => {
    const line = matrix[row]
    if (line?.[column] === undefined) throw new Error(`no node ${row} or ${column}`)
    line[column] += value
  }
  for (const [a, b] of edges) {
    put(a, a, 1n)
    put(b, b, 1n)
    put(a, b, -1n)
    put(b, a, -1n)
  }
  return matrix
}

function without(matrix: readonly bigint[][], gone: readonly number[]): bigint[][] {
  const keep = (_: unknown, at: number) => !gone.includes(at)
  return matrix.filter(keep).map((row) => row.filter(keep))
}

/**
 * The determinant of a matrix of whole numbers: elimination without fractions, every division goes without rest.
 * @source Bareiss (1968); MEMORY
 */
export function determinant(matrix: readonly (readonly bigint[])[]): bigint {
  const rows = matrix.map((row) => [...row])
  const entry = (row: number, column: number): bigint => rows[row]?.[column] ?? 0n
  let sign = 1n
  let before = 1n
  for (let k = 0; k < rows.length - 1; k++) {
    const pivot = rows.findIndex((_, row) => row >= k && entry(row, k) !== 0n)
    if (pivot < 0) return 0n
    const top = rows[pivot] ?? []
    if (pivot !== k) {
      rows[pivot] = rows[k] ?? []
      rows[k] = top
      sign = -sign
    }
    for (let row = k + 1; row < rows.length; row++) {
      const factor = entry(row, k)
      rows[row] = (rows[row] ?? []).map((value, column) => {
        return column <= k ? 0n : (value * entry(k, k) - factor * entry(k, column)) / before
      })
    }
    before = entry(k, k)
  }
  return rows.length === 0 ? 1n : sign * entry(rows.length - 1, rows.length - 1)
}
