import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { nodesOf } from '../support/circuit.ts'
import { analyses, circuits } from '../support/circuits.ts'
import { modulus } from '../support/complex.ts'
import { transferImpedance } from '../support/laws.ts'
import { SEED } from '../support/seed.ts'

describe('passivity of random networks without sources', () => {
  // A network of passive parts has a positive-real driving-point impedance: Brune (1931); grade MEMORY.
  test('the impedance between any two nodes has no negative resistance', () => {
    fc.assert(
      fc.property(
        circuits({ sources: false }),
        analyses,
        fc.nat(999),
        fc.nat(999),
        (network, frequency, a, step) => {
          const nodes = ['earth', ...nodesOf(network)]
          const into = nodes[a % nodes.length] ?? 'earth'
          const outOf = nodes[(a + 1 + (step % (nodes.length - 1))) % nodes.length] ?? 'earth'
          const impedance = transferImpedance(
            network,
            frequency,
            { into, outOf },
            { plus: into, minus: outOf },
          )
          expect(impedance.re).toBeGreaterThanOrEqual(-1e-12 * modulus(impedance))
          if (frequency === null) expect(impedance.im).toBe(0)
        },
      ),
      { seed: SEED, numRuns: 150 },
    )
  })

  test('a resistor across two nodes never raises the resistance between any two nodes', () => {
    // Rayleigh's monotonicity law; Doyle and Snell, Random Walks and Electric Networks, section 1.4; grade MEMORY.
    fc.assert(
      fc.property(
        circuits({ sources: false, lossyTree: true }),
        fc.tuple(fc.nat(999), fc.nat(999), fc.nat(999)),
        (network, [a, b, c]) => {
          const nodes = nodesOf(network)
          const at = (index: number): string => nodes[index % nodes.length] ?? 'earth'
          const other = at(b) === at(c) ? 'earth' : at(c)
          const shunt = {
            kind: 'resistor',
            name: 'shunt',
            from: at(b),
            to: other,
            resistance: shuntValue,
          } as const
          const measure = (parts: typeof network.parts) =>
            transferImpedance(
              { ...network, parts },
              null,
              { into: at(a), outOf: 'earth' },
              { plus: at(a), minus: 'earth' },
            ).re
          const before = measure(network.parts)
          expect(measure([...network.parts, shunt])).toBeLessThanOrEqual(before * (1 + 1e-12))
        },
      ),
      { seed: SEED + 1, numRuns: 60 },
    )
  })
})

const shuntValue = { text: '470 Ω', value: 470 }
