/** What the schema of a line cannot see. */
import type { Checker } from './checker.ts'
import { under } from './raw.ts'

/** A feed says its resistance or its current limit; without either it could melt the line. */
export function checkLine(check: Checker): void {
  const feed = under(check.root, 'feed')
  if (feed?.shape !== 'map') return
  if (under(feed, 'resistance') !== undefined || under(feed, 'current limit') !== undefined) return
  check.report(
    'key-missing',
    feed.place,
    'a feed with neither `resistance` nor `current limit`',
    'one of the two',
    'add `resistance: 400 Ω`, or what this line has',
  )
}
