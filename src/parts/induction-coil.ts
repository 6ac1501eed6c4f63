import * as z from 'zod/mini'
import { leastEigenvalue } from '../algebra/definite.ts'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS } from './ends.ts'
import { becomes, opens, times } from './fault-modes.ts'
import { NAME, plain, quantity } from './fields.ts'
import type { FaultMode, Outline, PartKind, PartSpec, Stroke } from './kind.ts'
import { line, outlineOf, type Spot, turns } from './symbols.ts'

/** One winding; the first-named end is its start, couplings are positive between starts. */
export interface WindingSpec {
  readonly from: string
  readonly to: string
  readonly resistance: Quantity
  readonly inductance: Quantity
}

/** An induction coil: v_k = (R_k + jωL_k)·i_k + Σ jωM_kl·i_l with M_kl = k_kl·√(L_k L_l). */
export interface InductionCoilSpec extends PartSpec {
  readonly kind: 'induction-coil'
  readonly windings: Readonly<Record<string, WindingSpec>>
  readonly coupling: number | Readonly<Record<string, number>>
}

/** Least eigenvalue that the normalised coupling matrix may have: k ≤ 0.9999 for a pair. */
export const LEAST_COUPLING_EIGENVALUE = 1e-4

/** The coupling factor of two windings; 0 where the sheet's map leaves a pair out. */
export function couplingOf(spec: InductionCoilSpec, first: string, second: string): number {
  if (typeof spec.coupling === 'number') return spec.coupling
  return spec.coupling[`${first}-${second}`] ?? spec.coupling[`${second}-${first}`] ?? 0
}

function couplingMatrix(spec: InductionCoilSpec, names: readonly string[]): Float64Array {
  const n = names.length
  const matrix = new Float64Array(n * n)
  names.forEach((row, i) => {
    names.forEach((column, j) => {
      matrix[i * n + j] = i === j ? 1 : couplingOf(spec, row, column)
    })
  })
  return matrix
}

export const inductionCoil: PartKind<InductionCoilSpec> = {
  kind: 'induction-coil',
  says: 'Two or more windings on one core, with their couplings.',
  role: 'winding',
  schema: z.strictObject({
    kind: z.literal('induction-coil'),
    windings: describe(
      z.record(
        z.string().check(z.regex(NAME)),
        z.strictObject({
          ...ENDS,
          resistance: describe(quantity('resistance'), 'winding resistance'),
          inductance: describe(quantity('inductance', { above: 0 }), 'inductance of the winding alone'),
        }),
      ),
      'the windings by name; the first-named end of each is its start',
    ),
    coupling: describe(
      z.union([plain(-1, 1), z.record(z.string(), plain(-1, 1))]),
      'coupling factor of every pair, or a map of pairs `a-b`; positive between starts',
    ),
  }),
  branches: (spec) =>
    Object.entries(spec.windings).map(([suffix, w]) => ({
      suffix,
      from: w.from,
      to: w.to,
      form: 'equation',
    })),
  law(spec, at, _gate, sink) {
    const windings = Object.entries(spec.windings)
    const w = at.analysis === 'direct' ? 0 : at.omega
    windings.forEach(([name, one], k) => {
      sink.equation(k, 1, one.resistance.value, w * one.inductance.value)
      windings.forEach(([other, two], l) => {
        if (k === l) return
        const m = couplingOf(spec, name, other) * Math.sqrt(one.inductance.value * two.inductance.value)
        if (m !== 0) sink.mutual(k, l, 0, w * m)
      })
    })
  },
  check(spec) {
    const names = Object.keys(spec.windings)
    if (names.length < 2) {
      return [
        {
          code: 'key-missing',
          found: `${names.length === 0 ? 'no winding' : 'one winding'}`,
          expected: 'at least two windings',
          mend: 'use `kind: inductor` for a single coil',
          at: ['windings'],
        },
      ]
    }
    if (names.length > 8) {
      return [
        {
          code: 'quantity-out-of-range',
          found: `${names.length} windings`,
          expected: 'at most 8 windings',
          at: ['windings'],
        },
      ]
    }
    const pairs = typeof spec.coupling === 'number' ? [] : Object.keys(spec.coupling)
    const known = new Set(names.flatMap((a) => names.filter((b) => b !== a).map((b) => `${a}-${b}`)))
    const strange = pairs.filter((pair) => !known.has(pair))
    if (strange.length > 0) {
      return strange.map((pair) => ({
        code: 'name-unknown' as const,
        found: `the pair ${pair}`,
        expected: `two of the windings ${names.join(', ')}, joined by a hyphen`,
        at: ['coupling', pair],
      }))
    }
    const least = leastEigenvalue(couplingMatrix(spec, names), names.length)
    // 0.9999 itself may stand: what its binary fraction lacks is not held against it
    if (least >= LEAST_COUPLING_EIGENVALUE * (1 - 1e-9)) return []
    return [
      {
        code: 'coupling-not-definite',
        found: `couplings whose matrix has the least eigenvalue ${least.toPrecision(3)}`,
        expected: `at least ${LEAST_COUPLING_EIGENVALUE} (for a pair: a coupling of at most 0.9999)`,
        mend: 'measure the couplings again; a real coil always leaks a little',
        at: ['coupling'],
      },
    ]
  },
  elements(spec, _at, _gate, sink) {
    const windings = Object.entries(spec.windings)
    windings.forEach(([name, one], k) => {
      sink.series(k, one.resistance.value, one.inductance.value)
      windings.forEach(([other, two], l) => {
        const coupling = k === l ? 0 : couplingOf(spec, name, other)
        if (coupling !== 0) sink.coupled(k, l, coupling, one.inductance.value, two.inductance.value)
      })
    })
  },
  modes: coilModes,
  outline: coilOutline,
}

/**
 * Each winding may open; shorted turns in one take away from the inductance of all, which share the iron. From memory.
 * One may be joined the wrong way round; of two windings it is the same which.
 */
function coilModes(spec: InductionCoilSpec): readonly FaultMode[] {
  const names = Object.keys(spec.windings)
  return names.flatMap((name, branch) => {
    const windings = Object.entries(spec.windings).map(([other, one]) => [
      other,
      {
        ...one,
        inductance: times(one.inductance, 0.3),
        resistance: other === name ? times(one.resistance, 0.9) : one.resistance,
      },
    ])
    return [
      opens({
        of: { branch, name, called: `winding ${name}` },
        weight: 4,
        says: 'is open',
        sign: 'green corrosion at a lead-out wire; the meter reads nothing',
      }),
      becomes('shorted-turns', { ...spec, windings: Object.fromEntries(windings) } as PartSpec, {
        of: { branch, name, called: `winding ${name}` },
        weight: 2,
        family: 'shorted-turns',
        says: 'has shorted turns',
        sign: 'faint and thin speech; the direct resistance reads a little low',
      }),
      ...(names.length === 2 && branch > 0 ? [] : [turnedWinding(spec, name, branch)]),
    ]
  })
}

/** A winding with its ends exchanged: every coupling to it changes its sign, nothing else. */
function turnedWinding(spec: InductionCoilSpec, name: string, branch: number): FaultMode {
  const names = Object.keys(spec.windings)
  const pairs = names.flatMap((first, k) =>
    names.slice(k + 1).map((second): [string, number] => {
      const sign = first === name || second === name ? -1 : 1
      return [`${first}-${second}`, sign * couplingOf(spec, first, second)]
    }),
  )
  return becomes('turned', { ...spec, coupling: Object.fromEntries(pairs) } as PartSpec, {
    of: { branch, name, called: `winding ${name}` },
    weight: 1,
    family: 'turned',
    says: 'is joined the wrong way round',
    sign: 'loud side tone or faint speech, though every resistance is right; joints that were opened before',
    mend: `exchange the two ends of winding ${name}`,
  })
}

/** The windings lie one below the other, each with a dot at its start. */
function coilOutline(spec: InductionCoilSpec): Outline {
  const windings = Object.values(spec.windings)
  const ends = windings.flatMap(({ from, to }, k): (readonly [string, Spot])[] => [
    [from, [0, 2 * k + 1]],
    [to, [4, 2 * k + 1]],
  ])
  const strokes = windings.flatMap((_, k): Stroke[] => {
    const y = 2 * k + 1
    return [line([0, y], [1, y]), ...turns(1, y), line([3, y], [4, y]), { dot: [0.8, y - 0.4] }]
  })
  return outlineOf(4, 2 * windings.length, ends, strokes)
}
