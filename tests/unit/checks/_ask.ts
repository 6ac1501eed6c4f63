import { contextsOf } from 'ringproof/answer/check-answer'
import { stand } from 'ringproof/answer/standing'
import { CHECKS } from 'ringproof/checks/catalogue'
import type { CheckContext } from 'ringproof/checks/context'
import type { Verdict } from 'ringproof/checks/rule'
import type { SheetText, Shelf } from 'ringproof/sheet/shelf'
import { besides, DEMO } from '../../support/bench.ts'

/** What is asked: a target of the demo or a text, and where it stands. */
export interface Asked {
  readonly target?: string
  readonly text?: SheetText
  /** premises or a line of the demo, or the text of a line or premises */
  readonly on?: string
  readonly onText?: SheetText
  readonly shelf?: Shelf
}

/** Contexts of all places of what is asked. */
export function contexts({ target = '', shelf = DEMO, ...where }: Asked): readonly CheckContext[] {
  return contextsOf(stand({ target, ...where }, shelf))
}

/** The verdicts of one check on all places, and of no other check. */
export function ask(check: string, asked: Asked): readonly Verdict[] {
  const rule = CHECKS.find(({ id }) => id === check)
  if (rule === undefined) throw new Error(`no check is called ${check}`)
  return contexts(asked).flatMap((context, k) => (rule.once === true && k > 0 ? [] : rule.run(context)))
}

/** The one verdict of a check, of a subject where there are several. */
export function askOne(check: string, asked: Asked, subject?: string): Verdict {
  const found = ask(check, asked).filter((one) => subject === undefined || one.subject === subject)
  const [only] = found
  if (only === undefined || found.length > 1) throw new Error(`${check} has ${found.length} verdicts`)
  return only
}

/** The mend of a verdict that has one. */
export function mendOf(verdict: Verdict): string {
  if (!('mend' in verdict)) throw new Error(`${verdict.check} ${verdict.state}`)
  return verdict.mend
}

/** The figures that a verdict gives with its mend: as it is, and mended. */
export function mendedBy(verdict: Verdict): readonly { readonly now: number; readonly mended: number }[] {
  return (verdict.consequences ?? [])
    .filter(({ mended }) => mended !== undefined)
    .map(({ figure, mended }) => ({ now: figure.value ?? Number.NaN, mended: mended?.value ?? Number.NaN }))
}

/** The line of an exchange without cable; `more` are lines of its sheet. 50 V behind 400 Ω, 75 V at 25 Hz behind 400 Ω. */
export function lineText(
  {
    feed = '{voltage: 50 V, resistance: 400 Ω, negative: b wire, earth: positive pole}',
    ringing = '{voltage: 75 V, frequency: 25 Hz, wave: sine, source: 400 Ω, sent to: b wire, over battery: 50 V}',
  }: { readonly feed?: string; readonly ringing?: string | undefined } = {},
  ...more: readonly string[]
): SheetText {
  const lines = [
    'ringproof: 1',
    'sheet: line',
    'name: trial-line',
    `feed: ${feed}`,
    ...(ringing === '' ? [] : [`ringing: ${ringing}`]),
    'speech: {impedance: [600 Ω]}',
    ...more,
    '',
  ]
  return { file: 'trial-line.yaml', text: lines.join('\n') }
}

/** A set that is a resistance off-hook, with a bell on the ringing lead; `broken` Ω are across its open dial contact. */
export function plainSet(
  ohms: number,
  { broken = 1e12, bell = 'resistance: 1 kΩ, inductance: 12 H', parts = '' } = {},
): SheetText {
  const lines = [
    'ringproof: 1',
    'sheet: set',
    'name: plain',
    'strips: {A: 9}',
    'contacts:',
    '  hook: {from: A1, to: A4, closed when: off-hook, resistance: 0 Ω, leakage: open}',
    '  impulse: {from: A4, to: A5, open when: break, resistance: 0 Ω, leakage: open}',
    'parts:',
    `  load: {kind: resistor, from: A5, to: A2, resistance: ${ohms} Ω}`,
    `  leak: {kind: resistor, from: A4, to: A5, resistance: ${broken} Ω}`,
    `  resistor: {kind: resistor, from: A3, to: A6, resistance: 3.3 kΩ}`,
    `  bell: {kind: bell, from: A6, to: A1, ${bell}, rings from: 3 mA at 25 Hz}`,
    ...(parts === '' ? [] : [`  ${parts}`]),
    'cords: {line: {ends in: plug, cores: {a: {lands: A1, resistance: 0 Ω}, b: {lands: A2, resistance: 0 Ω}, ringing: {lands: A3, resistance: 0 Ω}}}}',
    'plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}',
    '',
  ]
  return { file: 'plain.yaml', text: lines.join('\n') }
}

/** Premises with sockets and sets as lines, on a line that is a text; the sheets of the demo are in reach. */
export function house(
  line: SheetText,
  sockets: readonly string[],
  sets: readonly string[],
  ...others: readonly SheetText[]
): Asked {
  const text = [
    'ringproof: 1',
    'sheet: premises',
    'name: trial-house',
    'line: trial-line',
    'sockets:',
    ...sockets.map((one) => `  ${one}`),
    'sets:',
    ...sets.map((one) => `  ${one}`),
    '',
  ].join('\n')
  const shelf = besides(line.text, ...others.map((one) => one.text))
  return { text: { file: 'trial-house.yaml', text }, shelf }
}

/** A master socket without a leak to speak of. */
export const MASTER = 'front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}'
