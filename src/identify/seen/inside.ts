/** What can be seen with the case open: board or loom, slot, strips, straps, parts and their markings. */
import { formatExactly } from '../../quantities/format.ts'
import { readQuantity } from '../../quantities/quantity.ts'
import type { KnownSet } from '../known.ts'
import { readCount } from './outside.ts'
import { oneOfWords, type Sighting, yesNo } from './sighting.ts'

/** No unit, no sounder, no such part. */
const NONE = 'none'

/** Sightings that every set answers, answers drawn from the known sets. */
export function insideSightings(among: readonly KnownSet[]): readonly Sighting[] {
  return [
    {
      id: 'board',
      sort: 'board',
      asks: 'Are its parts on a printed board, or joined by a loom of wires?',
      answers: ['loom', 'board'],
      answerOf: ({ sheet }) =>
        sheet['built on'] === undefined ? Number.NaN : Number(sheet['built on'] === 'board'),
    },
    yesNo('slot', 'slot', 'Has it a slot for a plug-in unit?', ({ unit }) => unit !== undefined),
    oneOfWords(
      'unit',
      'unit',
      'Which plug-in unit is in it? none if there is none.',
      among,
      ({ unit }) => unit ?? NONE,
    ),
    oneOfWords('sounder', 'sounder', 'By what does it ring?', among, sounderOf),
    ...stripsOf(among).map((strip) => stripSighting(strip, among)),
    ...strapsOf(among).map((strap) => strapSighting(strap)),
    ...partsOf(among).map((part) => partSighting(part, among)),
    ...markedIn(among).map((part) => markingSighting(part, among)),
  ]
}

/** A set with several sounders has one of them elsewhere in the house; which is seen, its sheet does not say. */
function sounderOf({ net }: KnownSet): string | undefined {
  const all = net.parts.filter(({ role }) => role === 'sounder').map(({ law }) => law.kind)
  return all.length > 1 ? undefined : (all[0] ?? NONE)
}

/** How many screws a strip has, 0 where it is not there. */
export function stripSighting(strip: string, among: readonly KnownSet[]): Sighting {
  return oneOfWords(
    `strip.${strip}`,
    'strip',
    `How many screws has strip ${strip}? 0 if there is no strip of that letter.`,
    among,
    ({ sheet }) => `${lengthOf(sheet.strips, strip)}`,
    { read: readCount },
  )
}

/** How many terminals a strip has. */
export function lengthOf(strips: Readonly<Record<string, number>>, strip: string): number {
  return Object.hasOwn(strips, strip) ? (strips[strip] ?? 0) : 0
}

/** Whether two terminals are strapped; what a board joins is not easily seen. */
export function strapSighting(strap: string): Sighting {
  const [from = '', to = ''] = strap.split('-')
  return yesNo(`strap.${strap}`, 'strap', `Is there a strap from ${from} to ${to}?`, ({ sheet }) => {
    const found = Object.entries(sheet.straps).find(([name]) => name === strap || name === `${to}-${from}`)
    return found === undefined ? false : found[1].hold === 'board' ? undefined : true
  })
}

/** Whether a part of that name is there. */
export function partSighting(part: string, among: readonly KnownSet[]): Sighting {
  const example = among.find(({ sheet }) => Object.hasOwn(sheet.parts, part))?.sheet.parts[part]
  const what = example === undefined ? '' : ` (${[example.kind, ...valuesIn(example)].join(', ')})`
  return yesNo(`part.${part}`, 'part', `Is there a part such as ${part}${what}?`, ({ sheet }) =>
    Object.hasOwn(sheet.parts, part),
  )
}

/** What a part is marked with, in ohms. */
export function markingSighting(part: string, among: readonly KnownSet[]): Sighting {
  return oneOfWords(
    `marking.${part}`,
    'marking',
    `With what is ${part} marked, in ohms or by its bands? none if there is no such part.`,
    among,
    (known) => {
      const value = markedValue(known, part)
      return value === undefined ? NONE : formatExactly(value, 'Ω')
    },
    { read: (words, answers) => readMarking(words, answers) },
  )
}

/** So near are two marked values one and the same. */
const SAME = 0.01

function readMarking(words: string, answers: readonly string[]): number | undefined {
  const read = readQuantity(words, 'resistance')
  if (!read.ok) return undefined
  const { value } = read.quantity
  const at = answers.findIndex((answer) => {
    const one = readQuantity(answer, 'resistance')
    return one.ok && Math.abs(one.quantity.value - value) <= SAME * value
  })
  return at < 0 ? answers.length - 1 : at
}

function markedValue({ net }: KnownSet, part: string): number | undefined {
  const found = net.parts.find(({ name, law }) => name === part && law.marking !== undefined)
  return found?.law.marking?.(found.spec).value
}

const sortedOf = (words: Iterable<string>): readonly string[] => [...new Set(words)].sort()

const stripsOf = (among: readonly KnownSet[]): readonly string[] =>
  sortedOf(among.flatMap(({ sheet }) => Object.keys(sheet.strips)))

/** Every strap once, whichever way round the sheets name it. */
function strapsOf(among: readonly KnownSet[]): readonly string[] {
  const known = new Map<string, string>()
  for (const strap of sortedOf(among.flatMap(({ sheet }) => Object.keys(sheet.straps)))) {
    const key = strap.split('-').sort().join('-')
    if (!known.has(key)) known.set(key, strap)
  }
  return [...known.values()]
}

const partsOf = (among: readonly KnownSet[]): readonly string[] =>
  sortedOf(among.flatMap(({ sheet }) => Object.keys(sheet.parts)))

const markedIn = (among: readonly KnownSet[]): readonly string[] =>
  sortedOf(
    among.flatMap(({ net }) =>
      net.parts.flatMap(({ name, sort, law }) =>
        law.marking === undefined || sort !== 'part' ? [] : [name],
      ),
    ),
  )

/** The values of a part as its sheet writes them. */
function valuesIn(spec: object): readonly string[] {
  return Object.values(spec).flatMap((value: unknown) =>
    typeof value === 'object' && value !== null && 'text' in value && typeof value.text === 'string'
      ? [value.text]
      : [],
  )
}
