/** The schema of premises, version 1. */
import * as z from 'zod/mini'
import { quantity, yesNo } from '../parts/fields.ts'
import type { PremisesSheet } from './model.ts'
import { condition, head, name, named, optional, otherwise, says } from './schema-fields.ts'
import { run } from './schema-line.ts'

export type PremisesBody = Omit<PremisesSheet, 'file' | 'places'>

const earth = (): z.ZodMiniType<unknown> => optional(says(yesNo(), 'yes: the socket has an earth wire'))

const mirrored = (): z.ZodMiniType<unknown> =>
  optional(
    says(
      yesNo(),
      'yes: made up by the mirrored numbering, each wire on contact 7 − k in place of k; the pair looks right, ringing lead and earth change places',
    ),
  )
const over = (): z.ZodMiniType<unknown> =>
  optional(says(run(), 'the cable between the two; none to speak of when absent'))
const ringingLead = (): z.ZodMiniType<unknown> =>
  optional(says(yesNo(), 'no: the ringing lead does not reach this socket'))

/** What every socket may say. */
const EVERY = { earth: earth(), mirrored: mirrored() }

const master = z.strictObject({
  is: says(z.literal('master'), 'the socket at which the line ends and the ringing lead begins'),
  capacitance: says(
    quantity('capacitance', { above: 0 }),
    'ringing capacitor, between b wire and ringing lead',
  ),
  resistance: says(quantity('resistance', { above: 0 }), 'resistor between ringing lead and a wire'),
  'gas tube': optional(says(quantity('voltage', { above: 0 }), 'voltage that the surge arrester holds off')),
  'fed from': optional(
    name('the socket that feeds it, for a second master socket on the same wires; the line when absent'),
  ),
  over: over(),
  'ringing lead': ringingLead(),
  ...EVERY,
})

const outlet = z.strictObject({
  is: says(z.literal('outlet'), 'the two wires and nothing else: no capacitor, no ringing lead'),
  'fed from': optional(name('the socket that feeds it; the line when absent')),
  over: over(),
  ...EVERY,
})

/** What every socket says that is fed from another one. */
const FED = {
  'fed from': name('the socket that feeds it'),
  over: over(),
  ...EVERY,
}

const secondary = z.strictObject({
  is: says(z.literal('secondary'), 'a socket on another one'),
  'fed from': FED['fed from'],
  over: FED.over,
  'ringing lead': ringingLead(),
  ...EVERY,
})

const adapter = z.strictObject({
  is: says(
    z.literal('adapter'),
    'an adapter lead from the two wires of another socket; with a capacitor and a resistor it makes a ringing lead of its own',
  ),
  ...FED,
  capacitance: optional(
    says(
      quantity('capacitance', { above: 0 }),
      'its own ringing capacitor, between b wire and ringing lead; absent in a lead without',
    ),
  ),
  resistance: optional(
    says(
      quantity('resistance', { above: 0 }),
      'its own resistor, between ringing lead and a wire; goes with `capacitance`',
    ),
  ),
})

const converter = z.strictObject({
  is: says(z.literal('converter'), 'an in-line converter from dial pulses to tones; no pulse passes it'),
  ...FED,
  'series resistance': says(
    quantity('resistance'),
    'resistance in the pair, both wires together, half of it in each',
  ),
  load: optional(
    says(
      quantity('resistance', { above: 0 }),
      'resistance across the pair on the side of the set; none when absent',
    ),
  ),
  'passes ringing': optional(says(yesNo(), 'no: it is open while the line rings')),
  'ringing lead': ringingLead(),
})

const filter = z.strictObject({
  is: says(z.literal('filter'), 'a broadband filter: a coil in each wire, then a capacitor across the pair'),
  ...FED,
  inductance: says(quantity('inductance'), 'inductance of the coil in each wire'),
  resistance: says(quantity('resistance'), 'resistance of the coil in each wire'),
  capacitance: says(quantity('capacitance'), 'capacitor across the pair, on the side of the set'),
  'ringing lead': ringingLead(),
})

const place = z.strictObject({
  set: name('the set that stands here'),
  in: name('the socket into which it is plugged'),
  rewire: optional(name('rewire applied to it')),
  reversed: optional(says(yesNo(), 'yes: the pair is reversed between the socket and the set')),
  condition: optional(condition('condition of this set, when it is not on-hook')),
})

export const premisesSchema: z.ZodMiniType<PremisesBody> = z.strictObject({
  ...head('premises'),
  line: name('the line that comes in'),
  reversed: otherwise(
    says(yesNo(), 'yes: the pair is reversed on the exchange side of the master socket'),
    () => false,
  ),
  sockets: named(
    z.discriminatedUnion('is', [
      master,
      outlet,
      secondary,
      adapter,
      converter,
      filter,
    ]) as unknown as z.ZodMiniType<unknown>,
    'sockets by name',
  ),
  sets: otherwise(
    named(place as unknown as z.ZodMiniType<unknown>, 'sets by the place where they stand'),
    () => ({}),
  ),
}) as unknown as z.ZodMiniType<PremisesBody>
