import * as fc from 'fast-check'
import { compileCircuit } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { AGREED } from 'ringproof/opinion/compare'
import { loadAdviser } from 'ringproof/opinion/opinion'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import type { Circuit } from '../../support/circuit.ts'
import { circuitSheet } from '../../support/circuit-sheet.ts'
import { circuits, frequencies } from '../../support/circuits.ts'
import { SEED } from '../../support/seed.ts'
import { shelfOf } from '../../support/sheets.ts'
import { twoIslands } from '../../support/two-islands.ts'
import { advised } from './_advised.ts'

const advise = await loadAdviser()
const adviseLong = await loadAdviser(30)

function netOf(circuit: Circuit): Netlist {
  const { sheet, problems } = readSheet(
    { file: 'net.yaml', text: circuitSheet(circuit) },
    shelfOf([]),
    'circuit',
  )
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return compileCircuit(sheet)
}

// The other formulation: the sparse tableau of Hachtel, Brayton and Gustavson (1971; from memory), by mathjs.
describe('random circuits have the same answer by the second opinion', () => {
  const agrees = (circuit: Circuit, frequency: number | null): void => {
    const { relative } = advised(netOf(circuit), frequency === null ? {} : { frequency }, advise)
    expect(relative).toBeLessThanOrEqual(AGREED)
  }

  test('at direct current', () => {
    fc.assert(
      fc.property(circuits(), (circuit) => agrees(circuit, null)),
      { seed: SEED, numRuns: 60 },
    )
  })

  test('at alternating current', () => {
    fc.assert(
      fc.property(circuits(), frequencies, (circuit, frequency) => agrees(circuit, frequency)),
      { seed: SEED + 1, numRuns: 60 },
    )
  })

  test('in two islands, joined by a capacitor or not at all', () => {
    fc.assert(
      fc.property(twoIslands, fc.option(frequencies), (circuit, frequency) => agrees(circuit, frequency)),
      { seed: SEED + 2, numRuns: 40 },
    )
  })

  test('in thirty digits, which agree with those of doubles', () => {
    fc.assert(
      fc.property(circuits(), fc.option(frequencies), (circuit, frequency) => {
        const net = netOf(circuit)
        const question = frequency === null ? {} : { frequency }
        const long = advised(net, question, adviseLong)
        const short = advised(net, question, advise)
        expect(long.relative).toBeLessThanOrEqual(AGREED)
        const largest = Math.max(...short.opinion.solution.currents.map(Math.abs))
        short.opinion.solution.currents.forEach((current, k) => {
          const apart = Math.abs(current - (long.opinion.solution.currents[k] ?? Number.NaN))
          // the doubles are improved until corrections are their own rounding; phasors at an angle enter both as doubles
          expect(apart).toBeLessThanOrEqual(1e-13 * largest)
        })
      }),
      { seed: SEED + 3, numRuns: 12 },
    )
  })
})
