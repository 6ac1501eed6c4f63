/** What the terminal picture shows of a set, as data: what lies where, what may be moved, what has been. */
import type { Hold } from '../../sheet/model.ts'
import type { Thing } from '../thing.ts'

/** What a move did to a thing since the set was found. */
export type Change = 'fitted' | 'taken out' | 'moved'

interface OnBoard {
  readonly thing: Thing
  /** Why it cannot be moved; absent where it can. */
  readonly fixed?: string
  readonly change?: Change
}

export interface BoardStrip {
  readonly name: string
  /** Its terminals from left to right, and which of them are spare. */
  readonly terminals: readonly { readonly name: string; readonly spare: boolean }[]
}

/** Taken out ones are listed too, with their change. */
export interface BoardStrap extends OnBoard {
  readonly from: string
  readonly to: string
  readonly hold: Hold
}

/** The colour of a core's insulation as its sheet words it. */
export interface CoreColour {
  readonly word: string
  /** The letter code of IEC 60757 (`GN`, `GNYE`, `BU`); absent where the word names no colour of it. */
  readonly code?: string
  /** Classes of its one or two colours, for the pattern: `green`, `yellow`. */
  readonly colours: readonly string[]
}

export interface BoardCore extends OnBoard {
  readonly cord: string
  readonly core: string
  readonly endsIn: 'plug' | 'handset'
  /** A terminal; absent where it is parked. */
  readonly lands?: string
  /** Where it was found: a terminal or `parked`; only where it has been moved. */
  readonly was?: string
  readonly colour?: CoreColour
}

/** One end of a part. */
export interface BoardEnd {
  /** `from` or `to`; of a part with several branches with the branch before it: `a from`. */
  readonly end: string
  /** The branch that it ends, where there are several: a winding, a diode. */
  readonly branch?: string
  /** A terminal; a joint or the earth with `joint: true`; a core as `handset.t1` with `core: true`. */
  readonly on: string
  readonly joint: boolean
  readonly core?: true
  /** On what the other end of the same branch is. */
  readonly other: string
}

/** A part, a contact or what else a sheet puts between terminals and joints. */
export interface BoardPart extends OnBoard {
  readonly name: string
  /** What it is, for a person: `capacitor`, `bell`, `hook contact`. */
  readonly says: string
  /** Its values as written: `1.8 µF`. */
  readonly values: string
  /** Two ends of each of its branches, one after the other. */
  readonly ends: readonly BoardEnd[]
  readonly bridged?: boolean
}

export interface BoardSlot extends OnBoard {
  readonly name: string
  readonly needsUnit: boolean
  readonly fitted?: string
  /** pin of the unit → terminal */
  readonly sockets: readonly { readonly pin: string; readonly terminal: string }[]
}

export interface Board {
  readonly set: string
  readonly title?: string
  readonly strips: readonly BoardStrip[]
  readonly straps: readonly BoardStrap[]
  readonly cores: readonly BoardCore[]
  readonly parts: readonly BoardPart[]
  readonly slots: readonly BoardSlot[]
}
