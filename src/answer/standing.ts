/** What a request is about, standing somewhere: sets with their rewires, in premises, on a line. */
import { compile, type Installation, type StandingSet } from '../netlist/compile.ts'
import { readCondition } from '../netlist/condition.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { type Problem, ProblemError, refuse } from '../problem.ts'
import { describeMove } from '../rewire/describe-move.ts'
import { applyMoves } from '../rewire/moves.ts'
import type {
  LineSheet,
  PlacedMove,
  PlaceSpec,
  PremisesSheet,
  RewireSheet,
  SetSheet,
  UnitSheet,
} from '../sheet/model.ts'
import { readSheet } from '../sheet/read.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import { type Found, findSheet, findTarget, readSound } from './find.ts'
import { placeAmong, refuseSpot, type Spot, type SpotAsked } from './spot.ts'

/** Where a set stands when nothing else is said. */
const USUAL_PREMISES = 'workshop'

/** A request's subject by name or by text, and where it stands. */
export interface Where extends SpotAsked {
  readonly target: string
  readonly text?: SheetText
  /** Premises or a line, by name or by text; `none` for a set alone, its plug ends open. */
  readonly on?: string
  readonly onText?: SheetText
}

/** A subject, compiled where it stands. */
export interface Standing {
  readonly name: string
  readonly net: Netlist
  readonly installation: Installation
  /** Places that the request is about: all sets of premises, else the one set. */
  readonly places: readonly string[]
  /** Where on premises the one set was put. */
  readonly spot?: Spot
  readonly moves: readonly string[]
  /** Sheets of the sets that stand there, and of their rewires. */
  readonly sheets: readonly (SetSheet | RewireSheet)[]
  readonly warnings: readonly Problem[]
  /** The rewire that made one of its sets what it is, to try it with other moves. */
  readonly rewiring?: Rewiring
}

/** A set before its rewire, the moves, and where units are found. */
export interface Rewiring {
  readonly from: SetSheet
  readonly moves: readonly PlacedMove[]
  readonly unit: (name: string) => UnitSheet | undefined
}

/** A set with the moves that its rewire makes. */
export interface Rewirable {
  readonly set: SetSheet
  readonly moves: readonly PlacedMove[]
  /** The set’s and the rewire’s. */
  readonly sheets: readonly (SetSheet | RewireSheet)[]
  readonly warnings: readonly Problem[]
  readonly rewiring?: Rewiring
}

/** `--on none`: a set alone, with its plug ends open. */
export const NOWHERE = 'none'

const SUBJECTS = ['set', 'rewire', 'premises'] as const

/** The sheet that a request names. */
export function subjectOf(where: Where, shelf: Shelf): Found<SetSheet | RewireSheet | PremisesSheet> {
  if (where.text === undefined) return findTarget(where.target, SUBJECTS, shelf)
  const found = readSound(where.text, shelf)
  const { sheet } = found
  if (sheet.sheet === 'set' || sheet.sheet === 'rewire' || sheet.sheet === 'premises')
    return { ...found, sheet }
  refuse({
    code: 'request-wrong',
    found: `${where.text.file}, a ${sheet.sheet} sheet`,
    expected: `a ${SUBJECTS.join(', ')} sheet`,
    mend:
      sheet.sheet === 'circuit' ? 'a circuit is for `ringproof solve`' : 'name a set, a rewire or premises',
  })
}

/** Applies a rewire to its set; refused moves are thrown together. */
export function rewired(rewire: RewireSheet, shelf: Shelf): Rewirable {
  const { sheet: set, warnings } = findSheet('set', rewire.set, shelf, rewire.file)
  const unit = (name: string): UnitSheet | undefined => {
    const text = shelf.find('unit', name, rewire.file)
    return text === undefined ? undefined : readSheet(text, shelf, 'unit').sheet
  }
  const result = applyMoves(set, rewire.moves, unit, rewire.places)
  if (result.problems.length > 0) throw new ProblemError(result.problems)
  return {
    set: result.set,
    moves: rewire.moves,
    sheets: [rewire, set],
    warnings,
    rewiring: { from: set, moves: rewire.moves, unit },
  }
}

/** Compiles a subject where it stands. */
export function stand(where: Where, shelf: Shelf): Standing {
  const { sheet, warnings } = subjectOf(where, shelf)
  if (sheet.sheet === 'premises') {
    refuseSpot(where, `the premises ${sheet.name}`, setThere(sheet, where))
    return standPremises(sheet, warnings, where, shelf)
  }
  const one: Rewirable =
    sheet.sheet === 'set' ? { set: sheet, moves: [], sheets: [sheet], warnings: [] } : rewired(sheet, shelf)
  const rewiring = one.rewiring === undefined ? {} : { rewiring: one.rewiring }
  if (where.on === NOWHERE) {
    refuseSpot(where, `${sheet.name} that stands nowhere`)
    return { ...alone(sheet.name, one, warnings), ...rewiring }
  }
  const ground = groundOf(where, shelf)
  const { sets: others, sheets: theirSheets, warnings: theirs } = standingSets(ground.premises, shelf)
  const { spot, sets } = placeAmong(ground.premises, others, one.set, where)
  const installation: Installation = { name: sheet.name, ...ground, sets }
  return {
    name: sheet.name,
    net: compile(installation),
    installation,
    places: [spot.place],
    spot,
    moves: one.moves.map(describeMove),
    sheets: [...one.sheets, ...theirSheets],
    warnings: [...warnings, ...one.warnings, ...theirs],
    ...rewiring,
  }
}

/** How one asks for the set that stands at the place that was meant. */
function setThere({ name, sets }: PremisesSheet, { at }: Where): string | undefined {
  const there = at === undefined || !Object.hasOwn(sets, at) ? undefined : sets[at]
  return there === undefined
    ? undefined
    : `name the set that stands there: \`${there.rewire ?? there.set} --on ${name} --at ${at}\``
}

function alone(name: string, one: Rewirable, warnings: readonly Problem[]): Standing {
  const place = one.set.name
  const installation: Installation = { name, sets: { [place]: { set: one.set } } }
  return {
    name,
    net: compile(installation),
    installation,
    places: [place],
    moves: one.moves.map(describeMove),
    sheets: one.sheets,
    warnings: [...warnings, ...one.warnings],
  }
}

function standPremises(
  premises: PremisesSheet,
  warnings: readonly Problem[],
  where: Where,
  shelf: Shelf,
): Standing {
  const line = lineOf(where, shelf) ?? findSheet('line', premises.line, shelf, premises.file).sheet
  const { sets, sheets, warnings: theirs } = standingSets(premises, shelf)
  const installation: Installation = { name: premises.name, premises, line, sets }
  const net = compile(installation)
  const all = [...warnings, ...theirs]
  return {
    name: premises.name,
    net,
    installation,
    places: Object.keys(sets),
    moves: [],
    sheets,
    warnings: all,
  }
}

/** The sets of premises, with the warnings of their sheets, each once. */
export function standingSets(
  premises: PremisesSheet,
  shelf: Shelf,
): {
  readonly sets: Record<string, StandingSet>
  readonly sheets: readonly (SetSheet | RewireSheet)[]
  readonly warnings: readonly Problem[]
} {
  const sets: Record<string, StandingSet> = {}
  const all = new Map<string, Problem>()
  const sheets: (SetSheet | RewireSheet)[] = []
  for (const [place, spec] of Object.entries(premises.sets)) {
    const said = spec.condition === undefined ? undefined : readCondition(spec.condition)
    const {
      set,
      warnings,
      sheets: own,
    } = spec.rewire === undefined
      ? plainSet(findSheet('set', spec.set, shelf, premises.file))
      : rewiredThere(premises, place, spec, shelf)
    for (const one of warnings) all.set(JSON.stringify(one), one)
    sheets.push(...own)
    const condition = said && { hook: said.hook, dial: said.dial, key: said.key }
    sets[place] = { set, in: spec.in, reversed: spec.reversed ?? false, ...(condition ? { condition } : {}) }
  }
  return { sets, sheets, warnings: [...all.values()] }
}

type Placed = Pick<Rewirable, 'set' | 'sheets' | 'warnings'>

const plainSet = ({ sheet, warnings }: Found<SetSheet>): Placed => ({
  set: sheet,
  sheets: [sheet],
  warnings,
})

/** A set in premises after its rewire, which must be a rewire of that very set. */
function rewiredThere(premises: PremisesSheet, place: string, spec: PlaceSpec, shelf: Shelf): Placed {
  const { sheet, warnings } = findSheet('rewire', spec.rewire ?? '', shelf, premises.file)
  if (sheet.set === spec.set) {
    const one = rewired(sheet, shelf)
    return { set: one.set, sheets: one.sheets, warnings: [...warnings, ...one.warnings] }
  }
  const at = premises.places.get(`sets.${place}`)
  refuse({
    code: 'name-unknown',
    found: `the rewire \`${sheet.name}\`, which is for the set \`${sheet.set}\``,
    expected: `a rewire of the set \`${spec.set}\``,
    mend: `write \`set: ${sheet.set}\`, or take another rewire`,
    ...(at === undefined ? {} : { place: at }),
  })
}

/** The line that `on` names, if it names one. */
function lineOf(where: Where, shelf: Shelf): LineSheet | undefined {
  if (where.onText !== undefined) {
    const { sheet } = readSound(where.onText, shelf)
    return sheet.sheet === 'line' ? sheet : undefined
  }
  if (where.on === undefined) return undefined
  const [head, tail] = where.on.split('/')
  const text = head === 'premises' ? undefined : shelf.find('line', tail ?? where.on)
  return text === undefined ? undefined : readSound(text, shelf, 'line').sheet
}

/** Premises and line of a request; those that are usual where it says nothing. */
export function groundOf(where: Where, shelf: Shelf): { premises: PremisesSheet; line: LineSheet } {
  const line = lineOf(where, shelf)
  const premises =
    line !== undefined || (where.on === undefined && where.onText === undefined)
      ? findSheet('premises', USUAL_PREMISES, shelf).sheet
      : premisesOf(where, shelf)
  return { premises, line: line ?? findSheet('line', premises.line, shelf, premises.file).sheet }
}

function premisesOf(where: Where, shelf: Shelf): PremisesSheet {
  if (where.onText !== undefined) return readSound(where.onText, shelf, 'premises').sheet
  // a line of that name would have been found before; it is named among what is expected
  const { sheet } = findTarget(where.on ?? USUAL_PREMISES, ['premises', 'line'], shelf)
  if (sheet.sheet === 'premises') return sheet
  return findSheet('premises', USUAL_PREMISES, shelf).sheet
}
