/** Cables in a network: the branches, laws, faults and symbol of two wires or three. */
import { type CableConstants, equivalentPi } from './equivalent-pi.ts'
import { leaks, opens, resists, shorts } from './fault-modes.ts'
import type { BranchPlan, FaultMode, LawPoint, LawSink, Outline, PartLaw, PartSpec } from './kind.ts'
import { line, outlineOf, type Spot } from './symbols.ts'

/** One wire's two ends. */
export interface WireEnds {
  readonly from: string
  readonly to: string
}

/** A run of cable as a line or a socket brings it. */
export interface CableRunSpec extends PartSpec, CableConstants {
  readonly kind: 'cable-run'
  /** two or three wires by name: `a`, `b`, `ringing` */
  readonly wires: Readonly<Record<string, WireEnds>>
}

/** Every two names, in their order. */
function pairsOf(names: readonly string[]): readonly (readonly [string, string])[] {
  return names.flatMap((one, k) => names.slice(k + 1).map((two): [string, string] => [one, two]))
}

/** Branches: each wire under its name, then between each two wires `near-a-b` at the first ends, `far-a-b`. */
export function cableBranches(wires: Readonly<Record<string, WireEnds>>): readonly BranchPlan[] {
  const end = (name: string, side: 'from' | 'to'): string => wires[name]?.[side] ?? ''
  const across = (word: string, side: 'from' | 'to'): BranchPlan[] =>
    pairsOf(Object.keys(wires)).map(([one, two]) => ({
      suffix: `${word}-${one}-${two}`,
      from: end(one, side),
      to: end(two, side),
      form: 'admittance',
    }))
  return [
    ...Object.entries(wires).map(
      ([suffix, { from, to }]): BranchPlan => ({ suffix, from, to, form: 'equation' }),
    ),
    ...across('near', 'from'),
    ...across('far', 'to'),
  ]
}

/** States the laws of a cable of n wires, in the order of `cableBranches`. */
export function cableLaw(constants: CableConstants, wires: number, at: LawPoint, sink: LawSink): void {
  const { series, shunt } = equivalentPi(constants, wires, at.analysis === 'direct' ? 0 : at.omega)
  for (let k = 0; k < wires; k += 1) {
    if (series === undefined) sink.equation(k, 0, 1, 0)
    else sink.equation(k, 1, series.re, series.im)
  }
  const across = wires * (wires - 1) // every two wires, at both ends
  for (let k = 0; k < across; k += 1) sink.admittance(wires + k, shunt.re, shunt.im)
}

/** Damp between two wires, Ω. */
const DAMP = 50_000
/** A joint that has gone green, Ω. */
const BAD_JOINT = 500

/** How a cable goes wrong: a broken wire, a bad joint, two wires that touch, damp between two wires. */
export function cableModes(wires: readonly string[]): readonly FaultMode[] {
  const inWires = wires.flatMap((name, branch) => {
    const of = { branch, name, called: `wire ${name}` }
    return [
      opens({
        of,
        weight: 4,
        says: 'is broken',
        sign: 'a wire broken at its clamp, or cut in the wall',
      }),
      resists('bad-joint', BAD_JOINT, {
        of,
        weight: 6,
        says: 'has a bad joint',
        sign: 'a green or twisted joint; crackles when it is moved',
      }),
    ]
  })
  const pairs = pairsOf(wires)
  const between = pairs.flatMap(([one, two], k) => {
    // at the far end: there a person works at the cable
    const branch = wires.length + pairs.length + k
    const of = { branch, name: `${one}-${two}`, called: `wires ${one} and ${two}` }
    return [
      shorts({ of, weight: 2, says: 'touch', sign: 'bared wires in a socket, a staple' }),
      leaks(DAMP, { of, weight: 8, says: 'have damp between them', sign: 'a damp wall or junction box' }),
    ]
  })
  return [...inWires, ...between]
}

/** The wires, and the loop about them by which IEC 60617 says that they run in one cable. */
export function cableOutline(wires: readonly WireEnds[]): Outline {
  const row = (k: number): number => 1 + 2 * k
  const height = row(wires.length - 1) + 1
  const ends = wires.flatMap(({ from, to }, k): [string, Spot][] => [
    [from, [0, row(k)]],
    [to, [6, row(k)]],
  ])
  return outlineOf(6, height, ends, [
    ...wires.map((_, k) => line([0, row(k)], [6, row(k)])),
    { arc: [3, 0.75, 0.5, 180, 360] },
    line([2.5, 0.75], [2.5, height - 0.75]),
    line([3.5, 0.75], [3.5, height - 0.75]),
    { arc: [3, height - 0.75, 0.5, 0, 180] },
  ])
}

/** A cable run that a line or a socket brings. */
export const cableRun: PartLaw<CableRunSpec> = {
  kind: 'cable-run',
  says: 'A length of cable, exactly: two wires, or three that lie alike.',
  branches: (spec) => cableBranches(spec.wires),
  law: (spec, at, _gate, sink) => cableLaw(spec, Object.keys(spec.wires).length, at, sink),
  modes: (spec) => cableModes(Object.keys(spec.wires)),
  outline: (spec) => cableOutline(Object.values(spec.wires)),
}
