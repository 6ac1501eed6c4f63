import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { branchesOf } from '../support/branches.ts'
import { type Circuit, nodesOf } from '../support/circuit.ts'
import { circuits, frequencies } from '../support/circuits.ts'
import { assertClose } from '../support/close.ts'
import { modulus } from '../support/complex.ts'
import { currentIn, FLOOR, LAW, NOTHING, solve, voltageAt } from '../support/laws.ts'
import { decimalQuantity } from '../support/quantity-text.ts'
import { SEED } from '../support/seed.ts'
import { twoIslands } from '../support/two-islands.ts'
import { solveTableau } from './tableau.ts'
import { tiesOf } from './ties.ts'

/** Every node voltage and branch current agrees to 1e-9 of itself, plus 1e-12 of the largest of its sort; what floats has none. */
function assertAgreement(circuit: Circuit, frequency: number | null): void {
  const answer = solve(circuit, frequency)
  const branches = branchesOf(circuit, frequency)
  const ties = tiesOf(branches)
  const reference = solveTableau([...branches, ...ties.branches])
  const largest = (values: Iterable<{ re: number; im: number }>) => Math.max(...[...values].map(modulus))
  const volts = { relative: LAW, absolute: FLOOR * largest(reference.voltages.values()) + NOTHING }
  const amps = {
    relative: LAW,
    absolute: FLOOR * largest(reference.currents.values()) + NOTHING,
  }
  for (const node of nodesOf(circuit)) {
    if (ties.floating.has(node)) {
      expect(answer.voltages[`${circuit.name}/${node}`], `voltage of ${node}`).toBeNull()
      continue
    }
    const expected = reference.voltages.get(node) ?? { re: Number.NaN, im: 0 }
    assertClose(voltageAt(circuit, answer, node), expected, volts, `voltage of ${node}`)
  }
  for (const { id } of branches) {
    const expected = reference.currents.get(id) ?? { re: Number.NaN, im: 0 }
    assertClose(currentIn(answer, id), expected, amps, `current in ${id}`)
  }
  expect(Object.keys(answer.currents).sort()).toEqual(branches.map(({ id }) => id).sort())
}

// The other formulation: mathjs on the sparse tableau of Hachtel, Brayton and Gustavson (1971), see tableau.ts.
describe('random circuits by mathjs from the sparse tableau', () => {
  test('100 circuits at direct current agree to nine digits', () => {
    fc.assert(
      fc.property(circuits(), (circuit) => assertAgreement(circuit, null)),
      { seed: SEED, numRuns: 100 },
    )
  })

  test('100 circuits at alternating current agree to nine digits', () => {
    fc.assert(
      fc.property(circuits(), frequencies, (circuit, frequency) => assertAgreement(circuit, frequency)),
      { seed: SEED + 1, numRuns: 100 },
    )
  })

  test('40 circuits of two islands agree at direct current', () => {
    fc.assert(
      fc.property(twoIslands, (circuit) => assertAgreement(circuit, null)),
      { seed: SEED + 2, numRuns: 40 },
    )
  })

  test('40 circuits of two islands agree at alternating current, joined by a capacitor or not at all', () => {
    fc.assert(
      fc.property(twoIslands, frequencies, (circuit, frequency) => assertAgreement(circuit, frequency)),
      { seed: SEED + 3, numRuns: 40 },
    )
  })

  test('the tableau itself solves two resistors across a source', () => {
    const ohms = (digits: number) => decimalQuantity(digits, 0, 'Ω')
    const volts = decimalQuantity(12, 0, 'V')
    const circuit: Circuit = {
      name: 'divider',
      parts: [
        {
          kind: 'voltage-source',
          name: 'e',
          from: 'a',
          to: 'earth',
          direct: volts,
          alternating: { size: volts, degrees: 90 },
        },
        { kind: 'resistor', name: 'r', from: 'a', to: 'b', resistance: ohms(4) },
        { kind: 'resistor', name: 's', from: 'b', to: 'earth', resistance: ohms(2) },
      ],
    }
    const direct = solveTableau(branchesOf(circuit, null))
    expect(direct.voltages.get('b')).toEqual({ re: 4, im: 0 })
    expect(direct.currents.get('divider/e')).toEqual({ re: -2, im: 0 })
    expect(solveTableau(branchesOf(circuit, 50)).currents.get('divider/s')).toEqual({ re: 0, im: 2 })
  })
})
