/** A sheet opened for the bench: which set, which moves, and where it stands. */
import { type Problem, refuse } from '../../problem.ts'
import { applyMoves } from '../../rewire/moves.ts'
import type { Move, PlacedMove, PremisesSheet } from '../../sheet/model.ts'
import { presentedBy } from '../../sheet/presented.ts'
import { readSheet } from '../../sheet/read.ts'
import type { SheetText, Shelf } from '../../sheet/shelf.ts'
import { findSheet } from '../find.ts'
import { nearestName } from '../nearest-name.ts'
import { openBench, unitsFrom } from './bench.ts'

/** What lies on the bench then. */
export interface OpenedSheet {
  readonly set: string
  readonly on?: string
  readonly at?: string
  readonly title?: string
  readonly moves: readonly Move[]
  readonly notes: readonly string[]
  /** The rewire that it was opened from. */
  readonly rewire?: { readonly name: string; readonly title?: string; readonly file: string }
}

/** A set by its name, a rewire with its moves, or of premises the set of one place. */
export interface SheetToOpen {
  readonly kind: 'set' | 'rewire' | 'premises'
  readonly name: string
  /** The place, where several sets stand. */
  readonly at?: string
}

/** Opens a sheet. @throws ProblemError for sheets that are not there or not sound, and where it is open which set is meant */
export function openSheet({ kind: which, name, at }: SheetToOpen, shelf: Shelf): OpenedSheet {
  if (which === 'premises') return openPlace(findSheet('premises', name, shelf).sheet, at, shelf)
  if (which === 'rewire') return openRewire(name, shelf)
  const { sheet } = findSheet('set', name, shelf)
  return { set: sheet.name, ...titled(sheet), moves: [], notes: sheet.notes ?? [] }
}

function openRewire(name: string, shelf: Shelf, from?: string): OpenedSheet {
  const { sheet } = findSheet('rewire', name, shelf, from)
  findSheet('set', sheet.set, shelf, sheet.file)
  return {
    set: sheet.set,
    ...titled(sheet),
    moves: sheet.moves.map(bare),
    notes: sheet.notes ?? [],
    rewire: { name: sheet.name, ...titled(sheet), file: sheet.file },
  }
}

function openPlace(premises: PremisesSheet, at: string | undefined, shelf: Shelf): OpenedSheet {
  const places = Object.keys(premises.sets)
  const place = at ?? (places.length === 1 ? places[0] : undefined)
  const spec = place !== undefined && Object.hasOwn(premises.sets, place) ? premises.sets[place] : undefined
  if (place === undefined || spec === undefined) {
    const near = at === undefined ? undefined : nearestName(at, places)
    refuse({
      code: 'request-wrong',
      found: at === undefined ? `${premises.name}, where ${countOf(places)}` : `the place \`${at}\``,
      expected: `a place where a set stands in ${premises.name}: ${places.join(', ') || 'there is none'}`,
      ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
    })
  }
  const opened =
    spec.rewire === undefined
      ? openSheet({ kind: 'set', name: spec.set }, shelf)
      : openRewire(spec.rewire, shelf, premises.file)
  return { ...opened, on: premises.name, at: place }
}

function countOf(places: readonly string[]): string {
  return places.length === 0 ? 'no set stands' : `${places.length} sets stand`
}

const titled = ({ title }: { readonly title?: string }): { readonly title?: string } =>
  title === undefined ? {} : { title }

/** A move without where it is written. */
function bare({ place: _, ...move }: PlacedMove): Move {
  return move
}

/** What a text presents itself as, and all that is wrong with it; of a rewire also what its set's wiring refuses. */
export function readProblems(
  text: SheetText,
  shelf: Shelf,
): { readonly kind?: string; readonly name?: string; readonly problems: readonly Problem[] } {
  const head = presentedBy(text.text)
  const { sheet, problems } = readSheet(text, shelf)
  const refused =
    sheet?.sheet === 'rewire' && shelf.find('set', sheet.set, sheet.file) !== undefined
      ? refusedIn(text, sheet.moves, shelf)
      : []
  return {
    ...(head === undefined ? {} : { kind: head.kind, name: head.name }),
    problems: [...problems, ...refused],
  }
}

/** Refused moves; none where the set itself cannot be read, which is its own sheet's trouble. */
function refusedIn(text: SheetText, moves: readonly PlacedMove[], shelf: Shelf): readonly Problem[] {
  const { sheet: rewire } = readSheet(text, shelf, 'rewire')
  const found = rewire && shelf.find('set', rewire.set, rewire.file)
  const set = found && readSheet(found, shelf, 'set').sheet
  if (rewire === undefined || set === undefined) return []
  // throws where the moves make no netlist
  openBench({ target: '', text, on: 'none' }, shelf).side(moves)
  // the bench knows where a move is written; the sheet knows where its keys are
  return applyMoves(set, moves, unitsFrom(shelf, set.file), rewire.places).problems
}
