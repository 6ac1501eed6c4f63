/** The straps that readings imply, whatever the set is. */
import { createUnionFind, findRoot, union } from '../algebra/union-find.ts'
import { type Finding, standingFindings } from './evidence.ts'
import { byTerminal } from './pairs.ts'

/** What the readings say of straps. */
export interface ImpliedStraps {
  /** Terminals that read next to nothing with the handset down and the dial at rest, joined to each other. */
  readonly groups: readonly (readonly string[])[]
  /** Pairs that do not read so: no strap may join them. */
  readonly apart: readonly (readonly [string, string])[]
  /** Pairs that read next to nothing in one condition and not in another: a contact, no strap. */
  readonly contacts: readonly (readonly [string, string])[]
  /** Pairs that are read apart, though other readings join them: one of the readings is wrong. */
  readonly against: readonly (readonly [string, string])[]
}

/**
 * Groups terminals by the readings below `joined` ohms. A pair that is read in several conditions is strapped only if
 * it is joined in all of them. One that was read in a single condition may as well be a contact that is closed there.
 */
export function impliedStraps(findings: readonly Finding[], joined: number): ImpliedStraps {
  const byPair = new Map<string, { readonly ends: readonly [string, string]; readonly joins: boolean[] }>()
  for (const finding of standingFindings(findings)) {
    if (finding.found !== 'reading') continue
    const [one = '', other = ''] = [finding.pair.red, finding.pair.black].sort(byTerminal)
    const key = `${one} ${other}`
    const entry = byPair.get(key) ?? { ends: [one, other] as const, joins: [] }
    entry.joins.push(finding.ohms < joined)
    byPair.set(key, entry)
  }
  const all = [...byPair.values()]
  const strapped = all.filter(({ joins }) => joins.every((is) => is)).map(({ ends }) => ends)
  const apart = all.filter(({ joins }) => joins.every((is) => !is)).map(({ ends }) => ends)
  const mixed = all.filter(({ joins }) => joins.includes(true) && joins.includes(false))
  const terminals = [...new Set(all.flatMap(({ ends }) => ends))].sort(byTerminal)
  const sets = createUnionFind(terminals.length)
  const at = (terminal: string): number => terminals.indexOf(terminal)
  for (const [one, other] of strapped) union(sets, at(one), at(other))
  const isJoined = ([one, other]: readonly [string, string]): boolean =>
    findRoot(sets, at(one)) === findRoot(sets, at(other))
  const roots = [...new Set(terminals.map((_, k) => findRoot(sets, k)))]
  return {
    groups: roots
      .map((root) => terminals.filter((_, k) => findRoot(sets, k) === root))
      .filter((group) => group.length > 1),
    apart: apart.filter((pair) => !isJoined(pair)),
    contacts: mixed.map(({ ends }) => ends),
    against: apart.filter(isJoined),
  }
}
