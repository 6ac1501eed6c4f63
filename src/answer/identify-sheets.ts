/** The sheets that a set on the bench is compared with: every set in reach, and what rewires make of them if asked. */
import type { Sheeted } from '../identify/known.ts'
import { type Problem, ProblemError } from '../problem.ts'
import type { UnitSheet } from '../sheet/model.ts'
import { readSheet } from '../sheet/read.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { rewired } from './standing.ts'

/** Sheets to compare with, and what is wrong with those that are left out. */
export interface InReach {
  readonly sheets: readonly Sheeted[]
  readonly problems: readonly Problem[]
}

/** Every sound set in reach. One that cannot be read is left out with a warning: the others can still be compared. */
export function sheetsInReach(shelf: Shelf, rewires: boolean): InReach {
  const problems: Problem[] = []
  const leave = (all: readonly Problem[]): void => {
    problems.push(...all.map((one) => ({ ...one, severity: 'warning' as const })))
  }
  const sets = shelf.names('set').flatMap((name): Sheeted[] => {
    const text = shelf.find('set', name)
    if (text === undefined) return []
    const { sheet, problems: own } = readSheet(text, shelf, 'set')
    if (sheet === undefined) leave(own)
    return sheet === undefined ? [] : [{ sheet }]
  })
  const made = !rewires
    ? []
    : shelf.names('rewire').flatMap((name): Sheeted[] => {
        const text = shelf.find('rewire', name)
        const read = text === undefined ? undefined : readSheet(text, shelf, 'rewire')
        if (read?.sheet === undefined) {
          leave(read?.problems ?? [])
          return []
        }
        try {
          return [{ sheet: rewired(read.sheet, shelf).set, rewire: name }]
        } catch (error) {
          if (!(error instanceof ProblemError)) throw error
          leave(error.problems)
          return []
        }
      })
  return { sheets: [...sets, ...made], problems }
}

/** Plug-in units that may be in a slot. */
export function unitsInReach(shelf: Shelf): readonly UnitSheet[] {
  return shelf.names('unit').flatMap((name) => {
    const text = shelf.find('unit', name)
    return (text === undefined ? undefined : readSheet(text, shelf, 'unit').sheet) ?? []
  })
}
