import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { nodesOf, type Part } from '../support/circuit.ts'
import { analyses, circuits } from '../support/circuits.ts'
import { assertClose } from '../support/close.ts'
import { assertSameNumbers, currentIn, solve, toleranceOf, voltageAt } from '../support/laws.ts'
import { extended, renamed, reordered } from '../support/rewrite.ts'
import { SEED } from '../support/seed.ts'

describe('what leaves the numbers of a random circuit alone', () => {
  test('other names for nodes and parts give the same numbers', () => {
    fc.assert(
      fc.property(circuits(), analyses, fc.infiniteStream(fc.nat(1e6)), (circuit, frequency, draws) => {
        const names = new Map<string, string>()
        // A random number in front of the old name: unique still, and in another order.
        const rename = (old: string): string => {
          const name = names.get(old) ?? `z${draws.next().value}-${old}`
          names.set(old, name)
          return name
        }
        const other = renamed(circuit, rename, rename)
        const translate = (id: string): string => {
          const [place = '', rest = ''] = id.split('/')
          const [name = '', winding] = rest.split('.')
          if (id === 'earth') return id
          return `${place}/${rename(name)}${winding === undefined ? '' : `.${winding}`}`
        }
        assertSameNumbers(solve(other, frequency), solve(circuit, frequency), translate)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('parts in another order give the same numbers', () => {
    const keys = fc.array(fc.nat(1e6), { minLength: 20, maxLength: 40 })
    fc.assert(
      fc.property(circuits(), analyses, keys, (circuit, frequency, order) => {
        assertSameNumbers(solve(reordered(circuit, order), frequency), solve(circuit, frequency))
      }),
      { seed: SEED + 1, numRuns: 60 },
    )
  })

  test('the same circuit twice gives the same bits', () => {
    fc.assert(
      fc.property(circuits(), analyses, (circuit, frequency) => {
        const first = JSON.stringify(solve(circuit, frequency))
        expect(JSON.stringify(solve(structuredClone(circuit), frequency))).toBe(first)
      }),
      { seed: SEED + 2, numRuns: 60 },
    )
  })

  const dangling = fc.constantFrom<((from: string) => Part)[]>(
    (from) => ({
      kind: 'resistor',
      name: 'loose',
      from,
      to: 'end',
      resistance: { text: '82 kΩ', value: 82e3 },
    }),
    (from) => ({ kind: 'strap', name: 'loose', from: 'end', to: from }),
    (from) => ({ kind: 'strap', name: 'loose', from, to: 'end', resistance: { text: '0 Ω', value: 0 } }),
    (from) => ({ kind: 'inductor', name: 'loose', from, to: 'end', inductance: { text: '2 H', value: 2 } }),
    (from) => ({
      kind: 'capacitor',
      name: 'loose',
      from: 'end',
      to: from,
      capacitance: { text: '1.8 µF', value: 1.8e-6 },
    }),
  )

  test('a part with one end left loose changes nothing and carries nothing', () => {
    fc.assert(
      fc.property(circuits(), analyses, fc.nat(999), dangling, (circuit, frequency, at, make) => {
        const nodes = ['earth', ...nodesOf(circuit)]
        const node = nodes[at % nodes.length] ?? 'earth'
        const loose = make(node)
        const plain = solve(circuit, frequency)
        const answer = solve(extended(circuit, [loose]), frequency)
        assertSameNumbers(answer, plain)
        const amps = toleranceOf(plain.currents)
        assertClose(currentIn(answer, `${circuit.name}/loose`), 0, amps, 'current in the loose part')
        if (loose.kind === 'capacitor' && frequency === null) {
          expect(answer.voltages[`${circuit.name}/end`]).toBeNull() // an island of its own
        } else {
          const expected = voltageAt(circuit, plain, node)
          assertClose(
            voltageAt(circuit, answer, 'end'),
            expected,
            toleranceOf(plain.voltages),
            'voltage of the loose end',
          )
        }
      }),
      { seed: SEED + 3, numRuns: 80 },
    )
  })
})
