/** Hunts for circuits on which two ways of computing the same disagree. */
import * as fc from 'fast-check'
import { seededRandom } from 'ringproof/algebra/random'
import { compileCircuit } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { compare } from 'ringproof/opinion/compare'
import { type Adviser, loadAdviser } from 'ringproof/opinion/opinion'
import { readSheet } from 'ringproof/sheet/read'
import type { Question } from 'ringproof/solver/question'
import type { Solution } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import type { Change } from 'ringproof/solver/variants/change'
import type { Reading } from 'ringproof/solver/variants/tables'
import { furthest, VariantTable } from 'ringproof/solver/variants/variant-table'
import type { Circuit } from '../support/circuit.ts'
import { circuitSheet } from '../support/circuit-sheet.ts'
import { analyses, circuits } from '../support/circuits.ts'
import { shelfOf } from '../support/sheets.ts'
import { wideTable } from './wide-table.ts'

/** How much is hunted. */
export interface Hunt {
  readonly seeds: number
  readonly first: number
  /** Circuits of the table from 1 mΩ to 1 GΩ. */
  readonly wide: number
}

/** Circuits that one seed draws, and of how many one is given a second opinion. */
const OF_A_SEED = 100
const ADVISED = 20
/** A scaled residual above this is a finding. */
const RESIDUAL = 10
/** The two engines, and a variant and its fresh solve, may differ by this much. */
const NINE_DIGITS = 1e-9

const drawn = fc.tuple(circuits(), analyses, fc.nat())

/** Hunts and reports line by line; gives the number of findings. */
export async function soak({ seeds, first, wide }: Hunt, say: (line: string) => void): Promise<number> {
  say(wideTable(wide, first))
  const advise = await loadAdviser()
  let findings = 0
  const most = { residual: 0, engines: 0, opinion: 0, variant: 0 }
  for (let seed = first; seed < first + seeds; seed += 1) {
    fc.sample(drawn, { seed, numRuns: OF_A_SEED }).forEach(([circuit, frequency, choice], k) => {
      try {
        const figures = examine(circuit, frequency, choice, k % ADVISED === 0 ? advise : undefined)
        for (const name of ['residual', 'engines', 'opinion', 'variant'] as const)
          most[name] = Math.max(most[name], figures[name])
        const complaint = complaintOf(figures)
        if (complaint !== undefined) throw new Error(complaint)
      } catch (error) {
        findings += 1
        const why = error instanceof Error ? error.message : String(error)
        say(`FOUND seed ${seed}, circuit ${k}, ${frequency ?? 0} Hz: ${why}\n${circuitSheet(circuit)}`)
      }
    })
    if ((seed - first + 1) % 50 === 0 || seed + 1 === first + seeds)
      say(progress(seed, first, most, findings))
  }
  return findings
}

interface Figures {
  readonly residual: number
  readonly engines: number
  readonly opinion: number
  readonly variant: number
}

function complaintOf({ residual, engines, opinion, variant }: Figures): string | undefined {
  if (!(residual < RESIDUAL)) return `residual ${residual}`
  if (!(engines < NINE_DIGITS)) return `the engines differ by ${engines}`
  if (!(opinion < NINE_DIGITS)) return `the second opinion differs by ${opinion}`
  if (!(variant < NINE_DIGITS)) return `a variant differs from its fresh solve by ${variant}`
  return undefined
}

function progress(seed: number, first: number, most: Figures, findings: number): string {
  const one = (value: number): string => value.toExponential(1)
  const worst = `residual ${most.residual.toFixed(2)}, engines ${one(most.engines)}, second opinion ${one(most.opinion)}, variants ${one(most.variant)}`
  return `seeds ${first} to ${seed}: ${(seed - first + 1) * OF_A_SEED} circuits, ${findings} findings; worst: ${worst}`
}

function netOf(circuit: Circuit): Netlist {
  const { sheet, problems } = readSheet(
    { file: 'soak.yaml', text: circuitSheet(circuit) },
    shelfOf([]),
    'circuit',
  )
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return compileCircuit(sheet)
}

function examine(
  circuit: Circuit,
  frequency: number | null,
  choice: number,
  advise: Adviser | undefined,
): Figures {
  const net = netOf(circuit)
  const condition = { line: 'idle' as const, sets: {} }
  const question: Question =
    frequency === null ? { analysis: 'direct', condition } : { analysis: 'alternating', frequency, condition }
  const sparse = solve(net, question)
  const dense = solve(net, question, { dense: true })
  const readings = readingsOf(net)
  const rows = [sparse, dense].map((one) => rowOf(one))
  const [p = new Float64Array(), q = new Float64Array()] = rows
  const opinion =
    advise === undefined ? 0 : (compare(net, sparse, advise(net, sparse)).largest?.relative ?? 0)
  return {
    residual: Math.max(sparse.residual, dense.residual),
    engines: furthest(readings, p, q, q),
    opinion,
    variant: variantOf(net, question, readings, choice),
  }
}

function readingsOf(net: Netlist): readonly Reading[] {
  return [
    ...net.nodes.map((_, k): Reading => ({ voltage: [k, 0] })),
    ...net.branches.map(({ index }): Reading => ({ current: index })),
  ]
}

function rowOf({ voltages, currents }: Solution): Float64Array {
  return Float64Array.of(...voltages, ...currents)
}

/** One pair of changes, drawn by `choice`, beside its fresh solve. */
function variantOf(net: Netlist, question: Question, readings: readonly Reading[], choice: number): number {
  const random = seededRandom(choice)
  const branch = (): number => Math.floor(random() * net.branches.length)
  const node = (): number => Math.floor(random() * net.nodes.length)
  const changes: readonly Change[] = [
    { lifted: branch() },
    { within: { branch: branch(), ohms: 10 ** (8 * random() - 2) } },
    { bridge: { from: node(), to: node(), ohms: 10 ** (8 * random() - 2) } },
  ]
  const own = readings.slice(1) // the voltage of earth against itself tells nothing
  const table = new VariantTable(net, question, own, changes, { seed: choice, every: 1 })
  const out = new Float64Array(2 * own.length)
  for (const [c, d] of [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const)
    table.two(c, d, out)
  return table.worst
}
