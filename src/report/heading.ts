/** First line and cautions that answers share. */
import type { Envelope } from '../answer/answer.ts'
import type { Stands } from '../answer/stands.ts'
import { cautionText } from '../cautions.ts'
import { formatExactly } from '../quantities/format.ts'
import type { Page } from './paint.ts'
import { wrap } from './wrap.ts'

/** The name of an answer without its version: `check`. */
export function answerName({ ringproof }: Envelope): string {
  return ringproof.replace(/\/.*$/, '')
}

/** Keys whose value needs no word before it. */
const BARE = new Set(['target', 'name', 'found', 'what', 'condition'])
const WORDS: Readonly<Record<string, string>> = { proposed: 'with', frequency: 'at' }

/** What was asked, as understood: `check sedge on workshop`. */
export function heading(answer: Envelope, page: Page): string[] {
  const command = answerName(answer)
  const words = [command]
  for (const [key, value] of Object.entries(answer.request)) {
    const shown = key === 'frequency' && typeof value === 'number' ? formatExactly(value, 'Hz') : value
    if (typeof shown !== 'string' && typeof shown !== 'number') continue
    words.push(BARE.has(key) || key === command ? `${shown}` : `${WORDS[key] ?? key} ${shown}`)
  }
  return [
    ...wrap(words.join(' '), page.width).map((line) => page.paint.bold(line)),
    ...spotLines(answer, page),
    '',
  ]
}

const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth'.split(
  ' ',
)

/** Where a set that was asked for by its own name was put, unless it stands alone where nothing was said. */
function spotLines({ stands, request }: Envelope, page: Page): string[] {
  if (stands?.asked === undefined) return []
  const isSaid = request['at'] !== undefined || request['in'] !== undefined
  return stands.sets.length === 1 && !isSaid ? [] : wrap(spotText(stands.asked, stands), page.width)
}

function spotText(
  { place, socket, 'in place of': other }: NonNullable<Stands['asked']>,
  stands: Stands,
): string {
  const count = stands.sets.length
  const where = [`at the place ${place}`, socket === null ? 'in no socket' : `in the socket ${socket}`].join(
    ', ',
  )
  if (other !== undefined) return `in place of the ${other}, ${where}`
  return count === 1 ? `alone, ${where}` : `added as a ${ORDINALS[count - 1] ?? `${count}th`} set, ${where}`
}

/** The caution that goes with whatever reports ringing or leads a hand to wires. */
export function caution(page: Page): string[] {
  return [...wrap(`Caution: ${cautionText()}`, page.width).map((line) => page.paint.warn(line)), '']
}
