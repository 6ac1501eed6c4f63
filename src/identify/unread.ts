/**
 * The straps of a known set of which nothing was read or seen. There somebody may have changed it, and every finding
 * would still be what the set's own is. Straps are what people move; those of a board they do not.
 */
import type { Finding } from './evidence.ts'
import type { KnownSet } from './known.ts'
import { wayIn } from './way.ts'

/** Straps of which no finding tells, by their names. */
export function unreadStraps(known: KnownSet, findings: readonly Finding[]): readonly string[] {
  const told = toldOf(known, findings)
  return movable(known).filter((name) => !told.has(name))
}

/** The share of a set's straps of which no finding tells, 0 to 1; 0 of a set without straps. */
export function unreadShare(known: KnownSet, findings: readonly Finding[]): number {
  return unreadStraps(known, findings).length / Math.max(1, movable(known).length)
}

function movable({ sheet }: KnownSet): readonly string[] {
  return Object.entries(sheet.straps).flatMap(([name, { hold }]) => (hold === 'board' ? [] : [name]))
}

function toldOf(known: KnownSet, findings: readonly Finding[]): ReadonlySet<string> {
  return new Set(
    findings.flatMap((one): readonly string[] => {
      if (one.found === 'reading')
        return wayIn(known, one.pair).map((branch) => known.net.branches[branch]?.part.name ?? '')
      if (one.found === 'absent' || one.sighting.sort !== 'strap') return []
      // whoever looked at a strap has seen whether it is there
      const name = one.sighting.id.slice(one.sighting.id.indexOf('.') + 1)
      return [name, name.split('-').reverse().join('-')]
    }),
  )
}
