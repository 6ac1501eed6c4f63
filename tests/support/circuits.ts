import * as fc from 'fast-check'
import type { Circuit, Coil, Part, Source, Winding } from './circuit.ts'
import { decimalQuantity, type Quantity } from './quantity-text.ts'

/** What a random circuit may hold. Without sources it is a passive network. */
export interface CircuitLimits {
  /** Ideal sources, at least one; default true. */
  readonly sources?: boolean
  /** Whether all nodes are joined by resistive parts only, no ideal or lossless part among them; default false. */
  readonly lossyTree?: boolean
}

type Ends = { readonly from: string; readonly to: string }
type Draft = { readonly pairs: number; readonly make: (name: string, ends: (at: number) => Ends) => Part }

/**
 * Connected networks of 4 to 20 nodes, `earth` among them. A spanning tree of parts that conduct direct current
 * joins all nodes; further parts stand anywhere. Ideal voltage sources, lossless windings and straps of 0 Ω stand
 * in the tree only, current sources beside it only, so that every circuit has one solution, direct and alternating.
 */
export function circuits(limits: CircuitLimits = {}): fc.Arbitrary<Circuit> {
  const { sources = true, lossyTree = false } = limits
  const tree = fc.array(
    fc.record({ up: fc.nat(999), flip: fc.boolean(), draft: treePart(sources, lossyTree) }),
    {
      minLength: 3,
      maxLength: 19,
      size: 'max',
    },
  )
  const places = fc.array(fc.tuple(fc.nat(999), fc.nat(999)), { minLength: 3, maxLength: 3 })
  const extras = fc.array(fc.record({ places, draft: extraPart(sources) }), {
    minLength: 1,
    maxLength: 14,
    size: 'max',
  })
  const drive = sources
    ? fc.option(fc.record({ places, draft: source('current-source') }))
    : fc.constant(null)
  return fc.record({ tree, extras, drive, first: source('voltage-source') }).map((drawn) => {
    const parts: Part[] = []
    const nodes = ['earth', ...drawn.tree.map((_, at) => `n${at + 1}`)]
    const node = (at: number): string => nodes[at % nodes.length] ?? 'earth'
    drawn.tree.forEach(({ up, flip, draft }, at) => {
      const [from, to] = flip ? [node(up % (at + 1)), node(at + 1)] : [node(at + 1), node(up % (at + 1))]
      const chosen = sources && at === 0 && drawn.drive === null ? drawn.first : draft
      parts.push(chosen.make(`t${at + 1}`, () => ({ from, to })))
    })
    for (const extra of drawn.drive ? [drawn.drive, ...drawn.extras] : drawn.extras) {
      const ends = (at: number): Ends => {
        const [a, step] = extra.places[at] ?? [0, 0]
        return { from: node(a), to: node(a + 1 + (step % (nodes.length - 1))) }
      }
      parts.push(extra.draft.make(`x${parts.length - drawn.tree.length + 1}`, ends))
    }
    return { name: 'net', parts }
  })
}

/** A frequency in Hz, 10 Hz to 9.99 kHz, of three digits. */
export const frequencies: fc.Arbitrary<number> = decimal('Hz', 1, 3).map((quantity) => quantity.value)

/** The analysis of a law: direct current (null) or a frequency in Hz. */
export const analyses: fc.Arbitrary<number | null> = fc.option(frequencies, { freq: 3 })

/** Three-digit resistances from 10 mΩ to 9.99 MΩ. */
export const resistances: fc.Arbitrary<Quantity> = decimal('Ω', -2, 6)
/** Three-digit capacitances from 100 pF to 99.9 µF. */
export const capacitances: fc.Arbitrary<Quantity> = decimal('F', -10, -5)
/** Three-digit inductances from 10 µH to 9.99 H. */
export const inductances: fc.Arbitrary<Quantity> = decimal('H', -5, 0)

const windingResistances = decimal('Ω', -1, 3)
const couplings = fc.integer({ min: 5, max: 98 }).map((percent) => percent / 100)

function decimal(unit: string, lowest: number, highest: number): fc.Arbitrary<Quantity> {
  return fc
    .record({ digits: fc.integer({ min: 100, max: 999 }), decade: fc.integer({ min: lowest, max: highest }) })
    .map(({ digits, decade }) => decimalQuantity(digits, decade - 2, unit))
}

function treePart(sources: boolean, lossyTree: boolean): fc.Arbitrary<Draft> {
  const choices = [{ weight: 8, arbitrary: resistor }]
  if (!lossyTree) choices.push({ weight: 2, arbitrary: strap }, { weight: 2, arbitrary: treeInductor })
  if (sources && !lossyTree) choices.push({ weight: 1, arbitrary: source('voltage-source') })
  return fc.oneof(...choices)
}

function extraPart(sources: boolean): fc.Arbitrary<Draft> {
  const choices = [
    { weight: 4, arbitrary: resistor },
    { weight: 4, arbitrary: capacitor },
    { weight: 2, arbitrary: lossyInductor },
    { weight: 2, arbitrary: coil },
    { weight: 1, arbitrary: plainStrap },
  ]
  if (sources) choices.push({ weight: 1, arbitrary: source('current-source') })
  return fc.oneof(...choices)
}

const resistor = resistances.map(
  (resistance): Draft => ({
    pairs: 1,
    make: (name, ends) => ({ kind: 'resistor', name, ...ends(0), resistance }),
  }),
)

const capacitor = fc.record({ capacitance: capacitances, leakage: fc.option(decimal('Ω', 5, 7)) }).map(
  ({ capacitance, leakage }): Draft => ({
    pairs: 1,
    make: (name, ends) => ({
      kind: 'capacitor',
      name,
      ...ends(0),
      capacitance,
      ...(leakage ? { leakage } : {}),
    }),
  }),
)

const lossyInductor = inductorOf(windingResistances)
const treeInductor = inductorOf(fc.option(windingResistances))
const plainStrap = strapOf(fc.constant(null))
const strap = strapOf(fc.constantFrom(null, decimalQuantity(0, 0, 'Ω')))

function inductorOf(resistance: fc.Arbitrary<Quantity | null>): fc.Arbitrary<Draft> {
  return fc.record({ inductance: inductances, resistance }).map(
    (drawn): Draft => ({
      pairs: 1,
      make: (name, ends) => ({
        kind: 'inductor',
        name,
        ...ends(0),
        inductance: drawn.inductance,
        ...(drawn.resistance ? { resistance: drawn.resistance } : {}),
      }),
    }),
  )
}

function strapOf(resistance: fc.Arbitrary<Quantity | null>): fc.Arbitrary<Draft> {
  return resistance.map(
    (drawn): Draft => ({
      pairs: 1,
      make: (name, ends) => ({ kind: 'strap', name, ...ends(0), ...(drawn ? { resistance: drawn } : {}) }),
    }),
  )
}

function source(kind: Source['kind']): fc.Arbitrary<Draft> {
  const unit = kind === 'voltage-source' ? 'V' : 'A'
  const size = kind === 'voltage-source' ? decimal(unit, 0, 2) : decimal(unit, -3, 0)
  const angle = fc.integer({ min: -12, max: 12 }).map((step) => 15 * step)
  return fc.record({ direct: size, size, angle }).map(
    (drawn): Draft => ({
      pairs: 1,
      make: (name, ends) => {
        return {
          kind,
          name,
          ...ends(0),
          direct: drawn.direct,
          alternating: { size: drawn.size, degrees: drawn.angle },
        }
      },
    }),
  )
}

/** Two windings with any coupling, or three whose couplings leave the matrix diagonally dominant. */
const coil = fc
  .record({
    windings: fc.array(fc.record({ resistance: windingResistances, inductance: inductances }), {
      minLength: 2,
      maxLength: 3,
    }),
    coupling: couplings,
    pairwise: fc.boolean(),
  })
  .map(
    ({ windings, coupling, pairwise }): Draft => ({
      pairs: windings.length,
      make: (name, ends): Coil => {
        const named = windings.map(
          (winding, at): Winding => ({ name: `w${at + 1}`, ...ends(at), ...winding }),
        )
        const k = windings.length === 2 ? coupling : coupling / 2
        if (!pairwise) return { kind: 'induction-coil', name, windings: named, coupling: k }
        const thirds = { 'w1-w2': k, 'w1-w3': k / 2, 'w2-w3': k / 4 }
        return {
          kind: 'induction-coil',
          name,
          windings: named,
          coupling: windings.length === 2 ? { 'w1-w2': k } : thirds,
        }
      },
    }),
  )
