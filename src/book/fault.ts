/** A single fault as the book holds it: what is wrong at the bench, and what that does to the network. */
import type { Change } from '../figures/variants.ts'
import type { FaultFamily } from '../parts/kind.ts'

/** In what way a thing is wrong. A near miss names the right part; a match names the right family too. */
export type Family = FaultFamily | 'crossed' | 'one-off' | 'missing' | 'extra' | 'reversed'

/** One fault. */
export interface BookFault {
  /** Unique in its book: `sedge/coil.a open`, `sedge/handset.r2 one-off B3`. */
  readonly id: string
  /** Ids of the parts, cores, straps and contacts that it befalls, as the netlist names them; the first one leads. */
  readonly subjects: readonly string[]
  readonly family: Family
  /** For a person: "winding a of the coil is open". */
  readonly says: string
  /** What eye, hand or ear would find. */
  readonly sign: string
  /** What mends it. */
  readonly mend: string
  /** How often beside the others, before anything is known, and where that is from. */
  readonly weight: number
  readonly source: string
  /** What it does to the network, all at once. */
  readonly changes: readonly Change[]
}
