/**
 * A set on the bench: its sheets read once, and judged again after every move. What comes out is what `check` says of
 * the rewire that makes the same moves.
 */
import { compile, type Installation } from '../../netlist/compile.ts'
import { type Problem, refuse } from '../../problem.ts'
import { describeMove } from '../../rewire/describe-move.ts'
import type { LineSheet, Move, PlacedMove, PremisesSheet, SetSheet, UnitSheet } from '../../sheet/model.ts'
import { readSheet } from '../../sheet/read.ts'
import type { Shelf } from '../../sheet/shelf.ts'
import { type Found, findSheet } from '../find.ts'
import { placeAmong } from '../spot.ts'
import { groundOf, NOWHERE, type Standing, standingSets, subjectOf, type Where } from '../standing.ts'
import { type Applied, moved } from './moved.ts'
import { type BenchSide, sideOf } from './side.ts'

/** A set with its sheets and its surroundings at hand. */
export interface Bench {
  /** The set as found, by the name of its sheet. */
  readonly set: string
  /** Moves of the rewire that was named; none of a set. */
  readonly moves: readonly PlacedMove[]
  /** The set after these moves, where it stands; the last few sides are kept. @throws ProblemError where they make no netlist */
  side(moves: readonly Move[]): BenchSide
}

/** So many sides are kept: the last ones, those to which an undo leads back, and all that one lead may lead to next. */
const KEPT = 32

/**
 * Reads a set, or a rewire with its set, and what it stands among.
 *
 * @throws ProblemError for sheets that are not there or not sound, and for premises, of which one set must be named
 */
export function openBench(where: Where, shelf: Shelf): Bench {
  const { name, set, moves, sheets, warnings } = subjectFrom(where, shelf)
  const unit = unitsFrom(shelf, set.file)
  const surroundings = where.on === NOWHERE ? undefined : surroundingsOf(where, shelf)
  const sides = new Map<string, BenchSide>()
  const standing = (applied: Applied): Standing => {
    const head = {
      name,
      moves: applied.made.map(describeMove),
      ...(applied.made.length === 0 ? {} : { rewiring: { from: set, moves: applied.made, unit } }),
    }
    if (surroundings === undefined) {
      const installation: Installation = { name, sets: { [set.name]: { set: applied.set } } }
      return { ...head, net: compile(installation), installation, places: [set.name], sheets, warnings }
    }
    const { premises, line, others } = surroundings
    const { spot, sets } = placeAmong(premises, others.sets, applied.set, where)
    const installation: Installation = { name, premises, line, sets }
    return {
      ...head,
      net: compile(installation),
      installation,
      places: [spot.place],
      spot,
      sheets: [...sheets, ...others.sheets],
      warnings: [...warnings, ...others.warnings],
    }
  }
  return {
    set: set.name,
    moves,
    side(wanted) {
      const key = JSON.stringify(wanted)
      const known = sides.get(key)
      sides.delete(key)
      const side = known ?? sideOf(where, set, moved(set, wanted, unit), standing)
      sides.set(key, side)
      const [oldest] = sides.keys()
      if (sides.size > KEPT && oldest !== undefined) sides.delete(oldest)
      return side
    },
  }
}

interface Subject {
  /** What the line’s own verdicts are about: the rewire that was named, else the set. */
  readonly name: string
  readonly set: SetSheet
  readonly moves: readonly PlacedMove[]
  readonly sheets: Standing['sheets']
  readonly warnings: readonly Problem[]
}

function subjectFrom(where: Where, shelf: Shelf): Subject {
  const { sheet, warnings } = subjectOf(where, shelf)
  if (sheet.sheet === 'set') return { name: sheet.name, set: sheet, moves: [], sheets: [sheet], warnings }
  if (sheet.sheet === 'premises') {
    refuse({
      code: 'request-wrong',
      found: `the premises ${sheet.name} for the bench`,
      expected: 'one set, or a rewire',
      mend: `name a set, and say where it stands with \`on\` and \`at\``,
    })
  }
  const { sheet: set, warnings: its }: Found<SetSheet> = findSheet('set', sheet.set, shelf, sheet.file)
  return { name: sheet.name, set, moves: sheet.moves, sheets: [sheet, set], warnings: [...warnings, ...its] }
}

/** Units by their names, each read once. */
export function unitsFrom(shelf: Shelf, from: string): (name: string) => UnitSheet | undefined {
  const read = new Map<string, UnitSheet | undefined>()
  return (name) => {
    if (read.has(name)) return read.get(name)
    const text = shelf.find('unit', name, from)
    const unit = text === undefined ? undefined : readSheet(text, shelf, 'unit').sheet
    read.set(name, unit)
    return unit
  }
}

interface Surroundings {
  readonly premises: PremisesSheet
  readonly line: LineSheet
  readonly others: ReturnType<typeof standingSets>
}

function surroundingsOf(where: Where, shelf: Shelf): Surroundings {
  const { premises, line } = groundOf(where, shelf)
  return { premises, line, others: standingSets(premises, shelf) }
}
