/** What a person writes of what can be seen of a set on the bench. */
import type { Finding } from '../identify/evidence.ts'
import type { KnownSet } from '../identify/known.ts'
import { markingSighting, partSighting, strapSighting, stripSighting } from '../identify/seen/inside.ts'
import { answerMeant, OTHER, type Sighting } from '../identify/seen/sighting.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'

/** What is answered when nobody looked. */
const SKIPS = new Set(['not looked', 'skip', '?'])

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
  if (answer === '') refuseUnsaid(text, at >= 0, sighting)
  if (isSkipped(answer)) return undefined
  return answered(sighting, answer, text)
}

/** Short forms whose answer stands behind a colon. */
const BY_COLON = new Set(['strip', 'marking'])

/** Nobody said what was seen: a person who did not look says so. */
function refuseUnsaid(text: string, isNamed: boolean, { id, sort, answers }: Sighting): never {
  const name = id.slice(id.indexOf('.') + 1)
  const begun = BY_COLON.has(sort) ? `${sort}=${name}:` : `${id}=`
  const example = answers.findLast((one) => one !== OTHER) ?? ''
  refuse({
    code: 'request-wrong',
    found: `\`${text}\`${isNamed ? ', with nothing that was seen' : ', without `=` and what was seen'}`,
    expected: `\`${begun}\` and one of ${answers.join(', ')}, or \`not looked\``,
    mend: `for example \`${begun}${example}\``,
  })
}

/** The finding of an answer to a sighting. @throws ProblemError for words that are no answer */
function answered(sighting: Sighting, answer: string, text: string): Finding {
  const meant = answerMeant(sighting, answer) ?? begunBy(sighting, answer)
  if (meant !== undefined) return { found: 'sighting', sighting, answer: meant }
  const near = nearest(answer, sighting.answers)
  refuse({
    code: 'request-wrong',
    found: `\`${text}\``,
    expected: `${sighting.answers.join(', ')}, or \`not looked\``,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** The only answer that begins so. */
function begunBy({ answers }: Sighting, letters: string): number | undefined {
  const begun = answers.filter((one) => one.toLowerCase().startsWith(letters.toLowerCase()))
  const [only = '', ...others] = begun
  return begun.length === 0 || others.length > 0 ? undefined : answers.indexOf(only)
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
