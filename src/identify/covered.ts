/** Which straps, contacts and parts of a set readings have led through: a change in one of them would have shown. */
import type { Finding } from './evidence.ts'
import type { Pair } from './expected.ts'
import type { KnownSet } from './known.ts'
import { unreadStraps } from './unread.ts'
import { wayIn } from './way.ts'

/** What is covered already. */
export interface Covered {
  readonly terminals: ReadonlySet<string>
  /** What a reading of a pair adds: the straps, contacts and parts that it would lead through first, weighed. */
  adds(pair: Pair): number
  /** Straps of the set of which nothing was read or seen, by their names; those of a board are not moved. */
  readonly unread: readonly string[]
}

/** What a strap, or anything else, adds that no reading has led through: straps are what people move. */
const STRAP = 1
const PART = 0.4

/** What the readings so far cover of the set that leads; only their terminals while none does. */
export function coveredBy(findings: readonly Finding[], lead: KnownSet | undefined): Covered {
  const wayOf = (pair: Pair): readonly number[] => (lead === undefined ? [] : wayIn(lead, pair))
  const pairs = findings.flatMap((one) => (one.found === 'reading' ? [one.pair] : []))
  const covered = new Set(pairs.flatMap(wayOf))
  const isStrap = (branch: number): boolean => lead?.net.branches[branch]?.part.sort === 'strap'
  const fresh = (branch: number): number => (covered.has(branch) ? 0 : isStrap(branch) ? STRAP : PART)
  return {
    terminals: new Set(pairs.flatMap(({ red, black }) => [red, black])),
    adds: (pair) => wayOf(pair).reduce((sum, branch) => sum + fresh(branch), 0),
    unread: lead === undefined ? [] : unreadStraps(lead, findings),
  }
}
