import * as fc from 'fast-check'
import { describe, test } from 'vitest'
import { type Circuit, nodesOf, type Part } from '../support/circuit.ts'
import {
  analyses,
  capacitances,
  circuits,
  frequencies,
  inductances,
  resistances,
} from '../support/circuits.ts'
import { assertClose } from '../support/close.ts'
import { modulus } from '../support/complex.ts'
import { FLOOR, LAW, NOTHING, solve, voltageAt } from '../support/laws.ts'
import { exactQuantity, type Quantity } from '../support/quantity-text.ts'
import { extended } from '../support/rewrite.ts'
import { SEED } from '../support/seed.ts'

type Three = readonly [number, number, number]
type Make = (name: string, from: string, to: string, value: Quantity) => Part

/** Kennelly (1899): each delta arm is the sum of the products of the star arms by the arm opposite. */
function deltaOfImpedances([a, b, c]: Three): Three {
  const products = a * b + b * c + c * a
  return [products / c, products / a, products / b]
}

/** The same law for admittances: each delta arm is the product of its two star arms by the sum of all three. */
function deltaOfAdmittances([a, b, c]: Three): Three {
  const sum = a + b + c
  return [(a * b) / sum, (b * c) / sum, (c * a) / sum]
}

/** Every voltage of the circuit is the same with a star as with the delta that stands for it. */
function assertEquivalent(
  circuit: Circuit,
  frequency: number | null,
  star: readonly Quantity[],
  unit: string,
  make: Make,
) {
  const nodes = ['earth', ...nodesOf(circuit)]
  const [p, q, r] = [nodes[0] ?? '', nodes[1] ?? '', nodes[2] ?? '']
  const [a, b, c] = star.map(({ value }) => value) as unknown as Three // three draws, see the properties
  const arms = unit === 'F' ? deltaOfAdmittances([a, b, c]) : deltaOfImpedances([a, b, c])
  const [pq, qr, rp] = arms.map((value) => exactQuantity(value, unit))
  const [sp, sq, sr] = star
  if (!pq || !qr || !rp || !sp || !sq || !sr) throw new Error('three arms make a star')
  const withStar = extended(circuit, [
    make('sp', p, 'centre', sp),
    make('sq', q, 'centre', sq),
    make('sr', r, 'centre', sr),
  ])
  const withDelta = extended(circuit, [make('pq', p, q, pq), make('qr', q, r, qr), make('rp', r, p, rp)])
  const one = solve(withStar, frequency)
  const other = solve(withDelta, frequency)
  const largest = Math.max(...nodes.map((node) => modulus(voltageAt(circuit, other, node))))
  for (const node of nodes) {
    const tolerance = { relative: LAW, absolute: FLOOR * largest + NOTHING }
    assertClose(
      voltageAt(circuit, one, node),
      voltageAt(circuit, other, node),
      tolerance,
      `voltage of ${node}`,
    )
  }
}

const three = (value: fc.Arbitrary<Quantity>) => fc.array(value, { minLength: 3, maxLength: 3 })

describe('star and delta in random circuits', () => {
  // Kennelly, Equivalence of triangles and three-pointed stars in conducting networks (1899); grade MEMORY.
  test('a star of resistors can be replaced by its delta', () => {
    const make: Make = (name, from, to, resistance) => ({ kind: 'resistor', name, from, to, resistance })
    fc.assert(
      fc.property(circuits(), analyses, three(resistances), (circuit, frequency, star) => {
        assertEquivalent(circuit, frequency, star, 'Ω', make)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('a star of capacitors can be replaced by its delta', () => {
    const make: Make = (name, from, to, capacitance) => ({ kind: 'capacitor', name, from, to, capacitance })
    fc.assert(
      fc.property(circuits(), frequencies, three(capacitances), (circuit, frequency, star) => {
        assertEquivalent(circuit, frequency, star, 'F', make)
      }),
      { seed: SEED + 1, numRuns: 40 },
    )
  })

  test('a star of inductors can be replaced by its delta', () => {
    const make: Make = (name, from, to, inductance) => ({ kind: 'inductor', name, from, to, inductance })
    fc.assert(
      fc.property(circuits(), frequencies, three(inductances), (circuit, frequency, star) => {
        // a delta arm may come out beyond the largest inductance that a sheet may name
        const sizes = star.map(({ value }) => value)
        fc.pre(Math.max(...sizes) ** 2 / Math.min(...sizes) < 3e4)
        assertEquivalent(circuit, frequency, star, 'H', make)
      }),
      { seed: SEED + 2, numRuns: 40 },
    )
  })
})
