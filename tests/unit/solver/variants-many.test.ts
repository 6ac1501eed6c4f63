import * as fc from 'fast-check'
import { seededRandom } from 'ringproof/algebra/random'
import { compileCircuit } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { ProblemError } from 'ringproof/problem'
import { readSheet } from 'ringproof/sheet/read'
import type { Question } from 'ringproof/solver/question'
import { currentIn, type Solution, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { type Change, changed } from 'ringproof/solver/variants/change'
import {
  APART,
  type Asked,
  ManyVariants,
  NO_WAY,
  READ,
  REFUSED,
} from 'ringproof/solver/variants/many/many-variants'
import { describe, expect, test } from 'vitest'
import { solveTableau } from '../../library/tableau.ts'
import { type Branch, branchesOf } from '../../support/branches.ts'
import type { Circuit } from '../../support/circuit.ts'
import { circuitSheet } from '../../support/circuit-sheet.ts'
import { analyses, circuits } from '../../support/circuits.ts'
import { SEED } from '../../support/seed.ts'
import { shelfOf } from '../../support/sheets.ts'
import { alternating, branch, circuit, DIRECT, node } from './_circuit.ts'

function netOf(one: Circuit): Netlist {
  const { sheet } = readSheet({ file: 'net.yaml', text: circuitSheet(one) }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error('the random circuit is no sheet')
  return compileCircuit(sheet)
}

/** Every branch lifted or with 5 Ω within, resistors of other values, links between any two nodes. */
function changesOf(net: Netlist, ends: readonly number[]): readonly Change[] {
  const at = (k: number) => (ends[k] ?? 0) % net.nodes.length
  return [
    ...net.branches.map(({ index }): Change => ({ lifted: index })),
    ...net.branches.map(({ index }): Change => ({ within: { branch: index, ohms: 5 } })),
    ...net.parts.flatMap((part, index): Change[] => {
      const { resistance } = part.spec as unknown as { readonly resistance?: { readonly value: number } }
      if (part.spec.kind !== 'resistor' || resistance === undefined) return []
      return [
        {
          instead: {
            part: index,
            spec: { ...part.spec, resistance: { ...resistance, value: 3 * resistance.value } } as never,
          },
        },
      ]
    }),
    ...[0, 2, 4].map(
      (k): Change => ({ bridge: { from: at(k), to: at(k + 1), ohms: [0.01, 0, 1e6][k / 2] ?? 1 } }),
    ),
  ]
}

/** All voltages and currents, for the circuit's own sources and for one ampere between two nodes. */
function askedOf(net: Netlist, question: Question, [p = 1, q = 2]: readonly number[]): readonly Asked[] {
  const n = net.nodes.length
  const into = p % n
  const probed: Question = {
    ...question,
    sources: 'none',
    probes: [{ into, outOf: (into + 1 + (q % (n - 1))) % n, re: 1 }],
  }
  return [question, probed].flatMap((one) => [
    ...net.nodes.slice(1).map((_, k): Asked => ({ question: one, reading: { voltage: [k + 1, 0] } })),
    ...net.branches.map(({ index }): Asked => ({ question: one, reading: { current: index } })),
  ])
}

function solved(net: Netlist, question: Question): Solution | undefined {
  try {
    return solve(net, question)
  } catch (error) {
    if (error instanceof ProblemError) return undefined
    throw error
  }
}

/** What differs from fresh solves by more than nine digits of the largest of its kind, or in how it came out. */
function differences(
  net: Netlist,
  asked: readonly Asked[],
  changes: readonly Change[],
  table: ManyVariants,
  made: readonly number[],
): readonly unknown[] {
  const out = new Float64Array(2 * asked.length)
  const came = new Uint8Array(asked.length)
  table.read(made, out, came)
  const all = made.flatMap((c) => changes.slice(c, c + 1))
  const fresh = new Map(
    [...new Set(asked.map(({ question }) => question))].map((one) => [one, solved(net, changed(one, all))]),
  )
  return asked.flatMap(({ question, reading }, t): unknown[] => {
    const solution = fresh.get(question)
    const how = came[t] ?? -1
    if (solution === undefined) return how >= REFUSED - 1 ? [] : [['not refused', reading]]
    if (solution.probeOpen) return how === NO_WAY ? [] : [['not open', reading]]
    const read =
      'current' in reading
        ? currentIn(solution, reading.current)
        : voltageBetween(solution, ...reading.voltage)
    if (read === undefined) return how === APART ? [] : [['not apart', reading]]
    const sizes = 'current' in reading ? solution.currents : solution.voltages
    const most = sizes.reduce((largest, x) => Math.max(largest, Math.abs(x)), 0)
    const [re = 0, im = 0] = out.subarray(2 * t, 2 * t + 2)
    const apart = Math.hypot(re - read.re, im - read.im)
    const least = Math.max(Math.hypot(read.re, read.im), 1e-6 * most)
    return how === READ && apart <= 1e-9 * least + (solution.point === undefined ? 1e-15 : SETTLED)
      ? []
      : [[question.sources, reading, how, re, im, read]]
  })
}

/** Where a point is sought, unknowns are at rest when they move by no more than this, V or A (design 5). */
const SETTLED = 1e-12

const NIL = { re: 0, im: 0 }
const ONE = { re: 1, im: 0 }
const ends = fc.array(fc.nat(999), { minLength: 6, maxLength: 6 })

describe('variants of any rank', () => {
  test('of random circuits read as fresh solves do: one to five changes, islands apart and together', () => {
    const counts = { updated: 0, fresh: 0 }
    fc.assert(
      fc.property(circuits(), analyses, ends, fc.nat(), (one, frequency, some, seed) => {
        const net = netOf(one)
        const asked = askedOf(net, frequency === null ? DIRECT : alternating(frequency), some)
        const changes = changesOf(net, some)
        const table = new ManyVariants(net, asked, changes)
        const random = seededRandom(seed)
        for (let k = 0; k < 12; k += 1) {
          const made = [
            ...new Set(Array.from({ length: 1 + (k % 5) }, () => Math.floor(random() * changes.length))),
          ]
          const all = made.map((c) => changes[c])
          expect([all, differences(net, asked, changes, table, made)]).toEqual([all, []])
        }
        counts.updated += table.counts.updated
        counts.fresh += table.counts.fresh
      }),
      { seed: SEED, numRuns: 60 },
    )
    expect(counts.updated).toBeGreaterThan(10 * counts.fresh)
  })

  test('agree with the sparse tableau of the changed circuit, an independent formulation solved by mathjs', () => {
    let compared = 0
    let updated = 0
    fc.assert(
      fc.property(circuits({ lossyTree: true }), analyses, fc.nat(), (one, frequency, seed) => {
        const net = netOf(one)
        const question = frequency === null ? DIRECT : alternating(frequency)
        const asked = net.nodes
          .slice(1)
          .map((_, k): Asked => ({ question, reading: { voltage: [k + 1, 0] } }))
        const random = seededRandom(seed)
        const nodes = net.nodes.map((id) => (id === 'earth' ? id : id.slice(id.indexOf('/') + 1)))
        const before = branchesOf(one, frequency)
        // resistors of the tree get 47 Ω more, parts beside it are lifted, two nodes are joined by 120 Ω
        const more = one.parts.filter(
          ({ kind, name }) => kind === 'resistor' && name.startsWith('t') && random() < 0.3,
        )
        const off = one.parts.filter(
          ({ kind, name }) => kind !== 'induction-coil' && name.startsWith('x') && random() < 0.4,
        )
        const [p, q] = [0, 1].map(() => Math.floor(random() * nodes.length))
        const changes: Change[] = [
          ...more.map(({ name }): Change => ({ within: { branch: branch(net, name), ohms: 47 } })),
          ...off.map(({ name }): Change => ({ lifted: branch(net, name) })),
          { bridge: { from: p ?? 0, to: q ?? 0, ohms: 120 } },
        ]
        const named = (parts: readonly { readonly name: string }[], id: string) =>
          parts.some(({ name }) => id === `${one.name}/${name}`)
        const after = before.map((law, at): Branch => {
          if (named(off, law.id)) return { ...law, volts: NIL, amps: [[at, ONE]], source: NIL }
          if (!named(more, law.id)) return law
          return { ...law, amps: law.amps.map(([k, { re }]) => [k, { re: re - 47, im: 0 }] as const) }
        })
        const link: Branch = {
          id: 'link',
          from: nodes[p ?? 0] ?? '',
          to: nodes[q ?? 0] ?? '',
          volts: ONE,
          amps: [[after.length, { re: -120, im: 0 }]],
          source: NIL,
          isSource: false,
        }
        const out = new Float64Array(2 * asked.length)
        const table = new ManyVariants(net, asked, changes)
        table.read(
          changes.map((_, k) => k),
          out,
          new Uint8Array(asked.length),
        )
        updated += table.counts.updated
        const { voltages } = solveTableau(p === q ? after : [...after, link])
        const most = Math.max(...[...voltages.values()].map(({ re, im }) => Math.hypot(re, im)))
        net.nodes.slice(1).forEach((id, k) => {
          const expected = voltages.get(id.slice(id.indexOf('/') + 1))
          if (expected === undefined) throw new Error(`no voltage of ${id}`)
          const apart = Math.hypot((out[2 * k] ?? 0) - expected.re, (out[2 * k + 1] ?? 0) - expected.im)
          expect(apart).toBeLessThanOrEqual(
            1e-9 * Math.max(Math.hypot(expected.re, expected.im), 1e-6 * most),
          )
          compared += 1
        })
      }),
      { seed: SEED, numRuns: 40 },
    )
    expect(compared).toBeGreaterThan(200)
    expect(updated).toBeGreaterThan(35)
  })

  /** Every pair of changes of a small circuit beside fresh solves. */
  function all(parts: string, question: Question, changes: (net: Netlist) => readonly Change[]) {
    const net = circuit(parts)
    const some = changes(net)
    const asked: readonly Asked[] = [
      ...net.nodes.slice(1).map((_, k): Asked => ({ question, reading: { voltage: [k + 1, 0] } })),
      ...net.branches.map(({ index }): Asked => ({ question, reading: { current: index } })),
    ]
    const table = new ManyVariants(net, asked, some)
    const made = [[], ...some.flatMap((_, c) => [[c], ...some.slice(c + 1).map((__, d) => [c, c + 1 + d])])]
    for (const one of made) expect([one, differences(net, asked, some, table, one)]).toEqual([one, []])
    return table.counts
  }

  const LOOP = `
    e: {kind: voltage-source, from: s, to: earth, direct: 10 V, alternating: 1 V}
    l: {kind: strap, from: s, to: p, resistance: 0 Ω}
    r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
    m: {kind: resistor, from: q, to: earth, resistance: 3 kΩ}
  `
  const moderate = (net: Netlist): readonly Change[] => [
    { within: { branch: branch(net, 'r'), ohms: 50 } },
    { lifted: branch(net, 'm') },
    { within: { branch: branch(net, 'm'), ohms: 70 } },
    { within: { branch: branch(net, 'r'), ohms: 0 } },
    // a part has one set of values: the first that it is given
    { instead: { part: 2, spec: net.parts[2]?.spec as never } },
    {
      instead: {
        part: 2,
        spec: { ...net.parts[2]?.spec, resistance: { value: 400, unit: 'Ω', text: '' } } as never,
      },
    },
    { bridge: { from: node(net, 'q'), to: node(net, 'q'), ohms: 5 } },
    { bridge: { from: node(net, 'q'), to: 0, ohms: Number.POSITIVE_INFINITY } },
  ]

  test('of loops of ideal links, or with a voltage in series with one, are fresh', () => {
    const loops = all(`${LOOP}\n k: {kind: strap, from: p, to: s, resistance: 0 Ω}`, DIRECT, moderate)
    expect(loops.updated).toBe(0)
    const net = circuit(LOOP)
    const series = [{ branch: branch(net, 'l'), re: 2 }]
    expect(all(LOOP, { ...DIRECT, series }, moderate).updated).toBe(0)
    expect(all(LOOP, { ...DIRECT, series: [{ branch: branch(net, 'r'), re: 2 }] }, moderate).fresh).toBe(1)
  })

  test('of a network that contradicts itself are refused, unless a change mends it', () => {
    const shorted = `${LOOP}\n k: {kind: strap, from: s, to: earth, resistance: 0 Ω}`
    const counts = all(shorted, DIRECT, (net) => [...moderate(net), { lifted: branch(net, 'k') }])
    expect(counts.updated).toBe(0)
    expect(counts.refused).toBeGreaterThan(0)
    const driven = `i: {kind: current-source, from: earth, to: x, direct: 1 mA}\n c: {kind: resistor, from: x, to: y, resistance: 5 Ω}\n${LOOP}`
    const joined = all(driven, DIRECT, (net) => [{ bridge: { from: node(net, 'y'), to: 0, ohms: 3 } }])
    expect(joined.updated).toBe(0)
  })

  const BENT = `
    e: {kind: voltage-source, from: s, to: earth, direct: 48 V, alternating: 1 V}
    r: {kind: resistor, from: s, to: p, resistance: 800 Ω}
    t: {kind: transmitter, from: p, to: q, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
    d: {kind: diode, from: q, to: earth, drop: 0.7 V at 10 mA}
    v: {kind: varistor, from: p, to: q, voltage at 1 A: 30 V, exponent: 4}
    c: {kind: capacitor, from: p, to: earth, capacitance: 1 µF}
  `
  const bending = (net: Netlist): readonly Change[] => {
    const part = net.parts.findIndex(({ name }) => name === 't')
    const spec = { ...net.parts[part]?.spec, 'falls with exponent': 0.3 } as never
    return [
      { within: { branch: branch(net, 't'), ohms: 50 } },
      { within: { branch: branch(net, 't'), ohms: 20 } },
      { lifted: branch(net, 't') },
      { lifted: branch(net, 'd') },
      { lifted: branch(net, 'v') },
      { instead: { part, spec } },
      { instead: { part, spec } },
      { within: { branch: branch(net, 'r'), ohms: 1e5 } },
      { bridge: { from: node(net, 'q'), to: 0, ohms: 0.1 } },
    ]
  }

  test.each<Question>([
    DIRECT,
    { ...DIRECT, probes: [{ into: 2, outOf: 3, re: 1e-3 }] },
    { ...DIRECT, small: 'fed', sources: 'none', probes: [{ into: 2, outOf: 3, re: 1 }] },
    { ...DIRECT, small: true, sources: 'none', probes: [{ into: 2, outOf: 3, re: 1 }] },
    alternating(1000),
    { ...alternating(300), small: 'fed' },
  ])('of parts whose law bends find the point of each: %j', (question) => {
    const { updated, fresh } = all(BENT, question, bending)
    // values given to one part twice are the affair of a fresh solve
    expect(fresh).toBeLessThanOrEqual(2)
    expect(updated).toBeGreaterThan(40)
  })
})
