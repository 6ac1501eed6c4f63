import * as fc from 'fast-check'
import { describe, test } from 'vitest'
import { analyses, circuits } from '../support/circuits.ts'
import { assertKirchhoff, assertPowerBalance, solve } from '../support/laws.ts'
import { SEED } from '../support/seed.ts'

describe('conservation in random circuits', () => {
  // Kirchhoff's laws (1845) and the definitions of the parts.
  test('the currents out of every node sum to nil and every part obeys its own law', () => {
    fc.assert(
      fc.property(circuits(), analyses, (circuit, frequency) => {
        assertKirchhoff(circuit, solve(circuit, frequency), frequency)
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  // Tellegen, A general network theorem, Philips Research Reports 7 (1952); grade MEMORY.
  test('the complex powers of all parts sum to nil', () => {
    fc.assert(
      fc.property(circuits(), analyses, (circuit, frequency) => {
        assertPowerBalance(circuit, solve(circuit, frequency), frequency)
      }),
      { seed: SEED + 1, numRuns: 200 },
    )
  })
})
