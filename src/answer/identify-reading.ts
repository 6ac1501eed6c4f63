/** What a person writes of a reading on the bench, in words. */
import type { Finding } from '../identify/evidence.ts'
import type { Pair } from '../identify/expected.ts'
import { NO_TERMINAL, OPEN } from '../identify/outcomes.ts'
import { CONDITION_WORDS, readCondition, writeCondition } from '../netlist/condition.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { readQuantity } from '../quantities/quantity.ts'
import { nearestName } from './nearest-name.ts'

const TERMINAL = /^[A-Z]+[1-9][0-9]*$/
const HOOKS = ['on-hook', 'off-hook'] as const
const EXAMPLE = '`A3 A4 on-hook 0.2 Ω`, `A3 A4 off-hook open`, or `A3 A4 no such terminal`'
/** Words for a terminal that is not there. */
const ABSENT = new Set([NO_TERMINAL, 'no terminal', 'absent', 'not there', 'missing', 'none'])
/** Words for a reading beyond all ranges. */
const OPENS = new Set([OPEN, 'ol', 'o.l', 'infinite', '∞'])

/**
 * `A3 A4 on-hook 0.2 Ω`: red, black, condition (on-hook where left out), what was shown.
 *
 * @param open ohms above which a reading counts as open
 * @throws ProblemError naming the word that is wrong
 */
export function readingFrom(text: string, open: number = Number.POSITIVE_INFINITY): Finding {
  const words = text.trim().split(/\s+/)
  const [red = '', black = '', third = ''] = words
  for (const terminal of [red, black]) {
    if (!TERMINAL.test(terminal)) refuseTerminal(text, terminal)
  }
  if (red === black) refuseReading(text, `\`${red}\` twice`)
  const isCondition = /^(on|off)-hook/.test(third)
  if (!isCondition) refuseCondition(text, words.slice(2))
  const condition = isCondition ? third : 'on-hook'
  const shown = words.slice(isCondition ? 3 : 2).join(' ')
  return shownAt(pairOf(red, black, condition, text), shown, text, open)
}

function refuseTerminal(text: string, written: string): void {
  const meant = written.toUpperCase()
  const found = written === '' ? 'one terminal only' : `\`${written}\`, which is no terminal`
  refuseReading(text, found, undefined, TERMINAL.test(meant) ? `perhaps \`${meant}\`` : undefined)
}

/** Refuses a word that stands where a condition does and is neither one nor what a meter shows. */
function refuseCondition(text: string, words: readonly string[]): void {
  const [first = ''] = words
  const shown = words.join(' ').toLowerCase()
  if (!/^\p{L}/u.test(first) || ABSENT.has(shown) || OPENS.has(shown)) return
  const [head = '', ...states] = first.split('/')
  const near = nearestName(head.toLowerCase(), HOOKS) ?? HOOKS.find((one) => one === head.toLowerCase())
  // a single word is rather what the meter showed
  if ((words.length < 2 && near === undefined) || /^not?$/i.test(first)) return
  refuseReading(
    text,
    `the condition \`${first}\``,
    `${CONDITIONS}; on-hook where it is left out`,
    near === undefined ? undefined : `perhaps \`${[near, ...states].join('/')}\``,
  )
}

function pairOf(red: string, black: string, words: string, text: string): Pair {
  const read = readCondition(words)
  if (read === undefined || read.line !== 'idle') {
    const near = words.split('/').map((one) => nearest(one, DIALS))
    const mended = words
      .split('/')
      .map((one, k) => (CONDITION_WORDS.some((known) => known === one) ? one : near[k]))
    const isMended = read === undefined && mended.every((one) => one !== undefined)
    refuseReading(
      text,
      `the condition \`${words}\``,
      CONDITIONS,
      isMended ? `perhaps \`${mended.join('/')}\`` : undefined,
    )
  }
  return { red, black, condition: writeCondition(read) }
}

const DIALS = CONDITION_WORDS.slice(2).filter((one) => !['ringing', 'speech', 'idle'].includes(one))
const CONDITIONS = `on-hook or off-hook, then any of ${DIALS.join(', ')}`

function shownAt(pair: Pair, shown: string, text: string, open: number): Finding {
  const words = shown.trim().toLowerCase()
  if (ABSENT.has(words)) return { found: 'absent', pair }
  if (OPENS.has(words)) return { found: 'reading', pair, ohms: Number.POSITIVE_INFINITY, times: 1 }
  const read = readQuantity(shown.trim(), 'resistance', { min: 0 })
  if (!read.ok) {
    const { found, expected, mend } = read.fault
    refuseReading(text, found, expected, shownMend(words) ?? mend ?? SHOWN)
  }
  const { value } = read.quantity
  return { found: 'reading', pair, ohms: value > open ? Number.POSITIVE_INFINITY : value, times: 1 }
}

const SHOWN = 'write what the meter shows, such as `0.2 Ω`, `open` or `no such terminal`'

/** The usual slips: a comma where a point is due, no unit, a letter wrong. */
function shownMend(shown: string): string | undefined {
  const pointed = shown.replace(/^(\d+),(\d+)/, '$1.$2')
  const comma = pointed === shown ? '' : ', with a point, not a comma'
  if (/^(\d+\.?\d*|\.\d+)$/.test(pointed)) return `write \`${pointed} Ω\`${comma}, if ohms are meant`
  const [, number = '', unit = ''] = /^([\d.]+)\s*(\D+)$/.exec(pointed) ?? []
  if (comma !== '' && readQuantity(`${number} ${unit}`, 'resistance').ok)
    return `write it with a point, not a comma`
  // anything is near to a sign of one letter
  const near = shown.length > 2 ? nearest(shown, [...ABSENT, ...OPENS]) : undefined
  return near === undefined ? undefined : `perhaps \`${near}\``
}

function refuseReading(text: string, found: string, expected?: string, mend?: string): never {
  refuse({
    code: 'request-wrong',
    found: `the reading \`${text}\`: ${found}`,
    expected: expected ?? 'two terminals, the condition, and what the meter shows',
    mend: mend ?? `write ${EXAMPLE}`,
  })
}
