import * as fc from 'fast-check'
import { describe, test } from 'vitest'
import { nodesOf, type Source, type Strap } from '../support/circuit.ts'
import { analyses, circuits } from '../support/circuits.ts'
import { assertClose } from '../support/close.ts'
import { modulus } from '../support/complex.ts'
import { currentIn, FLOOR, LAW, solve, transferImpedance } from '../support/laws.ts'
import { extended } from '../support/rewrite.ts'
import { SEED } from '../support/seed.ts'

const ends = fc.tuple(fc.nat(999), fc.nat(999))

/** Two different nodes of a network, picked by two numbers. */
function pair(nodes: readonly string[], [a, step]: [number, number]): { first: string; second: string } {
  const at = (index: number): string => nodes[index % nodes.length] ?? 'earth'
  return { first: at(a), second: at(a + 1 + (step % (nodes.length - 1))) }
}

describe('reciprocity of random passive networks', () => {
  // The reciprocity theorem for networks of resistors, capacitors, inductors and mutual inductors; facts.md 10, row 39.
  test('the transfer impedance from one pair of nodes to another is the same both ways', () => {
    fc.assert(
      fc.property(circuits({ sources: false }), analyses, ends, ends, (network, frequency, one, other) => {
        const nodes = ['earth', ...nodesOf(network)]
        const a = pair(nodes, one)
        const b = pair(nodes, other)
        const measure = (from: typeof a, to: typeof a) =>
          transferImpedance(
            network,
            frequency,
            { into: from.first, outOf: from.second },
            { plus: to.first, minus: to.second },
          )
        const own = Math.max(modulus(measure(a, a)), modulus(measure(b, b)))
        assertClose(
          measure(b, a),
          measure(a, b),
          { relative: LAW, absolute: FLOOR * own },
          'transfer impedance',
        )
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('an ideal source and an ammeter change places without a change of the reading', () => {
    fc.assert(
      fc.property(
        circuits({ sources: false, lossyTree: true }),
        analyses,
        ends,
        ends,
        (network, frequency, one, other) => {
          const nodes = ['earth', ...nodesOf(network)]
          // Source and ammeter stand in series with a resistor each, so that neither shorts what the other measures.
          const reading = (at: [number, number], meterAt: [number, number]): ReturnType<typeof currentIn> => {
            const { first, second } = pair(nodes, at)
            const meter = pair(nodes, meterAt)
            const answer = solve(
              extended(network, [
                { ...source, from: 'source-end', to: second },
                { kind: 'resistor', name: 'behind', from: 'source-end', to: first, resistance: kilohm },
                { ...ammeter, from: 'meter-end', to: meter.second },
                { kind: 'resistor', name: 'before', from: meter.first, to: 'meter-end', resistance: kilohm },
              ]),
              frequency,
            )
            return currentIn(answer, `${network.name}/ammeter`)
          }
          // 1 V behind 1 kΩ drives 1 mA at most: that is the scale of rounding.
          const tolerance = { relative: LAW, absolute: FLOOR * 1e-3 }
          assertClose(reading(other, one), reading(one, other), tolerance, 'current in the ammeter')
        },
      ),
      { seed: SEED + 1, numRuns: 60 },
    )
  })
})

const kilohm = { text: '1 kΩ', value: 1000 }
const volt = { text: '1 V', value: 1 }
const source: Source = {
  kind: 'voltage-source',
  name: 'source',
  from: '',
  to: '',
  direct: volt,
  alternating: { size: volt, degrees: 0 },
}
const ammeter: Strap = {
  kind: 'strap',
  name: 'ammeter',
  from: '',
  to: '',
  resistance: { text: '0 Ω', value: 0 },
}
