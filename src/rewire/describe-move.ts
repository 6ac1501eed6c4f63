/** A move in plain words. */
import type { PartSpec } from '../parts/kind.ts'
import type { Hold, Move } from '../sheet/model.ts'

const HELD: Readonly<Record<Hold, string>> = { screw: '', solder: ', soldered', board: ', on the board' }

/** What is done at the bench, as one would say it: `land core handset.r2 on B2`. */
export function describeMove(move: Move): string {
  switch (move.do) {
    case 'fit strap':
      return `fit strap ${move.what}${HELD[move.hold ?? 'screw']}`
    case 'lift strap':
      return `lift strap ${move.what}`
    case 'cut':
      return `cut strap ${move.what}`
    case 'land core':
      return `land core ${move.what} on ${move.onto}`
    case 'park core':
      return `park core ${move.what}, insulated, on nothing`
    case 'fit part':
      return `fit part ${move.what}: ${partInWords(move.with)}`
    case 'lift part':
      return `lift part ${move.what}`
    case 'bridge':
      return `bridge part ${move.what}`
    case 'plug unit':
      return `plug unit ${move.what} into slot ${move.in}`
    case 'pull unit':
      return `pull the unit out of slot ${move.what}`
  }
}

/** The kind, the two ends where there are two, and the quantities as they are written. */
function partInWords(spec: PartSpec): string {
  const { kind, ...rest } = spec
  const { from, to, ...values } = rest as Record<string, unknown>
  const ends = typeof from === 'string' && typeof to === 'string' ? [`from ${from} to ${to}`] : []
  const quantities = Object.entries(values).flatMap(([key, value]) => {
    const text = (value as { text?: unknown } | null)?.text
    return typeof text === 'string' ? [`${key} ${text}`] : []
  })
  return [[kind.replaceAll('-', ' '), ...ends].join(' '), ...quantities].join(', ')
}
