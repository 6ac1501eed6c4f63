/**
 * The laws of all branches at one point, in flat arrays, before anything is stamped.
 * Branch k: an admittance i = y·v + s, or an equation a·v − z·i − Σ m·i(other) = e.
 */

import { stateOf } from '../netlist/conduct.ts'
import type { Netlist, NetPart } from '../netlist/netlist.ts'
import type { Bend, LawPoint, LawSink, Working } from '../parts/kind.ts'
import { refuse } from '../problem.ts'
import type { Question } from './question.ts'

/** Resistance of a strap that a question adds, ohms, as any other strap. Common practice, no source. */
const ADDED_STRAP = 0.01

/** Slopes below this many siemens have no inverse that a double could hold; such a tangent is level. */
const LEVEL = 1e-290
/**
 * So is one along which doubling the voltage would change the current by less than this share: a diode the wrong way
 * round. As a resistance it would be the difference of two huge voltages, and nothing would be left of it.
 */
const LEVELLED = 1e-6
/** And so is one along which less than this flows, A: a few electrons in a second are no current. */
const NO_CURRENT = 1e-18

/** What carries less than this, A, or holds less, V, has no resistance to speak of at its point. */
const CARRIES = 1e-9

/** The direct voltage and current of every branch, V and A: the point about which laws are stated. */
export interface Point {
  readonly voltage: Float64Array
  readonly current: Float64Array
}

/** What laws that bend are stated about; at rest when absent. */
export interface About {
  readonly direct?: Point | undefined
  /** Alternating voltage across every branch, V rms. */
  readonly swing?: Float64Array | undefined
}

/** A mutual term between two equations of one part. */
export interface Mutual {
  readonly branch: number
  readonly other: number
  re: number
  im: number
}

/** Laws as figures are solved from them, whoever has filled them. */
export interface LawTable {
  readonly count: number
  readonly equations: Uint8Array
  readonly from: Int32Array
  readonly to: Int32Array
  readonly a: Float64Array
  readonly slope: Float64Array
  readonly offset: Float64Array
  readonly mutuals: readonly Mutual[]
}

/** What a part is asked about that hangs on no point. */
function plainPoint({ analysis, frequency = 0 }: Question): LawPoint {
  return { analysis, omega: analysis === 'direct' ? 0 : 2 * Math.PI * frequency }
}

/** What a part is asked about: its own branches' share of the point. */
function pointOf({ law, first }: NetPart, at: LawPoint, { direct, swing }: About): LawPoint {
  if (law.bends === undefined) return at
  return {
    ...at,
    ...(direct === undefined ? {} : { direct: (branch: number) => workingAt(direct, first + branch) }),
    ...(swing === undefined ? {} : { swing: (branch: number) => swing[first + branch]! }),
  }
}

const AT_REST: About = {}

function refuseIdeal(): never {
  refuse({
    code: 'quantity-out-of-range',
    found: 'a resistance of 0 Ω in place of one of an ohm or more',
    expected: 'a value above 0 Ω; a short is a bridge across the part',
  })
}

/** Whether the law of a part hangs on the direct-current point, with its own values or others. */
export function isBent({ law, spec }: Pick<NetPart, 'law' | 'spec'>): boolean {
  return law.bends?.(spec).includes('direct') === true
}

/** What one branch carries at a point. */
export function workingAt({ voltage, current }: Point, branch: number): Working {
  return { voltage: voltage[branch]!, current: current[branch]! }
}

/** A part of the netlist with the values that a question gives it. */
function partIn(part: NetPart, index: number, { instead }: Question): NetPart {
  const other = instead?.find((one) => one.part === index)
  return other === undefined ? part : { ...part, spec: other.spec }
}

type Ends = Pick<LawTable, 'equations' | 'from' | 'to'>

const known = new WeakMap<Netlist, Ends>()

/** Forms and ends of all branches, made once for a netlist. */
function endsOf(net: Netlist): Ends {
  const before = known.get(net)
  if (before !== undefined) return before
  // a slope of next to nothing is a resistance of next to everything: as an equation neither loses its digits
  const ends = {
    equations: Uint8Array.from(net.branches, ({ form, part }) =>
      form === 'equation' || isBent(part) ? 1 : 0,
    ),
    from: Int32Array.from(net.branches, ({ from }) => from),
    to: Int32Array.from(net.branches, ({ to }) => to),
  }
  known.set(net, ends)
  return ends
}

/** Fills itself with a netlist's laws; one object serves every question with the same count of branches. */
export class Laws implements LawSink, LawTable {
  /** Branches of the netlist, then the straps and the resistances that the question adds. */
  readonly count: number
  /** 1 for equations, 0 for admittances. */
  readonly equations: Uint8Array
  readonly from: Int32Array
  readonly to: Int32Array
  readonly a: Float64Array
  /** z or y, interleaved re, im. */
  readonly slope: Float64Array
  /** e or s, interleaved re, im. */
  readonly offset: Float64Array
  readonly mutuals: Mutual[] = []
  /** Why figures that rest on this point are approximate. */
  readonly standIns: Map<string, number[]> = new Map()
  /** Branches whose law hangs on the direct-current point, none of which couples to others, and on the size of the alternating voltage. */
  readonly bent: Record<Bend, number[]> = { direct: [], swing: [] }
  /** Parts with a branch whose law hangs on the direct-current point, by their index. */
  readonly #hanging: number[] = []
  #base = 0
  /** The point about which direct laws are being stated. */
  #about: Point | undefined
  readonly #added: readonly number[]

  constructor(net: Netlist, { added = [], bridges = [] }: Question) {
    const own = net.branches.length
    const links = [...added.map((one) => ({ ...one, ohms: ADDED_STRAP })), ...bridges]
    this.count = own + links.length
    this.equations = new Uint8Array(this.count)
    this.from = new Int32Array(this.count)
    this.to = new Int32Array(this.count)
    this.a = new Float64Array(this.count)
    this.slope = new Float64Array(2 * this.count)
    this.offset = new Float64Array(2 * this.count)
    const ends = endsOf(net)
    this.equations.set(ends.equations)
    this.from.set(ends.from)
    this.to.set(ends.to)
    links.forEach((link, k) => {
      this.equations[own + k] = 1
      this.from[own + k] = link.from
      this.to[own + k] = link.to
    })
    this.#added = links.map(({ ohms }) => ohms)
  }

  /** Asks every part for its laws about a point, then applies what the question changes. */
  fill(net: Netlist, question: Question, about: About = {}): void {
    this.#about = question.analysis === 'direct' ? about.direct : undefined
    this.mutuals.length = 0
    this.standIns.clear()
    this.bent.direct.length = 0
    this.bent.swing.length = 0
    this.#base = net.branches.length
    this.#added.forEach((ohms, k) => {
      if (Number.isFinite(ohms)) this.equation(k, 1, ohms, 0)
      else this.equation(k, 0, 1, 0)
    })
    const at = plainPoint(question)
    const { parts } = net
    this.#hanging.length = 0
    for (let index = 0; index < parts.length; index += 1) {
      const bent = this.bent.direct.length
      this.#fillPart(partIn(parts[index]!, index, question), question, at, about)
      if (this.bent.direct.length > bent) this.#hanging.push(index)
    }
    for (const { branch, ohms } of question.within ?? []) this.#addWithin(branch, ohms)
    this.addSeries(question.series, question.lifted)
    for (const branch of question.lifted ?? []) this.open(branch)
  }

  /**
   * States anew, about another direct point, only the parts that hang on it: after a `fill` for the same question, of
   * which nothing but those has been changed since. Stand-ins stay as that `fill` found them.
   */
  refill(net: Netlist, question: Question, direct: Point): void {
    this.#about = question.analysis === 'direct' ? direct : undefined
    const at = plainPoint(question)
    for (const index of this.#hanging) {
      const part = partIn(net.parts[index]!, index, question)
      this.#base = part.first
      part.law.law(part.spec, pointOf(part, at, { direct }), 'closed', this)
      this.#change(part, question)
    }
  }

  /** What a question changes in the branches of one part, which has been stated anew. */
  #change({ first, count }: NetPart, { within = [], series, lifted = [] }: Question): void {
    const own = (branch: number): boolean => branch >= first && branch < first + count
    for (const { branch, ohms } of within) if (own(branch)) this.#addWithin(branch, ohms)
    this.addSeries(
      series?.filter(({ branch }) => own(branch)),
      lifted,
    )
    for (const branch of lifted) if (own(branch)) this.open(branch)
  }

  #fillPart(part: NetPart, question: Question, plain: LawPoint, about: About): void {
    const state = stateOf(part, question.condition)
    this.#base = part.first
    const resting = question.sources === 'none' && part.role === 'source'
    const at = pointOf(part, plain, resting ? AT_REST : about)
    part.law.law(part.spec, at, state, this)
    if (resting) this.offset.fill(0, 2 * part.first, 2 * (part.first + part.count))
    else if (state === 'closed') this.#noteBends(part, question)
    if (state === 'open' || part.law.standIn === undefined) return
    const reason = part.law.standIn(part.spec, at)
    if (reason === undefined) return
    const branches = Array.from({ length: part.count }, (_, k) => part.first + k)
    this.standIns.set(reason, [...(this.standIns.get(reason) ?? []), ...branches])
  }

  #noteBends(part: NetPart, { lifted = [], small }: Question): void {
    if (small !== undefined || part.law.bends === undefined) return
    for (const bend of part.law.bends(part.spec)) {
      for (let k = part.first; k < part.first + part.count; k += 1)
        if (!lifted.includes(k)) this.bent[bend].push(k)
    }
  }

  /**
   * Takes parts whose law bends as the resistances that they are at a point; those that carry next to nothing there,
   * and those that do not conduct at rest, stay as they are. Gives the ohms by branch.
   */
  takeChords(net: Netlist, { voltage, current }: Point): ReadonlyMap<number, number> {
    const chords = new Map<number, number>()
    for (const part of net.parts) {
      if (part.role === 'source' || !isBent(part)) continue
      for (let k = part.first; k < part.first + part.count; k += 1) {
        const carries = Math.abs(current[k]!) > CARRIES && Math.abs(voltage[k]!) > CARRIES
        if (!carries || !this.joins(k)) continue
        const ohms = voltage[k]! / current[k]!
        chords.set(k, ohms)
        this.#base = k
        this.equation(0, 1, ohms, 0)
      }
    }
    return chords
  }

  /** i = 0, whatever the form. */
  open(branch: number): void {
    this.a[branch] = 0
    this.slope[2 * branch] = this.equations[branch] === 1 ? 1 : 0
    this.slope[2 * branch + 1] = 0
    this.offset[2 * branch] = 0
    this.offset[2 * branch + 1] = 0
    for (const one of this.mutuals) {
      // an open winding still induces nothing in its neighbours: its current is zero
      if (one.branch === branch) one.re = one.im = 0
    }
  }

  /** z + r for an equation; y/(1 + y·r) and s/(1 + y·r) for an admittance. */
  #addWithin(branch: number, ohms: number): void {
    const k = 2 * branch
    if (this.equations[branch] === 1) {
      this.slope[k]! += this.a[branch]! * ohms
      return
    }
    const re = 1 + this.slope[k]! * ohms
    const im = this.slope[k + 1]! * ohms
    for (const values of [this.slope, this.offset]) {
      const [p, q] = [values[k]!, values[k + 1]!]
      values[k] = (p * re + q * im) / (re * re + im * im)
      values[k + 1] = (q * re - p * im) / (re * re + im * im)
    }
  }

  /** Puts voltages in series with branches; a branch that is lifted has none. */
  addSeries(series: Question['series'] = [], lifted: Question['lifted'] = []): void {
    for (const { branch, re, im = 0 } of series) if (!lifted.includes(branch)) this.#addSeries(branch, re, im)
  }

  #addSeries(branch: number, re: number, im: number): void {
    const k = 2 * branch
    if (this.equations[branch] === 1) {
      this.offset[k]! += this.a[branch]! * re
      this.offset[k + 1]! += this.a[branch]! * im
      return
    }
    const yRe = this.slope[k]!
    const yIm = this.slope[k + 1]!
    this.offset[k]! -= yRe * re - yIm * im
    this.offset[k + 1]! -= yRe * im + yIm * re
  }

  admittance(branch: number, yRe: number, yIm: number, sRe = 0, sIm = 0): void {
    const k = this.#base + branch
    if (this.equations[k] === 0) {
      this.#set(k, 0, yRe, yIm, sRe, sIm)
      return
    }
    // i = y·v + s as v − i/y = −s/y; where y is next to nothing as the constant i
    const size = yRe * yRe + yIm * yIm
    const rise = yRe * (this.#about?.voltage[k] ?? 0)
    const current = sRe + rise
    const level = Math.abs(rise) < Math.max(LEVELLED * Math.abs(current), rise === 0 ? 0 : NO_CURRENT)
    if (Math.hypot(yRe, yIm) < LEVEL || (yIm === 0 && level)) {
      this.#set(k, 0, 1, 0, -current, -sIm)
      return
    }
    const [zRe, zIm] = yIm === 0 ? [1 / yRe, 0] : [yRe / size, -yIm / size]
    this.#set(k, 1, zRe, zIm, -(sRe * zRe - sIm * zIm), -(sRe * zIm + sIm * zRe))
  }

  equation(branch: number, a: number, zRe: number, zIm: number, eRe = 0, eIm = 0): void {
    const k = this.#base + branch
    if (this.equations[k] === 1) {
      this.#set(k, a, zRe, zIm, eRe, eIm)
      return
    }
    // and a small resistance of what was a conductance: i = (a·v − e)/z
    const size = zRe * zRe + zIm * zIm
    if (size === 0) refuseIdeal()
    const [re, im] = [zRe / size, -zIm / size]
    this.#set(k, 0, a * re, a * im, -(eRe * re - eIm * im), -(eRe * im + eIm * re))
  }

  mutual(branch: number, other: number, re: number, im: number): void {
    this.mutuals.push({ branch: this.#base + branch, other: this.#base + other, re, im })
  }

  #set(k: number, a: number, re: number, im: number, oRe: number, oIm: number): void {
    this.a[k] = a
    this.slope[2 * k] = re
    this.slope[2 * k + 1] = im
    this.offset[2 * k] = oRe
    this.offset[2 * k + 1] = oIm
  }

  /** Whether the branch joins its two ends in this analysis and condition. */
  joins(k: number): boolean {
    if (this.equations[k] === 1) return this.a[k] !== 0
    return this.slope[2 * k] !== 0 || this.slope[2 * k + 1] !== 0
  }

  /** Whether the branch drives a current of its own whatever the voltage across it. */
  drives(k: number): boolean {
    if (this.short(k)) return false
    return this.equations[k] === 1 ? this.a[k] === 0 : this.slope[2 * k] === 0 && this.slope[2 * k + 1] === 0
  }

  /** Whether the branch is an ideal short or voltage source: a·v = e with nothing in series. */
  ideal(k: number): boolean {
    if (this.equations[k] === 0 || this.a[k] === 0) return false
    if (this.slope[2 * k] !== 0 || this.slope[2 * k + 1] !== 0) return false
    return (
      this.mutuals.length === 0 ||
      !this.mutuals.some((one) => one.branch === k && (one.re !== 0 || one.im !== 0))
    )
  }

  /** The ideal branches that are shorts, in their order. */
  idealLinks(): readonly number[] {
    const links: number[] = []
    for (let k = 0; k < this.count; k += 1) if (this.ideal(k) && this.short(k)) links.push(k)
    return links
  }

  /** Whether an ideal branch is a short: e = 0. */
  short(k: number): boolean {
    return this.offset[2 * k] === 0 && this.offset[2 * k + 1] === 0
  }
}
