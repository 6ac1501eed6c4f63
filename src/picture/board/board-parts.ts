/** Parts, contacts and the parts in the handset, as the terminal picture shows them. */
import { contact } from '../../parts/contact.ts'
import { kindOf } from '../../parts/index.ts'
import type { PartLaw, PartSpec } from '../../parts/kind.ts'
import type { ContactSpec, SetSheet } from '../../sheet/model.ts'
import type { BoardEnd, BoardPart } from './board.ts'

/** What the terminal picture knows of a part by itself. */
export type PlainPart = Omit<BoardPart, 'change' | 'bridged'>

const STAYS = 'a contact of the set: it stays where it is'

/** Contacts first, then parts on the base, then those in the handset. */
export function partsOf(set: SetSheet): readonly PlainPart[] {
  const contacts = Object.entries(set.contacts).map(([name, spec]) => contactPart(set, name, spec))
  const parts = Object.entries(set.parts).map(([name, spec]) => plainPart(set, name, spec, false))
  const inHandset = Object.entries(set.handset).map(([name, spec]) => plainPart(set, name, spec, true))
  return [...contacts, ...parts, ...inHandset]
}

function contactPart(set: SetSheet, name: string, spec: ContactSpec): PlainPart {
  const when = spec['closed when'] ?? spec['open when'] ?? ''
  const says = `contact, ${spec['closed when'] === undefined ? 'open' : 'closed'} ${SAYS_WHEN[when] ?? when}`
  const ends = endsOf(set, contact as unknown as PartLaw, { ...spec, kind: contact.kind } as PartSpec, false)
  return { thing: `part:${name}`, name, says, values: valuesOf(spec), ends, fixed: STAYS }
}

/** The words of a contact's gate, for a person. */
const SAYS_WHEN: Readonly<Record<string, string>> = {
  'off-hook': 'when the handset is up',
  'off-normal': 'when the dial is off its rest',
  make: 'between the pulses of the dial',
  break: 'in the pulses of the dial',
  key: 'when the key is pressed',
}

function plainPart(set: SetSheet, name: string, spec: PartSpec, inHandset: boolean): PlainPart {
  const law = kindOf(spec)
  return {
    thing: `part:${name}`,
    name,
    says: law.kind.replaceAll('-', ' '),
    values: valuesOf(spec),
    ends: endsOf(set, law, spec, inHandset),
  }
}

function endsOf(set: SetSheet, law: PartLaw, spec: PartSpec, inHandset: boolean): readonly BoardEnd[] {
  return law.branches(spec).flatMap(({ suffix, from, to }) => {
    const named = (end: string): Pick<BoardEnd, 'end' | 'branch'> =>
      suffix === '' ? { end } : { end: `${suffix} ${end}`, branch: suffix }
    const [first, second] = [placeOf(set, from, inHandset), placeOf(set, to, inHandset)]
    return [
      { ...named('from'), ...first, other: second.on },
      { ...named('to'), ...second, other: first.on },
    ]
  })
}

function placeOf(set: SetSheet, end: string, inHandset: boolean): Pick<BoardEnd, 'on' | 'joint' | 'core'> {
  if (inHandset) return { on: coreOf(set, end), joint: false, core: true }
  return { on: end, joint: end === 'earth' || set.joints.includes(end) }
}

/** Parts in the handset hang on its cords’ cores. */
function coreOf(set: SetSheet, core: string): string {
  const cord = Object.entries(set.cords).find(
    ([, one]) => one['ends in'] === 'handset' && Object.hasOwn(one.cores, core),
  )
  return `${cord?.[0] ?? 'handset'}.${core}`
}

/** Every quantity of a part as it is written, in the order of its sheet: `100 Ω, 0.1 µF`. */
export function valuesOf(spec: object): string {
  return textsIn(spec).join(', ')
}

function textsIn(spec: object): readonly string[] {
  return Object.entries(spec).flatMap(([key, value]: readonly [string, unknown]) => {
    if (typeof value !== 'object' || value === null) return []
    const { text } = value as { readonly text?: unknown }
    if (typeof text === 'string') return [text]
    const { value: first, at } = value as { readonly value?: object; readonly at?: object }
    if (first !== undefined && at !== undefined) return [textsIn({ first, at }).join(' at ')]
    const inner = Object.entries(value).flatMap(([name, one]: readonly [string, unknown]) => {
      if (typeof one !== 'object' || one === null) return []
      const { text: own } = one as { readonly text?: unknown }
      if (typeof own === 'string') return [own]
      const texts = textsIn(one)
      return texts.length === 0 ? [] : [`${name} ${texts.join(' ')}`]
    })
    return inner.length === 0 ? [] : [Array.isArray(value) ? `${key} ${inner.join(' ')}` : inner.join('; ')]
  })
}
