/** The answer to `identify`, as JSON shows it. */
import type { Difference } from '../identify/differences.ts'
import type { Fit } from '../identify/fits.ts'
import type { ImpliedStraps } from '../identify/straps.ts'
import type { Envelope } from './answer.ts'

/** One known set in one state of its slot. */
export interface IdentifiedSet {
  /** `fescue`, `fescue without a unit`. */
  readonly name: string
  readonly set: string
  readonly rewire?: string
  /** Unit in its slot, null where it is empty; absent where it has no slot. */
  readonly unit?: string | null
}

/** Known sets that nothing in reach tells apart. */
export interface IdentifiedGroup {
  readonly sets: readonly IdentifiedSet[]
  readonly probability: number
  /** In what the others of the group differ from its first by their sheets, though nothing in reach shows it. */
  readonly hidden: readonly (Difference & { readonly set: string })[]
}

/** One finding beside what the first and the next lead to expect. */
export interface IdentifyFinding {
  /** `A3 A4 on-hook`, `slot`. */
  readonly id: string
  readonly found: 'reading' | 'absent' | 'sighting'
  /** The answer in words; or `ohms`. */
  readonly says?: string
  readonly ohms?: number
  readonly first: Fit
  readonly next?: Fit
  /** Why it is weak evidence, where it is. */
  readonly weak?: string
}

/** What may come out of the next question. */
export interface IdentifyOutcome {
  readonly says?: string
  /** Bounds of the readings that are expected, ohms. */
  readonly least?: number
  readonly most?: number
  /** Names of the sets that it speaks for. */
  readonly sets: readonly string[]
}

/** What to look at or to read next. */
export interface IdentifyNext {
  readonly id: string
  readonly ask: 'reading' | 'sighting'
  readonly asks: string
  /** Answers that may be given; empty for a reading. */
  readonly answers: readonly string[]
  /** Terminals and condition of a reading. */
  readonly pair?: { readonly red: string; readonly black: string; readonly condition: string }
  /** Whether it was read already and does not fit what leads. */
  readonly again: boolean
  /** Bits that it is expected to tell, and the minutes that it takes. */
  readonly bits: number
  readonly effort: number
  readonly outcomes: readonly IdentifyOutcome[]
}

export interface IdentifyAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly instrument: string
  /**
   * `one` group leads with 95 % or more; `like-one`: it leads so among the known sets, but may have been changed;
   * `several` are left; `unknown` set: more likely than not it is in no sheet.
   */
  readonly finds: 'one' | 'like-one' | 'several' | 'unknown'
  /** How sure, in words: `almost certain`. */
  readonly sure: string
  /** How many known sets were compared, states of slots counted apart. */
  readonly compared: number
  /** The most probable first; those below a thousandth are left out. */
  readonly groups: readonly IdentifiedGroup[]
  /** That it is in no sheet: `changed`, one of them that somebody changed in places, or `foreign`, like none. */
  readonly unknown: {
    readonly probability: number
    readonly changed: number
    readonly foreign: number
    /** The known set that it is most like. */
    readonly like?: string
  }
  readonly findings: readonly IdentifyFinding[]
  /** What was said before of the same thing and no longer counts: of several findings the last does. */
  readonly 'taken back': readonly Pick<IdentifyFinding, 'id' | 'says' | 'ohms'>[]
  /** Terminals that were read, or a strap was seen at, though no known set has them: perhaps slips. */
  readonly stray: readonly string[]
  /** In what the first and the next differ by their sheets. */
  readonly differences: readonly Difference[]
  /** Straps of the first that no reading has led through, so that a change there would not have shown. */
  readonly unread: readonly string[]
  /** What to find out next; absent where nothing informs any more or one leads. */
  readonly next?: IdentifyNext
  readonly straps: ImpliedStraps
  readonly cautions: readonly string[]
}
