import fc from 'fast-check'
import type { LinearSystem, Pattern } from 'ringproof/algebra/system'

/** A pattern with its values; for a real engine the imaginary parts are ignored. */
export interface System extends Pattern {
  readonly rows: readonly number[]
  readonly columns: readonly number[]
  readonly re: readonly number[]
  readonly im: readonly number[]
}

/** A system from entries [row, column, re, im]. */
export function entriesOf(
  order: number,
  entries: readonly (readonly [number, number, number, number])[],
): System {
  return {
    order,
    rows: entries.map(([row]) => row),
    columns: entries.map(([, column]) => column),
    re: entries.map(([, , re]) => re),
    im: entries.map(([, , , im]) => im),
  }
}

/** Refills an engine from zero. */
export function fill(engine: LinearSystem, system: System): void {
  engine.clear()
  for (let k = 0; k < system.rows.length; k++)
    engine.add(engine.slots[k] ?? -1, system.re[k] ?? 0, system.im[k] ?? 0)
}

export function transposed(system: System): System {
  return { ...system, rows: system.columns, columns: system.rows }
}

/** Numbers of one vector of this system. */
export function sizeOf(system: System, complex: boolean): number {
  return complex ? 2 * system.order : system.order
}

/** Real numbers as a vector of a real or complex engine. */
export function made(complex: boolean, values: readonly number[]): Float64Array {
  return Float64Array.from(complex ? values.flatMap((value) => [value, 0]) : values)
}

/** A x, entry by entry. */
export function apply(system: System, x: Float64Array, complex: boolean): Float64Array {
  const product = new Float64Array(x.length)
  for (let k = 0; k < system.rows.length; k++) {
    const row = system.rows[k] ?? 0
    const column = system.columns[k] ?? 0
    const re = system.re[k] ?? 0
    const im = system.im[k] ?? 0
    if (complex) {
      const xr = x[2 * column] ?? 0
      const xi = x[2 * column + 1] ?? 0
      product[2 * row] = (product[2 * row] ?? 0) + re * xr - im * xi
      product[2 * row + 1] = (product[2 * row + 1] ?? 0) + re * xi + im * xr
    } else {
      product[row] = (product[row] ?? 0) + re * (x[column] ?? 0)
    }
  }
  return product
}

/** Largest difference of two vectors, entry by entry; NaN counts as infinite. */
export function largestApart(x: Float64Array, y: Float64Array): number {
  let most = x.length === y.length ? 0 : Number.POSITIVE_INFINITY
  for (let k = 0; k < x.length; k++) {
    const apart = Math.abs((x[k] ?? 0) - (y[k] ?? 0))
    if (!(apart <= most)) most = Number.isNaN(apart) ? Number.POSITIVE_INFINITY : apart
  }
  return most
}

/**
 * Sparse systems whose rows are dominant by 1 where their largest entry stands, with the columns shuffled,
 * so that pivots must be looked for; without repeated entries. ‖A⁻¹‖∞ ≤ 1 by dominance (Varah's bound).
 */
export function randomSystem(complex: boolean, least: number, most: number): fc.Arbitrary<System> {
  const value = fc.double({ min: -4, max: 4, noNaN: true }).map((v) => (Math.abs(v) < 1e-6 ? 0.5 : v))
  return fc.integer({ min: least, max: most }).chain((order) =>
    fc
      .record({
        places: fc.uniqueArray(fc.tuple(fc.nat(order - 1), fc.nat(order - 1)), {
          maxLength: 4 * order,
          selector: ([row, column]) => row * order + column,
        }),
        values: fc.array(fc.tuple(value, value), { minLength: 4 * order, maxLength: 4 * order }),
        turns: fc.array(fc.double({ min: 0, max: 6.28, noNaN: true }), {
          minLength: order,
          maxLength: order,
        }),
        shuffle: fc.shuffledSubarray([...Array(order).keys()], { minLength: order, maxLength: order }),
      })
      .map(({ places, values, turns, shuffle }) => {
        const entries: [number, number, number, number][] = []
        const weight = new Float64Array(order)
        places.forEach(([row, column], k) => {
          if (row === column) return
          const [re, im] = values[k] ?? [0, 0]
          weight[row] = (weight[row] ?? 0) + Math.hypot(re, complex ? im : 0)
          entries.push([row, shuffle[column] ?? column, re, complex ? im : 0])
        })
        for (let row = 0; row < order; row++) {
          const size = (weight[row] ?? 0) + 1
          const turn = turns[row] ?? 0
          const re = complex ? size * Math.cos(turn) : turn < 3.14 ? size : -size
          entries.push([row, shuffle[row] ?? row, re, complex ? size * Math.sin(turn) : 0])
        }
        return entriesOf(order, entries)
      }),
  )
}
