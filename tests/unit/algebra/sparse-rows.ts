import { createSparse } from 'ringproof/algebra/sparse'
import type { LinearSystem } from 'ringproof/algebra/system'

/** One entry; a pair is re, im. */
export type Cell = number | readonly [number, number]

/** A sparse engine with all places of these rows, zeros too; a pair is re, im. */
export function filled(rows: readonly (readonly Cell[])[], complex = false): LinearSystem {
  const n = rows.length
  const places = [...Array(n * n).keys()]
  const engine = createSparse(
    { order: n, rows: places.map((k) => Math.floor(k / n)), columns: places.map((k) => k % n) },
    complex,
  )
  refill(engine, rows)
  return engine
}

/** Other values in all places. */
export function refill(engine: LinearSystem, rows: readonly (readonly Cell[])[]): void {
  engine.clear()
  rows.flat().forEach((cell, k) => {
    const [re, im] = typeof cell === 'number' ? [cell, 0] : (cell as readonly [number, number])
    engine.add(engine.slots[k] ?? -1, re, im)
  })
}

/** Solution for a real right side; of a complex engine the real parts. */
export function solved(
  engine: LinearSystem,
  b: readonly number[],
  way: 'solve' | 'solveTransposed' = 'solve',
): number[] {
  const x = Float64Array.from(engine.complex ? b.flatMap((value) => [value, 0]) : b)
  engine[way](x, 1)
  return engine.complex ? b.map((_, k) => x[2 * k] ?? Number.NaN) : [...x]
}
