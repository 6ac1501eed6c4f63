/** How figures move with every loose value: by the adjoint method where it follows them, else by differences. */
import type { Figure, FigurePlan, Tap } from '../figures/figure.ts'
import { freshSupplier, readFigure, type Supplier } from '../figures/read.ts'
import { scaled } from '../meter/vary.ts'
import type { Netlist } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import { ProblemError } from '../problem.ts'
import { currentIn, voltageBetween } from '../solver/solution.ts'
import { type Moved, STEP } from './law-slopes.ts'
import { Linearised } from './linearised.ts'
import { probesOf } from './probes.ts'
import { type Refit, refitsBetween, type Site, type World } from './world.ts'

/** The plans of a netlist: the same list, in the same order, for every netlist of one world. */
export type PlansOf = (net: Netlist) => readonly FigurePlan[]

/** Spots that are kept at the same time. */
const KEPT = 256

/** The spots of one world, each made once while it is kept: many figures have their worst case at the same corner. */
export class Spots {
  readonly world: World
  /** Corners at which every figure is looked at, whatever its slopes say. */
  readonly probes: readonly Float64Array[]
  readonly #plansOf: PlansOf
  readonly #kept = new Map<string, Spot>()

  constructor(world: World, plansOf: PlansOf) {
    this.world = world
    this.probes = probesOf(world.loose)
    this.#plansOf = plansOf
  }

  at(factors: Float64Array): Spot {
    const key = factors.join()
    const before = this.#kept.get(key)
    if (before !== undefined) {
      // to the end of the row: what was not asked for longest goes first
      this.#kept.delete(key)
      this.#kept.set(key, before)
      return before
    }
    const [oldest] = this.#kept.keys()
    if (this.#kept.size >= KEPT && oldest !== undefined) this.#kept.delete(oldest)
    const made = new Spot(this.world, this.#plansOf, factors, (other) => this.at(other))
    this.#kept.set(key, made)
    return made
  }

  /** Every value as stated. */
  stated(): Spot {
    return this.at(new Float64Array(this.world.loose.length).fill(1))
  }
}

/** How a figure's slopes were found. */
export type By = 'adjoint' | 'differences'

/** The derivative of a figure by the logarithm of each loose value, in the figure's unit; none where it is no number. */
export interface Slopes {
  readonly by: By
  readonly slopes: Float64Array
}

/** What a step of each value does. */
interface Moves {
  readonly moved: readonly Moved[]
  readonly plansAt: ReadonlyMap<number, readonly [down: readonly FigurePlan[], up: readonly FigurePlan[]]>
}

/** Step of differences of whole figures, relative: far above what a solve comes to rest within. */
const WIDE = 1e-3

/** Figures with their slopes about one choice of factors. */
export class Spot {
  readonly net: Netlist
  readonly plans: readonly FigurePlan[]
  readonly supplier: Supplier
  readonly #world: World
  readonly #plansOf: PlansOf
  readonly #factors: Float64Array
  readonly #questions = new Map<string, Linearised | undefined>()
  /** Other spots of the same world. */
  readonly #at: (factors: Float64Array) => Spot
  #moves: Moves | undefined

  constructor(world: World, plansOf: PlansOf, factors: Float64Array, at: (factors: Float64Array) => Spot) {
    this.#at = at
    this.#world = world
    this.#plansOf = plansOf
    this.#factors = factors
    this.net = world.at(factors)
    this.supplier = freshSupplier(this.net)
    this.plans = plansOf(this.net)
  }

  /** The figure of this index. */
  figure(k: number): Figure | undefined {
    const plan = this.plans[k]
    return plan && readFigure(this.net, plan, this.supplier)
  }

  /** What a step of each value does to the specs of parts, and to the plans where they may hang on a sheet. */
  #moved(): Moves {
    if (this.#moves !== undefined) return this.#moves
    const plansAt = new Map<number, readonly [readonly FigurePlan[], readonly FigurePlan[]]>()
    const moved = this.#world.loose.map(({ site }, k): Moved => {
      if ('part' in site) return { down: refitOf(this.net, site, -STEP), up: refitOf(this.net, site, STEP) }
      const [down, up] = [this.#netAt(k, -STEP), this.#netAt(k, STEP)]
      plansAt.set(k, [this.#plansOf(down), this.#plansOf(up)])
      return { down: refitsBetween(this.net, down), up: refitsBetween(this.net, up) }
    })
    this.#moves = { moved, plansAt }
    return this.#moves
  }

  #netAt(value: number, step: number): Netlist {
    return this.#world.at(this.#stepped(value, step))
  }

  #stepped(value: number, step: number): Float64Array {
    const factors = this.#factors.slice()
    factors[value] = (factors[value] ?? 1) * (1 + step)
    return factors
  }

  /**
   * The slopes of the figure of this index; undefined where it is no number.
   * @param among values that are worth two solves each where the slopes are by differences; all when absent
   */
  slopesOf(k: number, among?: ReadonlySet<number>): Slopes | undefined {
    const plan = this.plans[k]
    if (plan === undefined || this.figure(k)?.value == null) return undefined
    const { plansAt } = this.#moved()
    const taps = this.#readings(plan)
    const along = taps && plan.taps.map((tap) => this.#linearised(tap)?.slopesOf(tap))
    if (taps === undefined || along === undefined || along.some((one) => one === undefined)) {
      return { by: 'differences', slopes: this.#differences(k, among) }
    }
    const byDifference = this.#differenceOf.bind(this, k)
    let by: By = 'adjoint'
    const slopes = Float64Array.from(this.#world.loose, (_, value) => {
      const [down, up] = plansAt.get(value) ?? []
      if (down !== undefined && up !== undefined && !sameQuestions(plan, up[k])) {
        by = 'differences'
        return byDifference(value)
      }
      const ahead = through(plan, taps, along, value)
      return ahead + (apart(down?.[k], up?.[k], taps) ?? 0)
    })
    return { by, slopes }
  }

  /** What the taps of a plan read; undefined where one is not fixed. */
  #readings(plan: FigurePlan): Float64Array | undefined {
    const out = new Float64Array(2 * plan.taps.length)
    for (const [k, tap] of plan.taps.entries()) {
      const isCurrent = 'current' in tap
      const reads = isCurrent ? { nodes: [], branches: [tap.current] } : { nodes: tap.voltage, branches: [] }
      const solution = this.supplier(tap.question, reads)
      const read = isCurrent ? currentIn(solution, tap.current) : voltageBetween(solution, ...tap.voltage)
      if (read === undefined || solution.probeOpen) return undefined
      out.set([read.re, read.im], 2 * k)
    }
    return out
  }

  #linearised({ question }: Tap): Linearised | undefined {
    const key = JSON.stringify(question)
    if (this.#questions.has(key)) return this.#questions.get(key)
    const made = orNone(() => Linearised.of(this.net, question, this.#moved().moved))
    this.#questions.set(key, made)
    return made
  }

  #differences(k: number, among: ReadonlySet<number> | undefined): Float64Array {
    return Float64Array.from(this.#world.loose, (_, value) =>
      among?.has(value) === false ? 0 : this.#differenceOf(k, value),
    )
  }

  /** Central difference of a whole figure; nothing where it is no number on either side. */
  #differenceOf(k: number, value: number): number {
    const [down, up] = [-WIDE, WIDE].map((step) => this.#amountAt(k, value, step))
    const slope = ((up ?? Number.NaN) - (down ?? Number.NaN)) / (2 * WIDE)
    return Number.isFinite(slope) ? slope : 0
  }

  #amountAt(k: number, value: number, step: number): number {
    return this.#at(this.#stepped(value, step)).figure(k)?.value ?? Number.NaN
  }
}

/** A step of one value in the spec of its part. */
function refitOf(
  net: Netlist,
  { part, path }: Extract<Site, { part: number }>,
  step: number,
): readonly Refit[] {
  const spec = net.parts[part]?.spec
  return spec === undefined ? [] : [{ part, spec: scaled(spec, path, 1 + step) as PartSpec }]
}

function orNone<T>(make: () => T): T | undefined {
  try {
    return make()
  } catch (error) {
    if (error instanceof ProblemError) return undefined
    throw error
  }
}

function sameQuestions(plan: FigurePlan, other: FigurePlan | undefined): boolean {
  return other !== undefined && JSON.stringify(plan.taps) === JSON.stringify(other.taps)
}

/**
 * The derivative of a figure along what its readings do together: a central difference of `value` alone, so that
 * readings which move as one do so here too.
 */
function through(
  plan: FigurePlan,
  readings: Float64Array,
  along: readonly (Float64Array | undefined)[],
  value: number,
): number {
  const moved = [-STEP, STEP].map((step) => {
    const stepped = readings.map((reading, k) => reading + step * (along[k >> 1]?.[2 * value + (k & 1)] ?? 0))
    return plan.value(stepped)
  })
  const [down, up] = moved
  return typeof down === 'number' && typeof up === 'number' ? (up - down) / (2 * STEP) : 0
}

/** What a value changes in the rule of a figure at the same readings, such as a current at which ringing is tripped. */
function apart(
  down: FigurePlan | undefined,
  up: FigurePlan | undefined,
  readings: Float64Array,
): number | undefined {
  const [low, high] = [down?.value(readings), up?.value(readings)]
  return typeof low === 'number' && typeof high === 'number' ? (high - low) / (2 * STEP) : undefined
}
