/** From the text of a sheet to the sheet, or to everything that is wrong with it, in one pass. */
import type { Problem } from '../problem.ts'
import { type Chain, followBases } from './bases.ts'
import { checkKeys } from './check-keys.ts'
import { checkLine } from './check-line.ts'
import { checkCircuit, checkUnit } from './check-network.ts'
import { checkPremises } from './check-premises.ts'
import { checkJob, checkRewire } from './check-record.ts'
import { checkSet } from './check-set.ts'
import { Checker } from './checker.ts'
import { finish } from './finish.ts'
import { readHead } from './head.ts'
import { parseRaw } from './issues.ts'
import type { Sheet, SheetKind, UnitSheet } from './model.ts'
import type { Page } from './page.ts'
import type { RawMap } from './raw.ts'
import type { Reading } from './reading.ts'
import { SCHEMAS } from './schema.ts'
import type { SheetText, Shelf } from './shelf.ts'
import { readSource } from './source.ts'
import { tidy } from './tidy.ts'

/**
 * Reads a sheet of any kind, or of the kind that is expected. Never throws for what a sheet holds: every problem
 * is in the list, with its place and the line in which it stands.
 *
 * @param shelf where bases, units and whatever else the sheet names are found
 */
export function readSheet<K extends SheetKind = SheetKind>(
  text: SheetText,
  shelf: Shelf,
  expected?: K,
): Reading<Extract<Sheet, { readonly sheet: K }>> {
  const { page, root, problems } = readSource(text)
  const pages = new Map([[page.file, page]])
  const reading = root === undefined ? { problems } : readRoot(root, pages, page.file, shelf, expected)
  const all = root === undefined ? problems : [...problems, ...reading.problems]
  const sheet = 'sheet' in reading && all.every(isWarning) ? reading.sheet : undefined
  const tidied = { problems: tidy(all, page.file, pages), ...(sheet === undefined ? {} : { sheet }) }
  return tidied as Reading<Extract<Sheet, { readonly sheet: K }>>
}

function isWarning({ severity }: Problem): boolean {
  return severity === 'warning'
}

function readRoot(
  root: RawMap,
  pages: Map<string, Page>,
  file: string,
  shelf: Shelf,
  expected: SheetKind | undefined,
): Reading {
  const head = readHead(root, expected)
  if ('problems' in head) return head
  const { which } = head
  const chain = which === 'set' ? followBases(root, file, shelf) : alone(root)
  for (const page of chain.pages) pages.set(page.file, page)
  const { merged } = chain
  if (merged === undefined) return { problems: chain.problems }
  const { value, problems, blamed } = parseRaw(SCHEMAS[which], merged)
  const check = new Checker(merged, shelf, file, blamed)
  const units = CHECKS[which](check) ?? new Map()
  const all = [...chain.problems, ...problems, ...checkKeys(SCHEMAS[which], merged), ...check.problems]
  if (value === undefined || !all.every(isWarning)) return { problems: all }
  return { sheet: finish(value, file, merged, chain, units), problems: all }
}

/** A sheet of a kind that knows no `based on`. */
function alone(root: RawMap): Chain {
  return { merged: root, names: [], levels: [root], pages: [], problems: [] }
}

/** What each kind's schema cannot see; sets answer with the units that their slots name. */
const CHECKS: Readonly<Record<SheetKind, (check: Checker) => ReadonlyMap<string, UnitSheet> | undefined>> = {
  set: (check) => checkSet(check, (name) => readUnit(name, check)),
  unit: silent(checkUnit),
  line: silent(checkLine),
  premises: silent(checkPremises),
  rewire: silent(checkRewire),
  job: silent(checkJob),
  circuit: silent(checkCircuit),
}

function silent(check: (check: Checker) => void): (check: Checker) => undefined {
  return (checker) => {
    check(checker)
    return undefined
  }
}

function readUnit(name: string, { shelf, file }: Checker): Reading<UnitSheet> | undefined {
  const text = shelf.find('unit', name, file)
  return text === undefined ? undefined : readSheet(text, shelf, 'unit')
}
