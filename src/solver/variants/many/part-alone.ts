/**
 * One part by itself: its laws after the changes that befall it, about any point, without asking all the other parts.
 * What is put in series with its branches is left out; that belongs to the source and not to the network.
 */
import { stateOf } from '../../../netlist/conduct.ts'
import type { Netlist, NetPart } from '../../../netlist/netlist.ts'
import type { GateState, LawPoint } from '../../../parts/kind.ts'
import { Laws, type Point } from '../../laws.ts'
import type { Question } from '../../question.ts'
import { type Change, changed } from '../change.ts'

/** A part with its changes, ready to state its laws; branches count from its own first. */
export interface PartCase {
  readonly net: Netlist
  readonly question: Question
  readonly laws: Laws
  /** The point about which it is asked; written by whoever asks. */
  readonly about: Point
  readonly swing: Float64Array
  /** Ohms in series with each branch, by its changes. */
  readonly within: Float64Array
  /** What its law is asked at once it has been stated, where nothing but the point decides it. */
  asking?: { readonly part: NetPart; readonly at: LawPoint; readonly state: GateState }
}

/** A part of a netlist that is asked by itself. */
export class PartAlone {
  readonly first: number
  readonly count: number
  readonly #net: Netlist
  readonly #question: Question
  readonly #part: number

  constructor(net: Netlist, question: Question, index: number) {
    const part = net.parts[index]
    if (part === undefined) throw new RangeError(`no part has the index ${index}`)
    this.first = part.first
    this.count = part.count
    this.#part = index
    const own = { ...part, first: 0 }
    const branches = net.branches
      .slice(part.first, part.first + part.count)
      .map((branch, k) => ({ ...branch, index: k, part: own }))
    this.#net = { ...net, branches, parts: [own] }
    this.#question = this.#within(question)
  }

  /** What of a question befalls the part, in its own indices. */
  #within({ lifted = [], within = [], instead = [], ...rest }: Question): Question {
    const { added: _, bridges: __, probes: ___, series: ____, ...stated } = rest
    const own = (branch: number): boolean => branch >= this.first && branch < this.first + this.count
    return {
      ...stated,
      lifted: lifted.filter(own).map((branch) => branch - this.first),
      within: within
        .filter(({ branch }) => own(branch))
        .map((one) => ({ ...one, branch: one.branch - this.first })),
      instead: instead.filter(({ part }) => part === this.#part).map(({ spec }) => ({ part: 0, spec })),
    }
  }

  /** The part after these changes, all of which are its own. */
  after(changes: readonly Change[]): PartCase {
    const moved = changes.map((change): Change => {
      if ('lifted' in change) return { lifted: change.lifted - this.first }
      if ('within' in change)
        return { within: { ...change.within, branch: change.within.branch - this.first } }
      if ('instead' in change) return { instead: { part: 0, spec: change.instead.spec } }
      return change
    })
    const question = changed(this.#question, moved)
    const within = new Float64Array(this.count)
    for (const { branch, ohms } of question.within ?? []) within[branch]! += ohms
    return {
      net: this.#net,
      question,
      laws: new Laws(this.#net, question),
      about: { voltage: new Float64Array(this.count), current: new Float64Array(this.count) },
      swing: new Float64Array(this.count),
      within,
    }
  }
}

/**
 * Fills the laws of a part about its point.
 * @param how `rest` without a point, `about` its point, `chords` as the resistances that it has there
 * @throws ProblemError for values that no law can be stated with
 */
export function stateCase(one: PartCase, how: Stating): void {
  const { net, question, laws, about, swing, asking } = one
  if (asking !== undefined) {
    // the sums of a search ask thousands of times; the laws know the point, whose numbers are new
    asking.part.law.law(asking.part.spec, asking.at, asking.state, laws)
    return
  }
  if (how === 'chords') {
    laws.fill(net, question)
    laws.takeChords(net, about)
  } else if (how === 'rest') laws.fill(net, question)
  else laws.fill(net, question, how === 'about' ? { direct: about } : { direct: about, swing })
  if (how === 'about' || how === 'swing') askAgain(one, how)
}

/** Prepares a case to be asked again, where no change but other values befalls it. */
function askAgain(one: PartCase, how: 'about' | 'swing'): void {
  const { net, question, laws, about, swing } = one
  const { lifted = [], within = [], instead = [], analysis, frequency = 0 } = question
  const [own] = net.parts
  if (own === undefined || lifted.length > 0 || within.length > 0 || laws.mutuals.length > 0) return
  if (question.sources === 'none' && own.role === 'source') return
  const spec = instead[0]?.spec ?? own.spec
  if (own.law.bends?.(spec) === undefined) return
  const working = Array.from(about.voltage, () => ({ voltage: 0, current: 0 }))
  const at: LawPoint = {
    analysis,
    omega: analysis === 'direct' ? 0 : 2 * Math.PI * frequency,
    direct(k) {
      const held = working[k]!
      held.voltage = about.voltage[k]!
      held.current = about.current[k]!
      return held
    },
    ...(how === 'swing' ? { swing: (k: number) => swing[k]! } : {}),
  }
  one.asking = { part: { ...own, spec }, at, state: stateOf(own, question.condition) }
}

/** About what a part states its laws. */
export type Stating = 'rest' | 'about' | 'swing' | 'chords'
