/** The schema of a set, version 1. */
import * as z from 'zod/mini'
import { CONTACT_KEYS } from '../parts/contact.ts'
import { quantity, yesNo } from '../parts/fields.ts'
import { partSchema } from '../parts/index.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { SetSheet } from './model.ts'
import {
  count,
  head,
  list,
  name,
  named,
  optional,
  otherwise,
  says,
  terminal,
  text,
  word,
} from './schema-fields.ts'

/** A set as written, `based on` merged; the rest of `SetSheet` is found by the reader. */
export type SetBody = Omit<SetSheet, 'file' | 'places' | 'bases' | 'landings' | 'units'>

/** What a strap is named by. */
export const STRAP_NAME: RegExp = /^([A-Z]+[1-9][0-9]*)-([A-Z]+[1-9][0-9]*)$/

/** How a strap or a core is fixed. */
export const HOLDS: readonly ['screw', 'solder', 'board'] = ['screw', 'solder', 'board']

/** What carries the parts of a set. */
export const BUILDS: readonly ['board', 'loom'] = ['board', 'loom']

const resistance = (what: string): z.ZodMiniType<unknown> =>
  optional(says(quantity('resistance'), `resistance of the ${what}; 10 mΩ when absent`))

const part = (): z.ZodMiniType<PartSpec> =>
  says(partSchema(), 'a part: its `kind` and what that kind asks for')

const strap = z.strictObject({
  hold: word(HOLDS, 'what holds it: a screw, solder, or the board itself (not to be moved without `cut`)'),
  resistance: resistance('strap'),
})

const core = z.strictObject({
  lands: terminal('terminal on which the core lands, or `parked`: insulated, on nothing', 'parked'),
  colour: optional(text('colour of the insulation: a label that may be wrong')),
  resistance: resistance('core'),
})

const cord = z.strictObject({
  'ends in': word(['plug', 'handset'], 'what is at the far end'),
  cores: named(core, 'the cores by name'),
})

const slot = z.strictObject({
  sockets: named(
    terminal('terminal of the set to which this pin leads'),
    'pin of the unit: terminal of the set',
  ),
  'needs unit': optional(says(yesNo(), 'yes: the set does not work without a unit')),
  fitted: optional(name('name of the unit that is plugged in, or `none`', 'none')),
})

const plug = z.strictObject({
  'numbered by': word(
    ['wiring', 'contact'],
    'wiring: 2 b wire, 3 ringing lead, 4 earth, 5 a wire; contact: the mirror image, k becomes 7 − k',
  ),
  contacts: named(
    name('core of the cord that ends in the plug'),
    'number of the contact, 1 to 6: core',
    /^[1-6]$/,
  ),
})

export const setSchema: z.ZodMiniType<SetBody> = z.strictObject({
  ...head('set'),
  'based on': optional(name('another set, of which this sheet says only what differs')),
  without: optional(
    list(
      text('dotted path, such as `straps.B2-B3`'),
      'what the set that this one is based on has and this one has not',
    ),
  ),
  strips: named(
    count(1, 99, 'number of terminals on the strip'),
    'strips of terminals in drawing order, by their letters: `{A: 6}` is A1 to A6',
    /^[A-Z]+$/,
  ),
  spare: otherwise(list(terminal('a terminal'), 'terminals on which nothing belongs'), () => []),
  'touchable metal': otherwise(
    named(
      terminal('terminal to which it is joined, or `none`', 'none', 'earth'),
      'metal that a hand can touch',
    ),
    () => ({}),
  ),
  straps: otherwise(
    named(strap, 'links between terminals, each named by its two ends: `B2-B3`', STRAP_NAME),
    () => ({}),
  ),
  contacts: otherwise(
    named(z.strictObject(CONTACT_KEYS) as never, 'contacts of hook, dial and key by name'),
    () => ({}),
  ),
  parts: otherwise(named(part(), 'parts by name'), () => ({})),
  joints: otherwise(list(name('a joint'), 'meeting points of parts that have no terminal'), () => []),
  slots: otherwise(named(slot, 'slots for plug-in units by name'), () => ({})),
  cords: otherwise(named(cord, 'cords by name'), () => ({})),
  plug: optional(says(plug, 'the plug of the line cord')),
  handset: otherwise(
    named(part(), 'parts in the handset; their ends are cores of the handset cord'),
    () => ({}),
  ),
  'built on': optional(
    word(BUILDS, 'what carries its parts and joins them: a printed board, or a loom of wires laid by hand'),
  ),
  'common cores': otherwise(
    list(
      list(name('a core of the handset cord'), 'cores that are joined on purpose', 2),
      'handset cores meant to be common',
    ),
    () => [],
  ),
}) as unknown as z.ZodMiniType<SetBody>
