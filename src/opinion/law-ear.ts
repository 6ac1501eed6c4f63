/** Hears the laws of parts that are no plain elements. */
import type { LawSink } from '../parts/kind.ts'
import { type BranchLaw, type Heard, openBranch } from './branch-law.ts'
import { negative, type Pairs, plus } from './pair.ts'

/** Slopes of tangents below this many siemens carry nothing that a double could tell. */
const LEVEL = 1e-15

/** Takes the laws that parts without plain elements state, in doubles. */
export class LawEar implements LawSink, Heard {
  readonly laws: Map<number, BranchLaw> = new Map()
  readonly rounded = true
  readonly #pairs: Pairs
  /** The direct voltage about which a tangent is taken; undefined for laws that are none. */
  readonly #about: ((branch: number) => number) | undefined

  constructor(pairs: Pairs, about?: (branch: number) => number) {
    this.#pairs = pairs
    this.#about = about
  }

  admittance(branch: number, yRe: number, yIm: number, sRe = 0, sIm = 0): void {
    const of = this.#pairs.of
    const level = this.#about !== undefined && yIm === 0 && yRe !== 0 && Math.abs(yRe) < LEVEL
    // a tangent too flat to matter is the constant current that it carries at its point
    const source = level ? sRe + yRe * (this.#about?.(branch) ?? 0) : sRe
    this.laws.set(branch, {
      volts: level ? this.#pairs.zero : of(yRe, yIm),
      amps: this.#pairs.one,
      others: new Map(),
      source: negative(of(source, sIm)),
    })
  }

  equation(branch: number, a: number, zRe: number, zIm: number, eRe = 0, eIm = 0): void {
    const of = this.#pairs.of
    const others = this.laws.get(branch)?.others ?? new Map()
    this.laws.set(branch, { volts: of(a), amps: of(zRe, zIm), others, source: of(eRe, eIm) })
  }

  mutual(branch: number, other: number, mRe: number, mIm: number): void {
    const law = this.laws.get(branch) ?? openBranch(this.#pairs)
    const before = law.others.get(other) ?? this.#pairs.zero
    this.laws.set(branch, {
      ...law,
      others: new Map([...law.others, [other, plus(before, this.#pairs.of(mRe, mIm))]]),
    })
  }
}
