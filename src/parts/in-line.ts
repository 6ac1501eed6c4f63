/** What apparatus between a pair that comes in and a pair that goes on have in common. */
import type { WireEnds } from './cable-run.ts'
import { opens, shorts } from './fault-modes.ts'
import type { BranchPlan, FaultMode, Outline, PartSpec, Stroke } from './kind.ts'
import { line, outlineOf, shape } from './symbols.ts'

/** Apparatus in the pair: each wire comes in at `from` and goes on at `to`. */
export interface InLineSpec extends PartSpec {
  readonly wires: { readonly a: WireEnds; readonly b: WireEnds }
}

/** Branches `a` and `b` in the wires and one across the pair that goes on. */
export function inLineBranches({ wires }: InLineSpec, across: string): readonly BranchPlan[] {
  return [
    { suffix: 'a', ...wires.a, form: 'equation' },
    { suffix: 'b', ...wires.b, form: 'equation' },
    { suffix: across, from: wires.a.to, to: wires.b.to, form: 'admittance' },
  ]
}

/** Either wire broken inside, or the pair shorted. */
export function inLineModes(): readonly FaultMode[] {
  const sign = 'nothing passes; a dry joint or a bent contact at the plug'
  return [
    opens({ of: { branch: 0, name: 'a' }, weight: 10, sign, says: 'has a broken wire' }),
    opens({ of: { branch: 1, name: 'b' }, weight: 10, sign, says: 'has a broken wire' }),
    shorts({
      of: { branch: 2, name: 'pair' },
      weight: 3,
      says: 'shorts the pair',
      sign: 'the line is engaged with everything behind it on-hook',
    }),
  ]
}

/** A box with the pair going through it. */
export function inLineOutline({ wires }: InLineSpec, inside: readonly Stroke[]): Outline {
  return outlineOf(
    6,
    4,
    [
      [wires.a.from, [0, 1]],
      [wires.b.from, [0, 3]],
      [wires.a.to, [6, 1]],
      [wires.b.to, [6, 3]],
    ],
    [
      shape([1, 0], [5, 0], [5, 4], [1, 4]),
      ...[1, 3].flatMap((y) => [line([0, y], [1, y]), line([5, y], [6, y])]),
      ...inside,
    ],
  )
}
