/** Hears plain elements: the second opinion's first choice. */
import type { ElementSink } from '../parts/kind.ts'
import type { Big } from './big.ts'
import { type BranchLaw, type Heard, openBranch } from './branch-law.ts'
import { negative, type Pairs, plus, times } from './pair.ts'

/** Takes plain elements, in the sheet's decimals; ω in as many digits as there are. */
export class ElementEar implements ElementSink, Heard {
  readonly laws: Map<number, BranchLaw> = new Map()
  rounded = false
  readonly #pairs: Pairs
  readonly #omega: Big

  constructor(pairs: Pairs, omega: Big) {
    this.#pairs = pairs
    this.#omega = omega
  }

  open(branch: number): void {
    this.#set(branch, openBranch(this.#pairs))
  }

  series(branch: number, ohms: number, henries: number, eRe = 0, eIm = 0): void {
    this.#noteAngle(eIm)
    if (ohms === Number.POSITIVE_INFINITY) {
      this.open(branch)
      return
    }
    const { digits } = this.#pairs
    const amps = { re: digits.of(ohms), im: this.#omega.times(digits.of(henries)) }
    this.#set(branch, {
      volts: this.#pairs.one,
      amps,
      others: new Map(),
      source: this.#pairs.of(eRe, eIm),
    })
  }

  beside(branch: number, ohms: number, farads: number, sRe = 0, sIm = 0): void {
    this.#noteAngle(sIm)
    const { digits, one, real, turned } = this.#pairs
    const susceptance = turned(this.#omega.times(digits.of(farads)))
    const source = this.#pairs.of(sRe, sIm)
    if (ohms === Number.POSITIVE_INFINITY) {
      // jωC·v − i = −s
      this.#set(branch, { volts: susceptance, amps: one, others: new Map(), source: negative(source) })
      return
    }
    // times R, so that nothing is divided: (1 + jωCR)·v − R·i = −R·s
    const r = real(digits.of(ohms))
    this.#set(branch, {
      volts: plus(one, times(susceptance, r)),
      amps: r,
      others: new Map(),
      source: negative(times(source, r)),
    })
  }

  coupled(branch: number, other: number, k: number, henries: number, otherHenries: number): void {
    const { digits, turned } = this.#pairs
    const root = digits.of(henries).times(digits.of(otherHenries)).sqrt()
    const mutual = turned(this.#omega.times(digits.of(k)).times(root))
    const law = this.laws.get(branch)
    if (law === undefined) throw new TypeError('a coupling stands before the branch that it couples')
    const before = law.others.get(other) ?? this.#pairs.zero
    this.#set(branch, {
      ...law,
      others: new Map([...law.others, [other, plus(before, times(law.volts, mutual))]]),
    })
  }

  /** The parts of a phasor at an angle are no decimals. */
  #noteAngle(im: number): void {
    if (im !== 0) this.rounded = true
  }

  #set(branch: number, law: BranchLaw): void {
    this.laws.set(branch, law)
  }
}
