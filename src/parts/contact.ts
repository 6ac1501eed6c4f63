import * as z from 'zod/mini'
import type { Quantity } from '../quantities/quantity.ts'
import { describe, ENDS, oneBranch, type TwoEnds } from './ends.ts'
import { faultMode, leaks, opens, resists } from './fault-modes.ts'
import { quantity } from './fields.ts'
import type { Gate, GateState, GateWord, PartKind, Stroke } from './kind.ts'
import { openLaw } from './open-law.ts'
import { line, lying } from './symbols.ts'

/** A contact: a link with a small resistance that a set's condition opens and closes. */
export interface ContactPartSpec extends TwoEnds {
  readonly kind: 'contact'
  readonly 'closed when'?: GateWord
  readonly 'open when'?: GateWord
  readonly order?: 'first' | 'last'
  readonly resistance?: Quantity
  readonly leakage?: Quantity | 'open'
}

/** Resistance of a closed contact, ohms. Common practice, no source. */
export const CONTACT_RESISTANCE = 0.05
/** Resistance of an open contact, ohms. Common practice, no source. */
export const OPEN_CONTACT = 1e9

/** The words that a contact may answer to. */
export const GATE_WORDS: readonly GateWord[] = ['off-hook', 'off-normal', 'make', 'break', 'key']

/** Schemas of a contact's keys. */
export interface ContactKeys {
  readonly from: z.ZodMiniType<string>
  readonly to: z.ZodMiniType<string>
  readonly 'closed when': z.ZodMiniOptional<z.ZodMiniType<GateWord>>
  readonly 'open when': z.ZodMiniOptional<z.ZodMiniType<GateWord>>
  readonly order: z.ZodMiniOptional<z.ZodMiniType<'first' | 'last'>>
  readonly resistance: z.ZodMiniOptional<z.ZodMiniType<Quantity>>
  readonly leakage: z.ZodMiniOptional<z.ZodMiniType<Quantity | 'open'>>
}

/** The keys of a contact that a set's `contacts:` and a circuit's `kind: contact` share. */
export const CONTACT_KEYS: ContactKeys = {
  ...ENDS,
  'closed when': z.optional(
    describe(z.enum(GATE_WORDS), 'the contact is closed in this state, open otherwise'),
  ),
  'open when': z.optional(
    describe(z.enum(GATE_WORDS), 'the contact is open in this state, closed otherwise'),
  ),
  order: z.optional(
    describe(
      z.enum(['first', 'last']),
      'first: makes before the others and breaks after them; last: the other way round',
    ),
  ),
  resistance: z.optional(describe(quantity('resistance'), 'resistance when closed; 50 mΩ when absent')),
  leakage: z.optional(
    describe(
      z.union([z.literal('open'), quantity('resistance', { above: 0 })]),
      'resistance when open, or `open`; 1 GΩ when absent',
    ),
  ),
}

export const contact: PartKind<ContactPartSpec> = {
  kind: 'contact',
  says: 'A contact of the hook, the dial or the key.',
  role: 'link',
  schema: z.strictObject({
    kind: z.literal('contact'),
    ...CONTACT_KEYS,
  }) as unknown as z.ZodMiniType<ContactPartSpec>,
  branches: (spec) => oneBranch(spec, 'equation'),
  gate: gateOf,
  law(spec, _at, gate: GateState, sink) {
    if (gate === 'closed') sink.equation(0, 1, spec.resistance?.value ?? CONTACT_RESISTANCE, 0)
    else if (spec.leakage === 'open') openLaw(sink)
    else sink.equation(0, 1 / (spec.leakage?.value ?? OPEN_CONTACT), 1, 0)
  },
  check: (spec) => oneWord(spec),
  elements(spec, _at, gate, sink) {
    if (gate === 'closed') sink.series(0, spec.resistance?.value ?? CONTACT_RESISTANCE, 0)
    else if (spec.leakage === 'open') sink.open(0)
    else sink.beside(0, spec.leakage?.value ?? OPEN_CONTACT, 0)
  },
  modes: () => [
    resists('dirty', 200, {
      weight: 60,
      sign: 'dull or blackened points; it crackles and changes when wiped',
      says: 'is dirty',
      mend: 'wipe its points with a strip of clean paper, then with a burnishing blade; never with emery',
    }),
    opens({
      weight: 15,
      sign: 'a bent spring: the points do not meet',
      says: 'never closes',
      mend: 'set its springs so that the points meet with a little follow',
    }),
    faultMode({
      mode: 'welded',
      family: 'stuck',
      says: 'never opens',
      mend: 'part the points, dress them and set the springs',
      sign: 'points stuck together, or a spring bent onto its neighbour',
      weight: 5,
      change: { across: CONTACT_RESISTANCE },
    }),
    leaks(50_000, {
      weight: 5,
      sign: 'a dirty or damp spring pile: conducts a little when open',
      mend: 'clean and dry its spring pile',
    }),
  ],
  outline: (spec) => lying(spec, gateOf(spec).closed ? MAKE : BREAK, 1.2, 2.8),
}

function gateOf(spec: ContactPartSpec): Gate {
  const closes = spec['closed when']
  return closes === undefined
    ? { word: spec['open when'] ?? 'off-hook', closed: false }
    : { word: closes, closed: true }
}

function oneWord(spec: ContactPartSpec): ReturnType<NonNullable<PartKind['check']>> {
  const closes = spec['closed when'] !== undefined
  if (closes !== (spec['open when'] !== undefined)) return []
  return [
    {
      code: closes ? 'key-doubled' : 'key-missing',
      found: closes ? '`closed when` and `open when`' : 'neither `closed when` nor `open when`',
      expected: 'one of the two',
      mend: 'say when the contact is closed, or when it is open',
    },
  ]
}

/** A make contact is drawn open, a break contact closed; both at rest. */
const MAKE: readonly Stroke[] = [line([1.2, 1], [2.8, 0.3])]
const BREAK: readonly Stroke[] = [line([1.2, 1], [2.95, 0.4]), line([2.8, 1], [2.8, 0.45])]
