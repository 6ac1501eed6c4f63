/** The schema of a line, version 1. */
import * as z from 'zod/mini'
import { plain, quantity, span, yesNo } from '../parts/fields.ts'
import type { LineSheet, RunSpec } from './model.ts'
import { head, list, name, optional, otherwise, says, word } from './schema-fields.ts'
import { impedance } from './schema-impedance.ts'

export type LineBody = Omit<LineSheet, 'file' | 'places'>

/** A length of cable; `temperature` is the wire's. */
export const run = (): z.ZodMiniType<RunSpec> =>
  z.strictObject({
    type: word(
      ['twin', 'house-pair', 'house-three'],
      'a pair of the line, a pair in the house, or three wires in the house',
    ),
    gauge: says(quantity('length', { above: 0, max: 0.01 }), 'diameter of the copper of one wire', {
      examples: ['0.5 mm'],
    }),
    length: says(quantity('length', { min: 0 }), 'length of the cable, there'),
    temperature: optional(says(quantity('temperature'), 'temperature of the wire; 20 °C when absent')),
  }) as unknown as z.ZodMiniType<RunSpec>

const WIRES = ['a wire', 'b wire'] as const

const feed = z.strictObject({
  voltage: says(quantity('voltage', { min: 0 }), 'voltage of the battery'),
  resistance: optional(says(quantity('resistance'), 'resistance of the feed, both wires together')),
  'current limit': optional(
    says(quantity('current', { above: 0 }), 'current above which the feed gives no more'),
  ),
  shared: otherwise(
    word(['half in each wire', 'all in a wire', 'all in b wire'], 'in which wire the feed resistance lies'),
    () => 'half in each wire',
  ),
  negative: otherwise(word(WIRES, 'the wire that is on the negative pole'), () => 'b wire'),
  earth: otherwise(
    word(['positive pole', 'negative pole', 'none'], 'the pole of the battery that is earthed'),
    () => 'positive pole',
  ),
})

const ringing = z.strictObject({
  voltage: says(quantity('voltage', { above: 0 }), 'ringing voltage, rms'),
  frequency: says(quantity('frequency', { above: 0 }), 'ringing frequency'),
  wave: says(
    z.union([
      z.literal('sine'),
      z.strictObject({
        trapezoid: says(plain(1, 1.7321), 'crest factor, peak over rms', { examples: [1.25] }),
      }),
    ]) as unknown as z.ZodMiniType<'sine' | { trapezoid: number }>,
    'shape of the ringing voltage: `sine`, or `{trapezoid: …}` with its crest factor',
    { examples: ['sine'] },
  ),
  source: says(
    quantity('resistance'),
    'all that lies between generator and pair while it rings, in place of the feed resistance',
  ),
  'sent to': word(WIRES, 'the wire to which the generator sends'),
  'over battery': optional(
    says(quantity('voltage', { min: 0 }), 'direct voltage on which the ringing rides'),
  ),
  cadence: optional(
    list(says(quantity('time', { above: 0 }), 'a time'), 'times of ringing and silence: on, off, on, off', 2),
  ),
})

const limits = z.strictObject({
  'ringing load': optional(
    says(plain(0, 100), 'most ringing load that this line drives, in the measure of `load by`'),
  ),
  'load by': optional(name('definition of the ringing load', 'four-kilohm-unit')),
  'loop current': optional(says(span('current'), 'loop current that this line works with')),
  pulses: optional(
    says(
      z.strictObject({
        understood: says(yesNo(), 'whether this line understands dial pulses at all'),
        rate: optional(says(span('frequency'), 'pulses in a second')),
        break: optional(says(span('ratio'), 'break as a part of the whole pulse')),
      }),
      'dial pulses that this line understands',
    ),
  ),
})

export const lineSchema: z.ZodMiniType<LineBody> = z.strictObject({
  ...head('line'),
  feed: says(feed, 'the battery that feeds the pair'),
  ringing: optional(says(ringing, 'the ringing supply; absent on a line that does not ring')),
  cable: optional(says(run(), 'cable between exchange and premises')),
  speech: says(
    z.strictObject({ impedance: says(impedance, 'impedance of the far end in speech: a list is in series') }),
    'what the line is in speech',
    { examples: ['{impedance: [600 Ω]}'] },
  ),
  trip: optional(
    says(
      z.strictObject({
        current: says(quantity('current', { above: 0 }), 'direct current at which ringing is tripped'),
        within: says(quantity('time', { above: 0 }), 'time after which it is'),
      }),
      'how the exchange knows that somebody answers while it rings',
    ),
  ),
  recall: otherwise(
    says(
      z.union([
        z.enum(['none', 'earth']),
        z.strictObject({ 'timed break': says(span('time'), 'length of a loop break that means recall') }),
      ]) as unknown as z.ZodMiniType<LineBody['recall']>,
      'what the recall key must do: `none`, `earth`, or `{timed break: 50 ms to 130 ms}`',
    ),
    () => 'none' as const,
  ),
  limits: otherwise(
    says(limits as unknown as z.ZodMiniType<LineBody['limits']>, 'what this line allows'),
    () => ({}),
  ),
}) as unknown as z.ZodMiniType<LineBody>
