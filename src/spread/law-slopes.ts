/** How laws change with the values behind them, about one solved point: the right sides of every sensitivity. */
import type { Netlist } from '../netlist/netlist.ts'
import type { LawTable } from '../solver/laws.ts'
import type { Refit } from './world.ts'

/**
 * Step of the central differences of laws, relative. Of a law that is linear in its value the difference is exact, of
 * one over its value right to the square of the step; it is the law that is stepped, never the solution.
 */
export const STEP = 1e-5

/** The specs of the parts that one value moves, a step down and a step up. */
export interface Moved {
  readonly down: readonly Refit[]
  readonly up: readonly Refit[]
}

/** What every branch carries: voltages across and currents through, interleaved re, im. */
export interface Carried {
  readonly falls: Float64Array
  readonly currents: Float64Array
}

/** What one branch's law changes by: the left side of its row, or its own current where it is an admittance. */
export interface LawSlope {
  readonly branch: number
  readonly re: number
  readonly im: number
}

/**
 * For each moved value: the derivative of every law, by the logarithm of the value, at what the branches carry. Values
 * of different parts are stepped together, since no law knows another part.
 * @param stated the laws with other specs for some parts, about the same point
 * @source Director and Rohrer, The generalized adjoint network and network sensitivities, IEEE Trans. Circuit Theory
 * 16 (1969), from memory
 */
export function lawSlopes(
  net: Netlist,
  stated: (refits: readonly Refit[]) => LawTable,
  carried: Carried,
  moved: readonly Moved[],
): readonly (readonly LawSlope[])[] {
  const slopes: LawSlope[][] = moved.map(() => [])
  for (const round of roundsOf(moved)) {
    const [down, up] = (['down', 'up'] as const).map((side) =>
      stated(round.flatMap((k) => moved[k]?.[side] ?? [])),
    )
    if (down === undefined || up === undefined) continue
    for (const k of round)
      slopes[k]?.push(...differences(down, up, branchesOf(net, moved[k]), carried, 2 * STEP))
  }
  return slopes
}

/** Values in rounds, each of which moves every part at most once. */
function roundsOf(moved: readonly Moved[]): readonly (readonly number[])[] {
  const rounds: { readonly values: number[]; readonly parts: Set<number> }[] = []
  moved.forEach(({ up, down }, k) => {
    const parts = [...up, ...down].map(({ part }) => part)
    const free = rounds.find((round) => parts.every((part) => !round.parts.has(part)))
    const round = free ?? { values: [], parts: new Set<number>() }
    if (free === undefined) rounds.push(round)
    round.values.push(k)
    for (const part of parts) round.parts.add(part)
  })
  return rounds.map(({ values }) => values)
}

function branchesOf(net: Netlist, moved: Moved | undefined): readonly number[] {
  const parts = new Set((moved?.up ?? []).map(({ part }) => part))
  return [...parts].flatMap((index) => {
    const part = net.parts[index]
    return part === undefined ? [] : Array.from({ length: part.count }, (_, k) => part.first + k)
  })
}

/** (up − down) / width of these branches' laws, at what they carry. */
export function differences(
  down: LawTable,
  up: LawTable,
  branches: readonly number[],
  { falls, currents }: Carried,
  width: number,
): readonly LawSlope[] {
  return branches.flatMap((branch): LawSlope[] => {
    let re = 0
    let im = 0
    const add = (factor: number, dRe: number, dIm: number, of: Float64Array, at: number): void => {
      const [xRe = 0, xIm = 0] = [of[2 * at], of[2 * at + 1]]
      re += factor * (dRe * xRe - dIm * xIm)
      im += factor * (dRe * xIm + dIm * xRe)
    }
    const apart = (values: 'slope' | 'offset', part: 0 | 1): number =>
      (up[values][2 * branch + part] ?? 0) - (down[values][2 * branch + part] ?? 0)
    const isEquation = up.equations[branch] === 1
    if (isEquation) {
      add(1, (up.a[branch] ?? 0) - (down.a[branch] ?? 0), 0, falls, branch)
      add(-1, apart('slope', 0), apart('slope', 1), currents, branch)
      up.mutuals.forEach((one, k) => {
        const before = down.mutuals[k]
        if (one.branch !== branch || before === undefined) return
        add(-1, one.re - before.re, one.im - before.im, currents, one.other)
      })
    } else add(1, apart('slope', 0), apart('slope', 1), falls, branch)
    const sign = isEquation ? -1 : 1
    re += sign * apart('offset', 0)
    im += sign * apart('offset', 1)
    return re === 0 && im === 0 ? [] : [{ branch, re: re / width, im: im / width }]
  })
}
