/**
 * The sheets as data, after reading: the keys are those of the format, word for word,
 * quantities are read, `based on` is merged, names are checked.
 */
import type { CableType } from '../parts/cable-types.ts'
import type { ImpedanceItem } from '../parts/exchange.ts'
import type { GateWord, PartSpec } from '../parts/kind.ts'
import type { Place } from '../problem.ts'
import type { Quantity, Span } from '../quantities/quantity.ts'

/** Kinds of sheet. */
export type SheetKind = 'set' | 'unit' | 'line' | 'premises' | 'rewire' | 'job' | 'circuit'

/** What every sheet carries. `places` maps a dotted path (`straps.B2-B3`) to where it is written. */
export interface SheetHead {
  readonly ringproof: 1
  readonly name: string
  readonly title?: string
  readonly notes?: readonly string[]
  /** File that the sheet was read from. */
  readonly file: string
  readonly places: ReadonlyMap<string, Place>
}

export type Hold = 'screw' | 'solder' | 'board'
export type ContactOrder = 'first' | 'last'

export interface StrapSpec {
  readonly hold: Hold
  readonly resistance?: Quantity
}

/** A contact in a set: the words of `kind: contact` without the kind. */
export interface ContactSpec {
  readonly from: string
  readonly to: string
  readonly 'closed when'?: GateWord
  readonly 'open when'?: GateWord
  readonly order?: ContactOrder
  readonly resistance?: Quantity
  readonly leakage?: Quantity | 'open'
}

export interface CoreSpec {
  /** A terminal, or `parked`: insulated, on nothing. */
  readonly lands: string
  readonly colour?: string
  readonly resistance?: Quantity
}
export interface CordSpec {
  readonly 'ends in': 'plug' | 'handset'
  readonly cores: Readonly<Record<string, CoreSpec>>
}
export interface SlotSpec {
  /** pin of the unit → terminal of the set */
  readonly sockets: Readonly<Record<string, string>>
  readonly 'needs unit'?: boolean
  /** name of a unit, or `none` */
  readonly fitted?: string
}
export interface PlugSpec {
  readonly 'numbered by': 'wiring' | 'contact'
  /** number as text → core of the cord that ends in the plug */
  readonly contacts: Readonly<Record<string, string>>
}

export interface SetSheet extends SheetHead {
  readonly sheet: 'set'
  readonly strips: Readonly<Record<string, number>>
  readonly spare: readonly string[]
  readonly 'touchable metal': Readonly<Record<string, string>>
  readonly straps: Readonly<Record<string, StrapSpec>>
  readonly contacts: Readonly<Record<string, ContactSpec>>
  readonly parts: Readonly<Record<string, PartSpec>>
  readonly joints: readonly string[]
  readonly slots: Readonly<Record<string, SlotSpec>>
  readonly cords: Readonly<Record<string, CordSpec>>
  readonly plug?: PlugSpec
  readonly handset: Readonly<Record<string, PartSpec>>
  /** what carries its parts: a printed board, or a loom of wires */
  readonly 'built on'?: 'board' | 'loom'
  /** handset cores meant to be common, each a group of core names */
  readonly 'common cores': readonly (readonly string[])[]
  /** names of the sheets that this one is based on, nearest first */
  readonly bases: readonly string[]
  /** `cord.core` → terminals on which this set and its bases land it, nearest first, without `parked` */
  readonly landings: Readonly<Record<string, readonly string[]>>
  /** units that the slots name, by name, already read */
  readonly units: Readonly<Record<string, UnitSheet>>
}

export interface UnitSheet extends SheetHead {
  readonly sheet: 'unit'
  readonly pins: readonly string[]
  readonly joints: readonly string[]
  readonly parts: Readonly<Record<string, PartSpec>>
}

export interface LineSheet extends SheetHead {
  readonly sheet: 'line'
  readonly feed: {
    readonly voltage: Quantity
    readonly resistance?: Quantity
    readonly 'current limit'?: Quantity
    readonly shared: 'half in each wire' | 'all in a wire' | 'all in b wire'
    readonly negative: 'a wire' | 'b wire'
    readonly earth: 'positive pole' | 'negative pole' | 'none'
  }
  readonly ringing?: {
    readonly voltage: Quantity
    readonly frequency: Quantity
    readonly wave: 'sine' | { readonly trapezoid: number }
    readonly source: Quantity
    readonly 'sent to': 'a wire' | 'b wire'
    readonly 'over battery'?: Quantity
    readonly cadence?: readonly Quantity[]
  }
  readonly cable?: RunSpec
  readonly speech: { readonly impedance: readonly ImpedanceItem[] }
  readonly trip?: { readonly current: Quantity; readonly within: Quantity }
  readonly recall: 'none' | 'earth' | { readonly 'timed break': Span }
  readonly limits: {
    readonly 'ringing load'?: number
    readonly 'load by'?: string
    readonly 'loop current'?: Span
    readonly pulses?: {
      readonly understood: boolean
      readonly rate?: Span
      readonly break?: Span
    }
  }
}

/** A length of cable: two wires (`twin`, `house-pair`) or three (`house-three`). */
export interface RunSpec {
  readonly type: CableType
  readonly gauge: Quantity
  readonly length: Quantity
  readonly temperature?: Quantity
}

export type SocketSpec =
  | {
      readonly is: 'master'
      readonly capacitance: Quantity
      readonly resistance: Quantity
      readonly 'gas tube'?: Quantity
      /** a second master socket on the same wires */
      readonly 'fed from'?: string
      readonly over?: RunSpec
      readonly 'ringing lead'?: boolean
      readonly earth?: boolean
      readonly mirrored?: boolean
    }
  | {
      readonly is: 'outlet'
      readonly 'fed from'?: string
      readonly over?: RunSpec
      readonly earth?: boolean
      readonly mirrored?: boolean
    }
  | {
      readonly is: 'secondary'
      readonly 'fed from': string
      readonly over?: RunSpec
      readonly 'ringing lead'?: boolean
      readonly earth?: boolean
      readonly mirrored?: boolean
    }
  | {
      readonly is: 'adapter'
      readonly 'fed from': string
      readonly over?: RunSpec
      /** with `resistance`: the adapter makes a ringing lead of its own */
      readonly capacitance?: Quantity
      readonly resistance?: Quantity
      readonly earth?: boolean
      readonly mirrored?: boolean
    }
  | {
      readonly is: 'converter'
      readonly 'fed from': string
      readonly over?: RunSpec
      readonly 'series resistance': Quantity
      readonly load?: Quantity
      readonly 'passes ringing'?: boolean
      readonly 'ringing lead'?: boolean
      readonly earth?: boolean
      readonly mirrored?: boolean
    }
  | {
      readonly is: 'filter'
      readonly 'fed from': string
      readonly over?: RunSpec
      readonly inductance: Quantity
      readonly resistance: Quantity
      readonly capacitance: Quantity
      readonly 'ringing lead'?: boolean
      readonly earth?: boolean
      readonly mirrored?: boolean
    }

export interface PlaceSpec {
  readonly set: string
  readonly in: string
  readonly rewire?: string
  readonly reversed?: boolean
  readonly condition?: string
}

export interface PremisesSheet extends SheetHead {
  readonly sheet: 'premises'
  readonly line: string
  readonly reversed: boolean
  readonly sockets: Readonly<Record<string, SocketSpec>>
  readonly sets: Readonly<Record<string, PlaceSpec>>
}

/** One move at the bench. */
export type Move =
  | { readonly do: 'fit strap'; readonly what: string; readonly hold?: Hold }
  | { readonly do: 'lift strap' | 'cut'; readonly what: string }
  | { readonly do: 'land core'; readonly what: string; readonly onto: string }
  | { readonly do: 'park core'; readonly what: string }
  | { readonly do: 'fit part'; readonly what: string; readonly with: PartSpec }
  | { readonly do: 'lift part' | 'bridge' | 'pull unit'; readonly what: string }
  | { readonly do: 'plug unit'; readonly what: string; readonly in: string }

/** A move with where it is written and, in a job, when it was done. */
export type PlacedMove = Move & { readonly place?: Place; readonly date?: string }

export interface RewireSheet extends SheetHead {
  readonly sheet: 'rewire'
  readonly set: string
  readonly moves: readonly PlacedMove[]
}

export interface ReadingSpec {
  readonly between: readonly [string, string]
  readonly condition: string
  readonly instrument: string
  readonly range: string
  readonly shows: Quantity | string
  readonly date?: string
}

export interface JobSheet extends SheetHead {
  readonly sheet: 'job'
  readonly instrument: {
    readonly set: string
    readonly 'found by'?: string
    readonly sure?: Quantity
    readonly mark?: string | number
  }
  readonly opened: string
  readonly closed?: string
  readonly line?: string
  readonly found: { readonly moves: readonly PlacedMove[]; readonly readings: readonly ReadingSpec[] }
  readonly moves: readonly PlacedMove[]
  readonly left: { readonly verdicts: readonly unknown[]; readonly readings: readonly ReadingSpec[] }
  readonly photos: readonly string[]
}

export interface CircuitSheet extends SheetHead {
  readonly sheet: 'circuit'
  readonly parts: Readonly<Record<string, PartSpec>>
  readonly frequency?: Quantity
  readonly source?: string
  readonly grade?: string
}

export type Sheet = SetSheet | UnitSheet | LineSheet | PremisesSheet | RewireSheet | JobSheet | CircuitSheet
