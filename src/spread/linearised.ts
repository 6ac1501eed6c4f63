/**
 * One question about a world, solved once and linearised about its solution: how any reading of it moves with every
 * loose value, from one solve with the transposed matrix for each reading.
 *
 * For A x = b and a reading r = eᵀx: Aᵀλ = e, then dr/dp = −λᵀ(∂A/∂p x − ∂b/∂p). Where laws bend, A is their tangent at
 * the solution, so that the same formula holds for direct current. Alternating current rests on a direct point which
 * moves with the values as well; its share is the same once more, λ of the alternating current being the source of a
 * transposed solve of the direct one.
 * @source Director and Rohrer, The generalized adjoint network and network sensitivities, IEEE Trans. Circuit Theory
 * 16 (1969), from memory
 */
import type { Tap } from '../figures/figure.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { Point } from '../solver/laws.ts'
import { branchesOf } from '../solver/linear.ts'
import type { Question } from '../solver/question.ts'
import { type KeptQuestion, keepQuestion } from './kept-question.ts'
import { type Carried, differences, type LawSlope, lawSlopes, type Moved, STEP } from './law-slopes.ts'

/** A linear reading: weights of unknowns, and of currents of branches that are no unknowns. */
interface Functional {
  readonly weights: Float64Array
  readonly own: readonly LawSlope[]
}

/** How laws change with the direct voltage or current of one branch. */
interface PointSlope {
  readonly branch: number
  readonly by: keyof Point
  readonly slopes: readonly LawSlope[]
}

/** A solved question with the slopes of its laws. */
export class Linearised {
  readonly #net: Netlist
  readonly #kept: KeptQuestion
  readonly #carried: Carried
  readonly #slopes: readonly (readonly LawSlope[])[]
  readonly #width: 1 | 2
  /** The direct current that bent parts rest on. */
  readonly #direct: Linearised | undefined
  readonly #closing: ReadonlySet<number>
  #points: readonly PointSlope[] | undefined

  /**
   * Solves and linearises; undefined where a law hangs on the size of its own alternating voltage: such readings are
   * told by differences of whole solves.
   * @param moved what every loose value does to the specs of parts, one step down and up
   * @throws ProblemError as `solve`
   */
  static of(net: Netlist, question: Question, moved: readonly Moved[]): Linearised | undefined {
    const kept = keepQuestion(net, question)
    return kept && new Linearised(net, moved, kept)
  }

  private constructor(net: Netlist, moved: readonly Moved[], kept: KeptQuestion) {
    const { laws, topology, assembled, complex } = kept.kept
    this.#net = net
    this.#kept = kept
    this.#width = complex ? 2 : 1
    this.#closing = new Set(topology.closing)
    this.#carried = branchesOf(laws, { unknown: assembled.unknown, refined: kept.refined }, complex)
    this.#slopes = lawSlopes(net, (refits) => kept.stated(refits), this.#carried, moved)
    this.#direct = kept.direct && Linearised.of(net, kept.direct, moved)
  }

  /**
   * How a reading moves with the logarithm of each value: re, im by value. Undefined where the reading is not fixed,
   * or where it is a current that ideal links share out among themselves.
   */
  slopesOf(tap: Tap): Float64Array | undefined {
    const reading = this.#functional(tap)
    return reading && this.#along(reading)
  }

  /** The reading as weights of unknowns. */
  #functional(tap: Tap): Functional | undefined {
    const { topology } = this.#kept.kept
    if ('voltage' in tap) {
      const [p, q] = tap.voltage
      if (topology.island[p] !== topology.island[q]) return undefined
      const weights = this.#nothing()
      this.#addNodes(weights, p, q, 1, 0)
      return { weights, own: [] }
    }
    // what closes a loop of ideal links has a share of the current that other rules decide
    if (this.#closing.size > 0 && this.#kept.laws.ideal(tap.current)) return undefined
    const weights = this.#nothing()
    return { weights, own: this.#addCurrent(weights, tap.current, 1, 0) }
  }

  #nothing(): Float64Array {
    return new Float64Array(this.#kept.kept.assembled.order * this.#width)
  }

  #add(weights: Float64Array, at: number, re: number, im: number): void {
    const k = at * this.#width
    weights[k] = (weights[k] ?? 0) + re
    if (this.#width === 2) weights[k + 1] = (weights[k + 1] ?? 0) + im
  }

  #addNodes(weights: Float64Array, p: number, q: number, re: number, im: number): void {
    if (p > 0) this.#add(weights, p - 1, re, im)
    if (q > 0) this.#add(weights, q - 1, -re, -im)
  }

  /** Weighs a branch's current; what of it is no unknown comes back. */
  #addCurrent(weights: Float64Array, branch: number, re: number, im: number): readonly LawSlope[] {
    const { laws, assembled } = this.#kept.kept
    const unknown = assembled.unknown[branch] ?? -1
    if (unknown >= 0) {
      this.#add(weights, unknown, re, im)
      return []
    }
    const [yRe = 0, yIm = 0] = laws.slope.subarray(2 * branch, 2 * branch + 2)
    const [p = 0, q = 0] = [laws.from[branch], laws.to[branch]]
    this.#addNodes(weights, p, q, yRe * re - yIm * im, yRe * im + yIm * re)
    return [{ branch, re, im }]
  }

  /** The slopes of any linear reading. */
  #along({ weights, own }: Functional): Float64Array {
    const lambda = weights
    this.#kept.kept.assembled.system.solveTransposed(lambda, 1)
    const out = new Float64Array(2 * this.#slopes.length)
    this.#slopes.forEach((slopes, value) => {
      const [re, im] = this.#felt(lambda, slopes, own)
      out[2 * value] = re
      out[2 * value + 1] = im
    })
    if (this.#direct !== undefined) this.#addPoint(this.#direct, lambda, own, out)
    return out
  }

  /** −λᵀ times changed laws, and what they change in the reading by themselves. */
  #felt(
    lambda: Float64Array,
    slopes: readonly LawSlope[],
    own: readonly LawSlope[],
  ): readonly [re: number, im: number] {
    let [re, im] = [0, 0]
    for (const { branch, re: gRe, im: gIm } of slopes) {
      if (this.#closing.has(branch)) continue
      const [lRe, lIm] = this.#weightOf(lambda, branch)
      re -= lRe * gRe - lIm * gIm
      im -= lRe * gIm + lIm * gRe
      for (const one of own) {
        if (one.branch !== branch) continue
        re += one.re * gRe - one.im * gIm
        im += one.re * gIm + one.im * gRe
      }
    }
    return [re, im]
  }

  /** λ of a branch: of its row, or of the two nodes between which its current flows. */
  #weightOf(lambda: Float64Array, branch: number): readonly [re: number, im: number] {
    const { laws, assembled } = this.#kept.kept
    const unknown = assembled.unknown[branch] ?? -1
    const at = (row: number, part: 0 | 1): number =>
      row < 0 || (part === 1 && this.#width === 1) ? 0 : (lambda[row * this.#width + part] ?? 0)
    if (unknown >= 0) return [at(unknown, 0), at(unknown, 1)]
    const [p, q] = [(laws.from[branch] ?? 0) - 1, (laws.to[branch] ?? 0) - 1]
    return [at(p, 0) - at(q, 0), at(p, 1) - at(q, 1)]
  }

  /** What the reading gets from the direct point, which moves too. */
  #addPoint(direct: Linearised, lambda: Float64Array, own: readonly LawSlope[], out: Float64Array): void {
    const sides = [direct.#nothing(), direct.#nothing()] as const
    const owns: [LawSlope[], LawSlope[]] = [[], []]
    for (const { branch, by, slopes } of this.#pointSlopes()) {
      const felt = this.#felt(lambda, slopes, own)
      felt.forEach((weight, side) => {
        if (weight !== 0) direct.#weigh(sides[side] ?? lambda, owns[side] ?? [], branch, by, weight)
      })
    }
    sides.forEach((weights, side) => {
      if (weights.every((weight) => weight === 0) && owns[side]?.length === 0) return
      direct.#along({ weights, own: owns[side] ?? [] }).forEach((slope, k) => {
        if (k % 2 === 0) out[k + side] = (out[k + side] ?? 0) + slope
      })
    })
  }

  /** Adds the direct voltage or current of a branch to a reading of direct current. */
  #weigh(weights: Float64Array, owns: LawSlope[], branch: number, by: keyof Point, weight: number): void {
    const { laws, topology } = this.#kept.kept
    const [p = 0, q = 0] = [laws.from[branch], laws.to[branch]]
    if (by === 'current') owns.push(...this.#addCurrent(weights, branch, weight, 0))
    // between two islands the voltage is what it was
    else if (topology.island[p] === topology.island[q]) this.#addNodes(weights, p, q, weight, 0)
  }

  /** How the laws of bent parts change with the direct voltage and current of each of their branches. */
  #pointSlopes(): readonly PointSlope[] {
    const { point: direct } = this.#kept
    if (direct === undefined) return []
    if (this.#points !== undefined) return this.#points
    const points: PointSlope[] = []
    for (const branch of this.#kept.resting) {
      const part = this.#net.branches[branch]?.part
      const branches = Array.from({ length: part?.count ?? 0 }, (_, k) => (part?.first ?? 0) + k)
      for (const by of ['voltage', 'current'] as const) {
        const value = direct[by][branch] ?? 0
        const step = STEP * Math.abs(value)
        if (step === 0) continue
        const [down, up] = [-1, 1].map((side) =>
          this.#kept.stated([], movedPoint(direct, by, branch, value + side * step)),
        )
        if (down === undefined || up === undefined) continue
        points.push({ branch, by, slopes: differences(down, up, branches, this.#carried, 2 * step) })
      }
    }
    this.#points = points
    return points
  }
}

function movedPoint(direct: Point, by: keyof Point, branch: number, value: number): Point {
  const moved = direct[by].slice()
  moved[branch] = value
  return { ...direct, [by]: moved }
}
