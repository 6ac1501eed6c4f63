/**
 * All small changes of one solved network, alone or in pairs, from tables of updates; solved afresh where an update
 * cannot be trusted: where the islands change, where its small matrix is nearly singular, where one change is more
 * than one law, or where it moves the point of parts whose law bends. One in a thousand, chosen by seed, is always
 * solved afresh as well and compared (design 5, "Variants").
 */
import { seededRandom } from '../../algebra/random.ts'
import type { Netlist } from '../../netlist/netlist.ts'
import { ProblemError } from '../../problem.ts'
import type { Laws } from '../laws.ts'
import type { Question } from '../question.ts'
import { currentIn, type Solution, voltageBetween } from '../solution.ts'
import { solve } from '../solve.ts'
import { type Candidate, candidateOf } from './candidate.ts'
import { type Change, changed } from './change.ts'
import { type Joined, joinedBy } from './joined.ts'
import { keep } from './keep.ts'
import { type Tables, updateOne, updateTwo } from './small-update.ts'
import { makeTables, type Reading } from './tables.ts'

/** How a variant was found: by update, by a solve of its own, or not at all (contradiction, no convergence). */
export type Found = 'updated' | 'fresh' | 'refused'

/** One in so many updates is compared with a fresh solve. */
const SAMPLED = 1000
/**
 * Readings below this share of the largest of their kind are compared with that share instead: where a change takes
 * the only source away, what is left of nothing is the rounding of what was there.
 */
const FLOOR = 1e-3
/** Voltages and currents below this, V or A, are nothing. */
const NOTHING = 1e-15

/** How the table is checked. */
export interface Sampling {
  /** Seed of the choice; 1 when absent. */
  readonly seed?: number
  /** One in so many; 1,000 when absent. */
  readonly every?: number
}

/** The variants of one question. Readings are complex, interleaved re, im; NaN between two islands or where refused. */
export class VariantTable {
  /** Readings without any change. */
  readonly base: Float64Array
  /** Variants by how they were found. */
  readonly counts: Record<Found, number> = { updated: 0, fresh: 0, refused: 0 }
  /** How many updates were compared, and the worst relative difference. */
  sampled = 0
  worst = 0
  readonly #net: Netlist
  readonly #question: Question
  readonly #readings: readonly Reading[]
  readonly #changes: readonly Change[]
  readonly #candidates: readonly Candidate[]
  readonly #branches: Int32Array
  readonly #joined: Joined
  readonly #fresh: Uint8Array
  readonly #tables: Tables
  readonly #random: () => number
  readonly #every: number
  #untilSample: number
  readonly #compared: Float64Array

  /**
   * Solves the unchanged question once and makes the tables: one column a change.
   * @throws ProblemError what the unchanged question throws. RangeError for a reading that stands twice.
   */
  constructor(
    net: Netlist,
    question: Question,
    readings: readonly Reading[],
    changes: readonly Change[],
    { seed = 1, every = SAMPLED }: Sampling = {},
  ) {
    refuseTwins(readings)
    this.#net = net
    this.#question = question
    this.#readings = readings
    this.#changes = changes
    const { kept, refined, laws, about, bent, direct } = keep(net, question)
    const stated = { laws, about, bent, direct }
    this.#candidates = changes.map((change) => candidateOf(net, question, stated, change))
    this.#joined = joinedBy(net.nodes.length, laws, kept.topology, this.#candidates)
    this.#fresh = this.#freshOnes(laws, kept.topology.closing.length > 0)
    const held = this.#candidates.map((one, c): Candidate => (this.#fresh[c] === 1 ? { does: 'fresh' } : one))
    this.#branches = Int32Array.from(this.#candidates, (one, c) => (one.does === 'law' ? one.branch : -1 - c))
    this.#tables = makeTables(kept, refined, held, readings)
    this.base = this.#tables.base
    this.#random = seededRandom(seed)
    this.#every = every
    this.#untilSample = this.#nextSample()
    this.#compared = new Float64Array(2 * readings.length)
  }

  /** Changes that only a fresh solve answers. */
  #freshOnes(laws: Laws, loops: boolean): Uint8Array {
    return Uint8Array.from(this.#candidates, (one, c) => {
      if (one.does === 'fresh' || this.#joined.alone[c] === 1) return 1
      // in a loop of ideal links another one may have to carry what this one did
      const ideal = one.does === 'law' && laws.ideal(one.branch)
      return loops && ideal ? 1 : 0
    })
  }

  /** Readings after the change of this index, into `out`. */
  one(c: number, out: Float64Array): Found {
    if (this.#fresh[c] === 1) return this.#solveAfresh(out, c, -1)
    if (this.#candidates[c]!.does === 'none') {
      out.set(this.base)
      return this.#updated(out, c, -1)
    }
    return updateOne(this.#tables, c, out) ? this.#updated(out, c, -1) : this.#solveAfresh(out, c, -1)
  }

  /** Readings after two changes. */
  two(c: number, d: number, out: Float64Array): Found {
    if (this.#sameValues(c, d)) {
      // a part has one set of values: what both together would be is not said
      out.fill(Number.NaN)
      this.counts.refused += 1
      return 'refused'
    }
    if (this.#fresh[c] === 1 || this.#fresh[d] === 1) return this.#solveAfresh(out, c, d)
    if (this.#branches[c] === this.#branches[d]) return this.#solveAfresh(out, c, d)
    if (this.#candidates[c]!.does === 'none') return this.one(d, out)
    if (this.#candidates[d]!.does === 'none') return this.one(c, out)
    if (this.#joined.pairs[c * this.#candidates.length + d] === 1) return this.#solveAfresh(out, c, d)
    return updateTwo(this.#tables, c, d, out) ? this.#updated(out, c, d) : this.#solveAfresh(out, c, d)
  }

  /** Whether both changes give other values to one part. */
  #sameValues(c: number, d: number): boolean {
    const one = this.#changes[c]!
    const two = this.#changes[d]!
    return 'instead' in one && 'instead' in two && one.instead.part === two.instead.part
  }

  /** Updates until the next one that is compared: on average so many, drawn only then, so that most cost nothing. */
  #nextSample(): number {
    return 1 + Math.floor(this.#random() * (2 * this.#every - 1))
  }

  #updated(out: Float64Array, c: number, d: number): Found {
    this.counts.updated += 1
    this.#untilSample -= 1
    if (this.#untilSample <= 0) {
      this.#untilSample = this.#nextSample()
      this.#compare(out, c, d)
    }
    return 'updated'
  }

  #solveAfresh(out: Float64Array, c: number, d: number): Found {
    const found = this.#read(out, c, d) ? 'fresh' : 'refused'
    this.counts[found] += 1
    return found
  }

  /** Solves the changed question by itself. */
  #read(out: Float64Array, c: number, d: number): boolean {
    const changes = [this.#changes[c]!, ...(d < 0 ? [] : [this.#changes[d]!])]
    let solution: Solution
    try {
      solution = solve(this.#net, changed(this.#question, changes))
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      out.fill(Number.NaN)
      return false
    }
    this.#readings.forEach((one, t) => {
      const read =
        'current' in one ? currentIn(solution, one.current) : voltageBetween(solution, ...one.voltage)
      out[2 * t] = read?.re ?? Number.NaN
      out[2 * t + 1] = read?.im ?? Number.NaN
    })
    return true
  }

  #compare(out: Float64Array, c: number, d: number): void {
    const fresh = this.#compared
    this.sampled += 1
    const solved = this.#read(fresh, c, d)
    this.worst = solved
      ? Math.max(this.worst, furthest(this.#readings, out, fresh, this.base))
      : Number.POSITIVE_INFINITY
  }
}

/**
 * The largest difference of two rows of readings, each by its own size, or by the floor where it is next to nothing
 * beside the largest of its kind, that of the unchanged network among them.
 */
export function furthest(
  readings: readonly Reading[],
  p: Float64Array,
  q: Float64Array,
  base: Float64Array,
): number {
  const volts = largestOf(
    readings.map((one) => 'voltage' in one),
    [q, base],
  )
  const amperes = largestOf(
    readings.map((one) => 'current' in one),
    [q, base],
  )
  let worst = 0
  readings.forEach((one, t) => {
    const size = Math.hypot(q[2 * t]!, q[2 * t + 1]!)
    const apart = Math.hypot(p[2 * t]! - q[2 * t]!, p[2 * t + 1]! - q[2 * t + 1]!)
    const floor = FLOOR * ('current' in one ? amperes : volts) + NOTHING
    if (apart > 0) worst = Math.max(worst, apart / Math.max(size, floor))
  })
  return worst
}

/** The largest size of those readings that are wanted; what is undetermined is none. */
function largestOf(wanted: readonly boolean[], rows: readonly Float64Array[]): number {
  let largest = 0
  for (const row of rows) {
    wanted.forEach((yes, t) => {
      const size = Math.hypot(row[2 * t]!, row[2 * t + 1]!)
      if (yes && size > largest) largest = size
    })
  }
  return largest
}

function refuseTwins(readings: readonly Reading[]): void {
  const seen = new Set(readings.map((one) => JSON.stringify(one)))
  if (seen.size !== readings.length) throw new RangeError('a reading stands twice')
}
