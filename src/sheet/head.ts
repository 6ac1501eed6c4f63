/** The first keys of a sheet, without which nothing else can be judged. */
import type { Problem } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SheetKind } from './model.ts'
import { type RawMap, textOf, under } from './raw.ts'
import { SHEET_KINDS } from './schema.ts'
import { oneOf, shownAs, ticked, write, wrong } from './wording.ts'

/** The kind of a sheet, or the problems for which it is not examined further. */
export type Head = { readonly which: SheetKind } | { readonly problems: readonly Problem[] }

/** Looks at version and kind. A sheet of another version is not examined: its keys may mean something else. */
export function readHead(root: RawMap, expected: SheetKind | undefined): Head {
  const problems = [...versionProblem(root), ...kindProblem(root, expected), ...baseProblem(root)]
  const which = SHEET_KINDS.find((word) => word === textOf(under(root, 'sheet')))
  return problems.length === 0 && which !== undefined ? { which } : { problems }
}

function versionProblem(root: RawMap): readonly Problem[] {
  const version = under(root, 'ringproof')
  // a missing one is a missing key like any other
  if (version === undefined || (version.shape === 'scalar' && version.value === 1)) return []
  return [
    wrong(
      'version-unknown',
      version.place,
      shownAs(version),
      'version `1` of the format',
      'write `ringproof: 1`',
    ),
  ]
}

function kindProblem(root: RawMap, expected: SheetKind | undefined): readonly Problem[] {
  const written = under(root, 'sheet')
  const words = expected === undefined ? SHEET_KINDS : [expected]
  if (written === undefined) return [missingKind(root, words)]
  const word = textOf(written) ?? ''
  if (words.some((one) => one === word)) return []
  const mend = write(words.length === 1 ? words[0] : nearest(word, words))
  return [wrong('sheet-kind-unknown', written.place, shownAs(written), oneOf(words, ''), mend)]
}

function missingKind(root: RawMap, words: readonly SheetKind[]): Problem {
  const misspelt = [...root.entries].find(([key]) => nearest(key, ['sheet']) !== undefined)
  if (misspelt !== undefined) {
    const [key, { place }] = misspelt
    return wrong('key-unknown', place, `the key ${ticked(key)}`, 'the key `sheet`', 'write `sheet`')
  }
  const expected = `the key \`sheet\` with ${oneOf(words, '')}`
  return wrong('key-missing', root.place, 'no key `sheet`', expected, `add \`sheet: ${words[0]}\``)
}

/** A misspelt `based on` leaves a sheet that lacks nearly everything: one problem, not fifty. */
function baseProblem(root: RawMap): readonly Problem[] {
  if (textOf(under(root, 'sheet')) !== 'set' || root.entries.has('based on')) return []
  return [...root.entries]
    .filter(([key]) => nearest(key, ['based on']) !== undefined)
    .map(([key, { place }]) =>
      wrong('key-unknown', place, `the key ${ticked(key)}`, 'the key `based on`', 'write `based on`'),
    )
}
