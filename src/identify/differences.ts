/** In what two known sets differ, by their sheets. */
import type { SetSheet } from '../sheet/model.ts'
import type { KnownSet } from './known.ts'

/** One difference: what it is about, and what each of the two has there. */
export interface Difference {
  /** `strap B2-B3`, `part bell`, `strip A`, `unit`, `core handset.r2`. */
  readonly what: string
  readonly first: string
  readonly other: string
}

const ABSENT = 'not there'

/** Everything that two sets differ in, in the order of the sheet. */
export function differencesOf(first: KnownSet, other: KnownSet): readonly Difference[] {
  const [p, q] = [first.sheet, other.sheet]
  return [
    ...ofWord('built on', p['built on'], q['built on']),
    ...ofMaps('strip', p.strips, q.strips, (length) => `${length} screws`),
    ...ofMaps('strap', p.straps, q.straps, ({ hold }) => `held by ${hold}`),
    ...ofWord('unit', unitText(first), unitText(other)),
    ...ofMaps('contact', p.contacts, q.contacts, specText),
    ...ofMaps('part', p.parts, q.parts, specText),
    ...ofMaps('core', coresOf(p), coresOf(q), (lands) => `on ${lands}`),
    ...ofWord('plug numbered by', p.plug?.['numbered by'], q.plug?.['numbered by']),
    ...ofMaps('part of the handset', p.handset, q.handset, specText),
  ]
}

function unitText({ unit }: KnownSet): string {
  return unit === undefined ? 'no slot' : (unit ?? 'empty slot')
}

function ofWord(what: string, first: string | undefined, other: string | undefined): readonly Difference[] {
  return first === other ? [] : [{ what, first: first ?? 'not said', other: other ?? 'not said' }]
}

function ofMaps<T>(
  what: string,
  first: Readonly<Record<string, T>>,
  other: Readonly<Record<string, T>>,
  text: (value: T) => string,
): readonly Difference[] {
  const names = [...new Set([...Object.keys(first), ...Object.keys(other)])]
  return names.flatMap((name): Difference[] => {
    const says = ({ [name]: value }: Readonly<Record<string, T>>): string =>
      value === undefined ? ABSENT : text(value)
    const [one, two] = [says(first), says(other)]
    return one === two ? [] : [{ what: `${what} ${name}`, first: one, other: two }]
  })
}

function coresOf({ cords }: SetSheet): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(cords).flatMap(([cord, { cores }]) =>
      Object.entries(cores).map(([core, { lands }]) => [`${cord}.${core}`, lands] as const),
    ),
  )
}

/** A part's words and quantities as its sheet writes them: `resistor, C1, C2, 3.3 kΩ ± 5 %`. */
function specText(spec: object): string {
  return Object.values(spec).map(valueText).join(', ')
}

function valueText(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value)
  if ('text' in value && typeof value.text === 'string') return value.text
  return Object.entries(value)
    .map(([key, one]) => `${key} ${valueText(one)}`)
    .join(', ')
}
