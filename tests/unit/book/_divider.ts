import type { BenchTest } from 'ringproof/book/bench-test'
import type { BookFault } from 'ringproof/book/fault'
import type { BookInputs } from 'ringproof/book/make-book'
import type { FigurePlan } from 'ringproof/figures/figure'
import type { Change } from 'ringproof/figures/variants'
import { type Netlist, nodeOf } from 'ringproof/netlist/netlist'
import type { PartSpec } from 'ringproof/parts/kind'
import { compiled } from '../../support/compiled.ts'

export const IDLE = { line: 'idle', sets: {} } as const

/** 12 V on two resistors with tolerances; a third stands beside the lower one and has none. */
export const DIVIDER: readonly string[] = [
  'e: {kind: voltage-source, from: p, to: earth, direct: 12 V}',
  'r1: {kind: resistor, from: p, to: q, resistance: 1 kΩ ± 6 %}',
  'r2: {kind: resistor, from: q, to: earth, resistance: 2 kΩ ± 12 %}',
  'r3: {kind: resistor, from: q, to: earth, resistance: 10 MΩ}',
]

/** The voltage of a node to earth in direct current. */
export function volts(net: Netlist, node: string): FigurePlan {
  return {
    id: 'loop.voltage',
    subject: node,
    condition: IDLE,
    unit: 'V',
    taps: [{ question: { analysis: 'direct', condition: IDLE }, voltage: [nodeOf(net, node), 0] }],
    value: ([re = Number.NaN]) => re,
  }
}

/** A test whose score is its first figure. */
export function testOf(id: string, plan: FigurePlan, more: Partial<BenchTest> = {}): BenchTest {
  return {
    id,
    asks: `${id}?`,
    how: 'Read it.',
    site: 'outside',
    live: false,
    effort: 1,
    condition: IDLE,
    unit: 'V',
    scale: 0.5,
    error: () => 0.01,
    plans: [plan],
    score: ([amount = Number.NaN]) => amount,
    ...more,
  }
}

/** A fault of one or several changes. */
export function faultOf(id: string, ...changes: readonly Change[]): BookFault {
  return {
    id,
    subjects: [id.split(' ')[0] ?? id],
    family: 'open',
    says: `${id}, it says`,
    sign: 'look',
    mend: 'mend it',
    weight: 1,
    source: 'from memory',
    changes,
  }
}

/** Index of a part of `trial`. */
export function partOf(net: Netlist, name: string): number {
  return net.parts.findIndex(({ id }) => id === `trial/${name}`)
}

/** Index of the branch of a part of `trial`. */
export function branchOf(net: Netlist, name: string): number {
  return net.branchIndex.get(`trial/${name}`) ?? -1
}

/** A resistor's spec with another resistance. */
export function resisting(net: Netlist, name: string, ohms: number): PartSpec {
  const spec = net.parts[partOf(net, name)]?.spec as PartSpec & { resistance: object }
  return { ...spec, resistance: { ...spec.resistance, value: ohms } } as PartSpec
}

/** The divider with two tests and its faults: r1 open, r2 of 500 Ω, r2 shorted, 1 kΩ within r1, r3 open. */
export function divider(): BookInputs {
  const net = compiled(...DIVIDER)
  return {
    net,
    transmitterSpread: 3,
    tests: [testOf('q', volts(net, 'trial/q')), testOf('p', volts(net, 'trial/p'))],
    faults: [
      faultOf('r1 open', { lifted: branchOf(net, 'r1') }),
      faultOf('r2 drifted', { instead: { part: partOf(net, 'r2'), spec: resisting(net, 'r2', 500) } }),
      faultOf('r2 shorted', { bridge: { from: nodeOf(net, 'trial/q'), to: 0, ohms: 0 } }),
      faultOf('r1 resists', { within: { branch: branchOf(net, 'r1'), ohms: 1000 } }),
      faultOf('r3 open', { lifted: branchOf(net, 'r3') }),
    ],
  }
}
