/** The chain of sheets that a set is based on. */
import type { Problem } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { readHead } from './head.ts'
import { dropped, merge } from './merge.ts'
import type { Page } from './page.ts'
import { entriesOf, type RawMap, type RawScalar, textOf, under } from './raw.ts'
import type { Shelf } from './shelf.ts'
import { readSource } from './source.ts'
import { oneOf, ticked, write, wrong } from './wording.ts'

/** A set and what it is based on, nearest first, each merged with its own bases. */
export interface Chain {
  /** Undefined when a base cannot be had: nothing more can be said about the sheet. */
  readonly merged?: RawMap
  readonly names: readonly string[]
  /** The set itself, then its bases, as if each were written in full. */
  readonly levels: readonly RawMap[]
  /** Pages of the bases, for excerpts. */
  readonly pages: readonly Page[]
  readonly problems: readonly Problem[]
}

/** Follows `based on` from a set to the end of the chain and merges back. */
export function followBases(root: RawMap, file: string, shelf: Shelf): Chain {
  const problems: Problem[] = []
  const pages: Page[] = []
  const names: string[] = []
  const own: RawMap[] = [root]
  const walked = [textOf(under(root, 'name')) ?? '']
  let from = file
  for (let base = baseOf(root); base !== undefined; ) {
    const circle = walked.indexOf(base.text)
    if (circle !== -1) {
      problems.push(circular(base, [...walked.slice(circle), base.text]))
      return { names, levels: [], pages, problems }
    }
    const text = shelf.find('set', base.text, from)
    if (text === undefined) {
      problems.push(missing(base, shelf.names('set', from), walked))
      return { names, levels: [], pages, problems }
    }
    const source = readSource(text)
    pages.push(source.page)
    problems.push(...source.problems)
    if (source.root === undefined) return { names, levels: [], pages, problems }
    const head = readHead(source.root, 'set')
    if ('problems' in head) return { names, levels: [], pages, problems: [...problems, ...head.problems] }
    names.push(base.text)
    walked.push(base.text)
    own.push(source.root)
    from = text.file
    base = baseOf(source.root)
  }
  return { names, ...mergeAll(own, problems), pages, problems }
}

/** The word behind `based on`, when it is a word. */
function baseOf(set: RawMap): RawScalar | undefined {
  const base = under(set, 'based on')
  return base?.shape === 'scalar' && textOf(base) !== undefined ? base : undefined
}

/** Merges from the end of the chain to its beginning. */
function mergeAll(own: readonly RawMap[], problems: Problem[]): Pick<Chain, 'merged' | 'levels'> {
  const levels: RawMap[] = []
  for (const set of own.toReversed()) {
    const base = levels[0]
    levels.unshift(base === undefined ? set : merge(base, set, problems))
  }
  const [merged] = levels
  return { levels, ...(merged === undefined ? {} : { merged }) }
}

function circular(base: RawScalar, chain: readonly string[]): Problem {
  const found = `the circle ${chain.map(ticked).join(' → ')}`
  return wrong('base-circular', base.place, found, 'a chain that ends', 'let one of them stand alone')
}

function missing(base: RawScalar, known: readonly string[], walked: readonly string[]): Problem {
  const others = known.filter((name) => !walked.includes(name))
  const mend = write(nearest(base.text, others))
  return wrong(
    'base-missing',
    base.place,
    `the set ${ticked(base.text)}`,
    oneOf(others, 'the name of a set in reach'),
    mend,
  )
}

/** `cord.core` → terminals on which the sheets of a chain land it, nearest first; parked cores land on none. */
export function landingsOf({ levels }: Chain): Record<string, readonly string[]> {
  const landings: Record<string, string[]> = Object.create(null)
  for (const [index, set] of levels.entries()) {
    for (const [cord, { value }] of entriesOf(under(set, 'cords'))) {
      for (const [core, entry] of entriesOf(under(value, 'cores'))) {
        const id = `${cord}.${core}`
        if (index === 0) landings[id] = []
        const on = textOf(under(entry.value, 'lands'))
        if (on !== undefined && on !== 'parked' && landings[id]?.includes(on) === false) landings[id].push(on)
      }
    }
  }
  return landings
}

/** The keys that a merged sheet no longer needs. */
export function withoutBases(merged: RawMap): RawMap {
  return dropped(merged, ['based on', 'without'])
}
