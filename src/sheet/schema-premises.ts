/** The schema of premises, version 1. */
import * as z from 'zod/mini'
import { quantity, yesNo } from '../parts/fields.ts'
import type { PremisesSheet } from './model.ts'
import { condition, head, name, named, optional, otherwise, says } from './schema-fields.ts'
import { run } from './schema-line.ts'

export type PremisesBody = Omit<PremisesSheet, 'file' | 'places'>

const earth = (): z.ZodMiniType<unknown> => optional(says(yesNo(), 'yes: the socket has an earth wire'))

const master = z.strictObject({
  is: says(z.literal('master'), 'the socket at which the line ends and the ringing lead begins'),
  capacitance: says(
    quantity('capacitance', { above: 0 }),
    'ringing capacitor, between b wire and ringing lead',
  ),
  resistance: says(quantity('resistance', { above: 0 }), 'resistor between ringing lead and a wire'),
  'gas tube': optional(says(quantity('voltage', { above: 0 }), 'voltage that the surge arrester holds off')),
  earth: earth(),
})

const secondary = z.strictObject({
  is: says(z.literal('secondary'), 'a socket on another one'),
  'fed from': name('the socket that feeds it'),
  over: optional(says(run(), 'the cable between the two; none to speak of when absent')),
  'ringing lead': optional(says(yesNo(), 'no: the ringing lead does not reach this socket')),
  earth: earth(),
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
    z.discriminatedUnion('is', [master, secondary]) as unknown as z.ZodMiniType<unknown>,
    'sockets by name',
  ),
  sets: otherwise(
    named(place as unknown as z.ZodMiniType<unknown>, 'sets by the place where they stand'),
    () => ({}),
  ),
}) as unknown as z.ZodMiniType<PremisesBody>
