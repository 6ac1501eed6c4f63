/** What a person writes of a set on the bench: readings and sightings, in words. */
import type { Finding } from '../identify/evidence.ts'
import type { Pair } from '../identify/expected.ts'
import type { KnownSet } from '../identify/known.ts'
import { NO_TERMINAL, OPEN } from '../identify/outcomes.ts'
import { markingSighting, partSighting, strapSighting, stripSighting } from '../identify/seen/inside.ts'
import { answerMeant, type Sighting } from '../identify/seen/sighting.ts'
import { CONDITION_WORDS, readCondition, writeCondition } from '../netlist/condition.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { readQuantity } from '../quantities/quantity.ts'

const TERMINAL = /^[A-Z]+[1-9][0-9]*$/
const EXAMPLE = '`A3 A4 on-hook 0.2 Ω`, `A3 A4 off-hook open`, or `A3 A4 no such terminal`'
/** Words for a terminal that is not there. */
const ABSENT = new Set([NO_TERMINAL, 'absent', 'not there', 'none'])
/** Words for a reading beyond all ranges. */
const OPENS = new Set([OPEN, 'ol', 'o.l', 'infinite', '∞'])
/** What is answered when nobody looked. */
const SKIPS = new Set(['not looked', 'skip', '?', ''])

/**
 * `A3 A4 on-hook 0.2 Ω`: red, black, condition (on-hook where left out), what was shown.
 *
 * @param open ohms above which a reading counts as open
 * @throws ProblemError
 */
export function readingFrom(text: string, open: number = Number.POSITIVE_INFINITY): Finding {
  const words = text.trim().split(/\s+/)
  const [red = '', black = '', third = ''] = words
  for (const terminal of [red, black]) {
    if (!TERMINAL.test(terminal)) refuseReading(text, `\`${terminal}\`, which is no terminal`)
  }
  if (red === black) refuseReading(text, `\`${red}\` twice`)
  const condition = /^(on|off)-hook/.test(third) ? third : 'on-hook'
  const shown = words.slice(condition === third ? 3 : 2).join(' ')
  return shownAt(pairOf(red, black, condition, text), shown, text, open)
}

function pairOf(red: string, black: string, words: string, text: string): Pair {
  const read = readCondition(words)
  if (read === undefined || read.line !== 'idle')
    refuseReading(text, `the condition \`${words}\``, `on-hook or off-hook, then any of ${DIALS}`)
  return { red, black, condition: writeCondition(read) }
}

const DIALS = CONDITION_WORDS.slice(2)
  .filter((one) => !['ringing', 'speech', 'idle'].includes(one))
  .join(', ')

function shownAt(pair: Pair, shown: string, text: string, open: number): Finding {
  const words = shown.trim().toLowerCase()
  if (ABSENT.has(words)) return { found: 'absent', pair }
  if (OPENS.has(words)) return { found: 'reading', pair, ohms: Number.POSITIVE_INFINITY, times: 1 }
  const read = readQuantity(shown.trim(), 'resistance', { min: 0 })
  if (!read.ok) refuseReading(text, read.fault.found, read.fault.expected, read.fault.mend)
  const { value } = read.quantity
  return { found: 'reading', pair, ohms: value > open ? Number.POSITIVE_INFINITY : value, times: 1 }
}

function refuseReading(text: string, found: string, expected?: string, mend?: string): never {
  refuse({
    code: 'request-wrong',
    found: text === found ? `the reading ${found}` : `the reading \`${text}\`: ${found}`,
    expected: expected ?? 'two terminals, the condition, and what the meter shows',
    mend: mend ?? `write ${EXAMPLE}`,
  })
}

/** Whether somebody said that he did not look. */
export function isSkipped(words: string): boolean {
  return SKIPS.has(words.trim().toLowerCase())
}

/** `strap=B2-B3`, `slot=yes`, `strip=A:6`; undefined where nobody looked. @throws ProblemError */
export function sightingFrom(
  text: string,
  sightings: readonly Sighting[],
  known: readonly KnownSet[],
): Finding | undefined {
  const at = text.indexOf('=')
  const written = at < 0 ? text.trim() : text.slice(0, at).trim()
  const said = at < 0 ? '' : text.slice(at + 1).trim()
  const { id, answer } = unabridged(written, said)
  const sighting = sightings.find((one) => one.id === id) ?? madeFor(id, known)
  if (sighting === undefined) refuseSighting(text, id, sightings)
  if (isSkipped(answer) && at >= 0) return undefined
  return answered(sighting, answer, text)
}

/** The finding of an answer to a sighting. @throws ProblemError for words that are no answer */
function answered(sighting: Sighting, answer: string, text: string): Finding {
  const meant = answerMeant(sighting, answer)
  if (meant !== undefined) return { found: 'sighting', sighting, answer: meant }
  const near = nearest(answer, sighting.answers)
  refuse({
    code: 'request-wrong',
    found: `\`${text}\``,
    expected: `${sighting.answers.join(', ')}, or \`not looked\``,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** Short forms: `strap=B2-B3` is `strap.B2-B3=yes`, `no-part=bell-resistor`, `strip=A:6`, `marking=bell-resistor:3k3`. */
function unabridged(written: string, said: string): { readonly id: string; readonly answer: string } {
  const [, no, what] = /^(no-)?(strap|part)$/.exec(written) ?? []
  if (what !== undefined) {
    const [name = '', answer] = said.split(':', 2)
    return { id: `${what}.${name.trim()}`, answer: answer ?? (no === undefined ? 'yes' : 'no') }
  }
  if (written === 'strip' || written === 'marking') {
    const colon = said.indexOf(':')
    const name = colon < 0 ? said : said.slice(0, colon)
    return { id: `${written}.${name.trim()}`, answer: colon < 0 ? '' : said.slice(colon + 1).trim() }
  }
  return { id: written, answer: said }
}

/** A sighting of something that no known set has, where its name makes sense, or of a strap named the other way round. */
function madeFor(id: string, known: readonly KnownSet[]): Sighting | undefined {
  const dot = id.indexOf('.')
  const [sort, name] = [id.slice(0, dot), id.slice(dot + 1)]
  const [, from, to] = /^([A-Z]+[1-9][0-9]*)-([A-Z]+[1-9][0-9]*)$/.exec(name) ?? []
  // a strap has two ends
  if (sort === 'strap' && from !== to) return strapSighting(name)
  if (sort === 'strip' && /^[A-Z]+$/.test(name)) return stripSighting(name, known)
  const parts = new Set(known.flatMap(({ sheet }) => Object.keys(sheet.parts)))
  if (!parts.has(name)) return undefined
  return sort === 'part'
    ? partSighting(name, known)
    : sort === 'marking'
      ? markingSighting(name, known)
      : undefined
}

function refuseSighting(text: string, id: string, sightings: readonly Sighting[]): never {
  const ids = sightings.map((one) => one.id)
  const near = nearest(id, ids)
  const plain = ids.filter((one) => !one.includes('.'))
  refuse({
    code: 'request-wrong',
    found: `\`${text}\``,
    expected: `${plain.join(', ')}, strap, part, strip or marking, then \`=\` and what was seen`,
    mend: near === undefined ? 'for example `slot=yes` or `strap=B2-B3`' : `perhaps \`${near}\``,
  })
}
