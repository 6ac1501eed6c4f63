import type { Problem } from '../problem.ts'
import type { Sheet, UnitSheet } from './model.ts'

/** What reading came to: the sheet, when nothing is wrong with it but warnings, and everything that is wrong. */
export interface Reading<S extends Sheet = Sheet> {
  readonly sheet?: S
  /** By place, the asking sheet's before those of its bases and units; at most 100 and one that counts the rest. */
  readonly problems: readonly Problem[]
}

/** Reads a unit that a slot names; undefined when no such sheet is in reach. */
export type ReadUnit = (name: string) => Reading<UnitSheet> | undefined
