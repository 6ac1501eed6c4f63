import * as fc from 'fast-check'
import { compileCircuit } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { readSheet } from 'ringproof/sheet/read'
import type { Question } from 'ringproof/solver/question'
import { solve } from 'ringproof/solver/solve'
import { describe, test } from 'vitest'
import type { Circuit } from '../support/circuit.ts'
import { circuitSheet } from '../support/circuit-sheet.ts'
import { circuits, frequencies } from '../support/circuits.ts'
import { assertClose } from '../support/close.ts'
import { SEED } from '../support/seed.ts'
import { shelfOf } from '../support/sheets.ts'

function netOf(circuit: Circuit): Netlist {
  const { sheet } = readSheet({ file: 'net.yaml', text: circuitSheet(circuit) }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error('the random circuit is no sheet')
  return compileCircuit(sheet)
}

/** Questions of many kinds about one netlist: each keeps something for the next. */
function questionsOf(net: Netlist, frequency: number, draw: number): readonly Question[] {
  const direct: Question = { analysis: 'direct', condition: { line: 'idle', sets: {} } }
  const alternating: Question = { ...direct, analysis: 'alternating', frequency }
  const node = (k: number) => (draw * (k + 1)) % net.nodes.length
  const branch = draw % net.branches.length
  return [
    direct,
    alternating,
    { ...alternating, frequency: frequency * 100 },
    { ...direct, within: [{ branch, ohms: 1e6 }] },
    { ...alternating, bridges: [{ from: node(1), to: node(2), ohms: 0.5 }] },
    { ...direct, sources: 'none', probes: [{ into: node(3), outOf: node(4), re: 1 }] },
  ]
}

describe('what was asked before', () => {
  test('changes no answer: kept patterns, pivots and points are none of a question', () => {
    fc.assert(
      fc.property(circuits(), frequencies, fc.nat(9999), (circuit, frequency, draw) => {
        const asked = netOf(circuit)
        const questions = questionsOf(asked, frequency, draw)
        for (const question of [...questions, ...questions.toReversed()]) {
          const known = solve(asked, question)
          const fresh = solve(netOf(circuit), question)
          const largest = Math.max(...fresh.currents.map(Math.abs), Math.max(...fresh.voltages.map(Math.abs)))
          fresh.currents.forEach((value, k) => {
            assertClose(
              known.currents[k],
              value,
              { relative: 1e-13, absolute: 1e-18 * largest },
              `current ${k}`,
            )
          })
          fresh.voltages.forEach((value, k) => {
            assertClose(
              known.voltages[k],
              value,
              { relative: 1e-13, absolute: 1e-18 * largest },
              `voltage ${k}`,
            )
          })
        }
      }),
      { seed: SEED, numRuns: 40 },
    )
  })
})
