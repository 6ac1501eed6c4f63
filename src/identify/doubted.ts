/** A reading that does not fit what leads is read once more before anything else: most surprises are mistakes. */
import type { Finding } from './evidence.ts'
import type { Reader } from './expected.ts'
import { pairId } from './expected.ts'
import { fitOf } from './fits.ts'
import type { KnownSet } from './known.ts'
import type { Worthwhile } from './next.ts'

/** What reading once more is said to be worth, bits: it decides between a mistake and a set that is another one. */
const WORTH = 1

/** The last reading that was made once and does not fit the set that leads; undefined where there is none. */
export function doubted(
  findings: readonly Finding[],
  lead: KnownSet,
  reader: Reader,
  skipped: ReadonlySet<string>,
): Worthwhile | undefined {
  const found = findings.findLast(
    (one) =>
      one.found === 'reading' &&
      one.times === 1 &&
      !skipped.has(pairId(one.pair)) &&
      fitOf(one, lead, reader).agrees === false,
  )
  if (found?.found !== 'reading') return undefined
  return { question: { ask: 'reading', pair: found.pair }, bits: WORTH, effort: 1 }
}
