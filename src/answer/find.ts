/** Finding and reading the sheets that a request names. */
import { CONDITION_WORDS, readCondition, type WrittenCondition } from '../netlist/condition.ts'
import { type Problem, ProblemError, refuse } from '../problem.ts'
import type { Sheet, SheetKind } from '../sheet/model.ts'
import { readSheet } from '../sheet/read.ts'
import { SHEET_KINDS } from '../sheet/schema.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import { nearestName } from './nearest-name.ts'

/** A sheet and the warnings that came with it. */
export interface Found<S extends Sheet = Sheet> {
  readonly sheet: S
  readonly warnings: readonly Problem[]
}

/** Reads a text; throws all its problems when it is not a sound sheet. */
export function readSound<K extends SheetKind>(
  text: SheetText,
  shelf: Shelf,
  kind?: K,
): Found<Extract<Sheet, { sheet: K }>> {
  const { sheet, problems } = readSheet(text, shelf, kind)
  if (sheet === undefined) throw new ProblemError(problems)
  return { sheet: sheet as Extract<Sheet, { sheet: K }>, warnings: problems }
}

/** Finds a sheet of one kind by its name. */
export function findSheet<K extends SheetKind>(
  kind: K,
  name: string,
  shelf: Shelf,
  from?: string,
): Found<Extract<Sheet, { sheet: K }>> {
  const text = shelf.find(kind, name, from)
  if (text === undefined) {
    const near = nearestName(name, shelf.names(kind, from))
    refuse({
      code: 'name-unknown',
      found: `\`${name}\``,
      expected: `the name of a ${kind} sheet in reach`,
      mend: near === undefined ? `\`ringproof list ${kind}s\` shows the names` : `perhaps \`${near}\``,
    })
  }
  return withTwins(readSound(text, shelf, kind), kind, name, shelf, from)
}

/** Two sheets of one kind and name: one is taken, and that is said. */
function withTwins<S extends Sheet>(
  found: Found<S>,
  kind: SheetKind,
  name: string,
  shelf: Shelf,
  from?: string,
): Found<S> {
  const files = shelf.twins?.(kind, name, from) ?? []
  if (files.length < 2) return found
  const twins: Problem = {
    code: 'key-doubled',
    severity: 'warning',
    found: `${files.length} sheets that are the ${kind} \`${name}\`: ${files.join(', ')}; the first is taken`,
    expected: 'one sheet of each kind and name in a folder',
    mend: 'change the `name:` of a copy, or ask by the file',
  }
  return { ...found, warnings: [...found.warnings, twins] }
}

/** Finds what a person named: `fescue`, `rewire/sedge-converted`; the kinds are tried in the order given. */
export function findTarget<K extends SheetKind>(
  target: string,
  kinds: readonly K[],
  shelf: Shelf,
): Found<Extract<Sheet, { sheet: K }>> {
  const [head = '', tail] = target.split('/')
  const wanted = tail === undefined ? kinds : kinds.filter((kind) => kind === head)
  const name = tail ?? head
  for (const kind of wanted) {
    const text = shelf.find(kind, name)
    if (text !== undefined) return withTwins(readSound(text, shelf, kind), kind, name, shelf)
  }
  const other = SHEET_KINDS.find((kind) => shelf.find(kind, name) !== undefined)
  const near = nearestName(
    name,
    wanted.flatMap((kind) => shelf.names(kind)),
  )
  refuse({
    code: other === undefined ? 'name-unknown' : 'request-wrong',
    found: other === undefined ? `\`${target}\`` : `\`${name}\`, a ${other} sheet`,
    expected: `the name of a ${kinds.join(', ')} sheet, or a file`,
    mend:
      near === undefined
        ? '`ringproof list sets` and its like show the names; one of your own is named by its file, or found with `--sheets`'
        : `perhaps \`${near}\``,
  })
}

/** Reads the condition of a request. */
export function conditionOfRequest(text: string | undefined, absent: string): WrittenCondition {
  const read = readCondition(text ?? absent)
  if (read !== undefined) return read
  refuse({
    code: 'request-wrong',
    found: `the condition \`${text}\``,
    expected: `on-hook or off-hook, then any of ${CONDITION_WORDS.slice(2).join(', ')}, with \`/\` between`,
    mend: 'for example `off-hook/speech`',
  })
}
