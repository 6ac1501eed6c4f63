/** What the test of the trial uses of `one-set.mjs`. */
export interface Tried {
  readonly truth: string
  readonly odd: boolean
  readonly unseen: boolean
  readonly noticed: boolean
  readonly asked: readonly string[]
  readonly stages: readonly {
    readonly readings: number
    readonly first: boolean
    readonly size: number
    readonly sure: boolean
    readonly probability: number
    readonly leading: string
  }[]
}
export interface TrialSet {
  readonly book: { readonly faults: readonly { readonly id: string }[] }
}
export function layTrialOut(laidOut: unknown, supply: unknown, withPairs: boolean): TrialSet
export function trySingles(set: TrialSet, laws: unknown, seed: number): readonly Tried[]
