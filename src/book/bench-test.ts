/** What can be found out about a set at the bench: by using it, with a meter outside it, with a meter inside it. */
import type { FigurePlan } from '../figures/figure.ts'
import type { Amount } from '../figures/variants.ts'
import type { Condition } from '../netlist/condition.ts'
import type { PartSpec } from '../parts/kind.ts'

/** Where hands and eyes are for it: using the telephone, at its plug and cords, in the opened case. */
export type Site = 'in-use' | 'outside' | 'inside'

/** What the parts of a variant are, by their index: a weak magnet moves no current, yet a bell needs more of it. */
export type SpecAt = (part: number) => PartSpec

/** One thing to find out. Its answer is a number, the *score*: what a meter shows, or how a sound compares with what is due. */
export interface BenchTest {
  /** Unique in its book: `rings`, `ohms plug.a plug.b off-hook`. */
  readonly id: string
  /** The question in plain words. */
  readonly asks: string
  /** What to do for it, step by step, where the leads go among it; empty where the question says it all. */
  readonly how: string
  readonly site: Site
  /** Whether it is done on a live line; such a test is never asked for without its cautions. */
  readonly live: boolean
  /** Relative cost of doing it in minutes of a practised hand, data of `netlists/odds.yaml`. */
  readonly effort: number
  readonly condition: Condition
  /** Unit of the score; `1` for ratios. */
  readonly unit: 'Ω' | 'F' | 'V' | '1'
  /**
   * Scores are compared as u = asinh(score / scale): like decibels far above it, like the score itself far below. A
   * meter's last digit, or a tenth of what can be heard.
   */
  readonly scale: number
  /** One standard deviation of a reading of this score by itself, in its unit; 0 where a person answers. */
  error(score: number): number
  /** Above this a reading counts as open, in the score and in what a person reads; nothing does when absent. */
  readonly most?: number
  /** For a question that a person answers in words; absent for a reading. */
  readonly words?: BenchWords
  /** The figures that it rests on. */
  readonly plans: readonly FigurePlan[]
  /** The score of a variant from its figures, in the order of `plans`. `Amount` codes as there; pure. */
  score(figures: readonly Amount[], specs: SpecAt): Amount
}

/** Answers in words: which of them it is hangs on where the score lies. */
export interface BenchWords {
  /** From the lowest score to the highest, one more than `cuts`. */
  readonly answers: readonly BenchAnswer[]
  /** Scores at which one answer gives way to the next, rising. */
  readonly cuts: readonly number[]
  /** How often a person is mistaken. Data of `netlists/odds.yaml`. */
  readonly slip: number
}

/** One answer. */
export interface BenchAnswer {
  /** `silent`, `weak`, `rings`. */
  readonly id: string
  readonly says: string
  /** Whether it is as it should be, so that it is no complaint. */
  readonly fine: boolean
  /** Other words that plainly mean it, `yes` or `no`; where several answers have one, it may be any of them. */
  readonly also?: readonly string[]
}
