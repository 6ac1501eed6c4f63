import * as fc from 'fast-check'
import { describe, test } from 'vitest'
import { type Circuit, isSource, nodesOf } from '../support/circuit.ts'
import { analyses, circuits } from '../support/circuits.ts'
import { assertClose } from '../support/close.ts'
import { add, type Complex, modulus } from '../support/complex.ts'
import { currentIn, FLOOR, LAW, solve, voltageAt } from '../support/laws.ts'
import { silenced } from '../support/rewrite.ts'
import { SEED } from '../support/seed.ts'

/** All readings of a circuit in a fixed order, voltages first. */
function readings(circuit: Circuit, frequency: number | null): { id: string; value: Complex }[] {
  const answer = solve(circuit, frequency)
  const voltages = nodesOf(circuit).map((node) => ({ id: node, value: voltageAt(circuit, answer, node) }))
  const branches = Object.keys(answer.currents).sort()
  return [...voltages, ...branches.map((id) => ({ id, value: currentIn(answer, id) }))]
}

describe('superposition in random circuits', () => {
  // The superposition theorem, any textbook; grade MEMORY.
  test('all sources together give the sum of what each gives alone', () => {
    fc.assert(
      fc.property(circuits(), analyses, (circuit, frequency) => {
        const sources = circuit.parts.filter(isSource)
        const alone = sources.map(({ name }) =>
          readings(
            silenced(circuit, (other) => other === name),
            frequency,
          ),
        )
        const together = readings(circuit, frequency)
        const voltages = nodesOf(circuit).length
        // The parts may cancel in the sum: what counts is the size of the summands.
        const sizes = together.map((_, at) =>
          alone.reduce((sum, one) => sum + modulus(one[at]?.value ?? NIL), 0),
        )
        const largest = [Math.max(...sizes.slice(0, voltages)), Math.max(...sizes.slice(voltages))]
        together.forEach(({ id, value }, at) => {
          const sum = alone.map((one) => one[at]?.value ?? NIL).reduce(add)
          const absolute = LAW * (sizes[at] ?? 0) + FLOOR * (largest[at < voltages ? 0 : 1] ?? 0)
          assertClose(value, sum, { relative: 0, absolute }, `sum at ${id}`)
        })
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('a circuit whose sources are all silent carries nothing', () => {
    fc.assert(
      fc.property(circuits(), analyses, (circuit, frequency) => {
        for (const { id, value } of readings(
          silenced(circuit, () => false),
          frequency,
        )) {
          assertClose(value, 0, { relative: 0, absolute: 0 }, id)
        }
      }),
      { seed: SEED + 1, numRuns: 40 },
    )
  })
})

const NIL: Complex = { re: 0, im: 0 }
