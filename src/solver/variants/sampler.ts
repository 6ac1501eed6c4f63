/** Which variants are solved afresh besides, one in so many, chosen by seed (design 5). */
import { seededRandom } from '../../algebra/random.ts'

/** One in so many, where nothing else is said. */
const SAMPLED = 1000

/** How updates are checked on their way. */
export interface Sampling {
  /** Seed of the choice; 1 when absent. */
  readonly seed?: number
  /** One in so many; 1,000 when absent. */
  readonly every?: number
}

export class Sampler {
  readonly #random: () => number
  readonly #every: number
  #until: number

  constructor({ seed = 1, every = SAMPLED }: Sampling = {}) {
    this.#random = seededRandom(seed)
    this.#every = every
    this.#until = this.#next()
  }

  /** Whether this one is among those; every variant asks once. */
  isDue(): boolean {
    this.#until -= 1
    if (this.#until > 0) return false
    this.#until = this.#next()
    return true
  }

  /** How many until the next: on average so many, drawn only then, so that most cost nothing. */
  #next(): number {
    return 1 + Math.floor(this.#random() * (2 * this.#every - 1))
  }
}
