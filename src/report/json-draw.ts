/** The schema of what `draw` answers. */
import * as z from 'zod/mini'
import { CONDITION, FIGURE } from './json-parts.ts'

const text = z.string()
const list = <T extends z.ZodMiniType>(of: T): z.ZodMiniArray<T> => z.array(of)
const maybe = z.optional

const moved = {
  thing: text,
  fixed: maybe(text),
  change: maybe(z.enum(['fitted', 'taken out', 'moved'])),
}

const board = z.strictObject({
  set: text,
  title: maybe(text),
  strips: list(
    z.strictObject({ name: text, terminals: list(z.strictObject({ name: text, spare: z.boolean() })) }),
  ),
  straps: list(
    z.strictObject({ ...moved, from: text, to: text, hold: z.enum(['screw', 'solder', 'board']) }),
  ),
  cores: list(
    z.strictObject({
      ...moved,
      cord: text,
      core: text,
      endsIn: z.enum(['plug', 'handset']),
      lands: maybe(text),
      was: maybe(text),
      colour: maybe(z.strictObject({ word: text, code: maybe(text), colours: list(text) })),
    }),
  ),
  parts: list(
    z.strictObject({
      ...moved,
      name: text,
      says: text,
      values: text,
      ends: list(
        z.strictObject({
          end: text,
          branch: maybe(text),
          on: text,
          joint: z.boolean(),
          core: maybe(z.literal(true)),
          other: text,
        }),
      ),
      bridged: maybe(z.boolean()),
    }),
  ),
  slots: list(
    z.strictObject({
      ...moved,
      name: text,
      needsUnit: z.boolean(),
      fitted: maybe(text),
      sockets: list(z.strictObject({ pin: text, terminal: text })),
    }),
  ),
})

const flow = z.strictObject({
  size: z.number(),
  sense: z.union([z.literal(1), z.literal(-1), z.literal(0)]),
  weight: z.number().check(z.int(), z.minimum(0), z.maximum(4)),
})
const zone = z.enum(['exchange', 'line', 'premises', 'cord', 'set', 'handset'])

const circuit = z.strictObject({
  name: text,
  nodes: list(z.strictObject({ id: text, label: text, zone, thing: maybe(text) })),
  pieces: list(
    z.strictObject({
      id: text,
      label: text,
      values: text,
      zone,
      ends: list(z.strictObject({ pin: text, node: text })),
      gate: maybe(z.enum(['open', 'closed'])),
      thing: maybe(text),
      flow: maybe(flow),
    }),
  ),
  links: list(
    z.strictObject({ id: text, from: text, to: text, sort: text, thing: maybe(text), flow: maybe(flow) }),
  ),
})

const shown = z.strictObject({
  circuit,
  condition: z.nullable(CONDITION),
  analysis: z.enum(['direct', 'alternating']),
  frequency: z.nullable(z.number()),
  carries: z.record(text, flow),
  approximate: maybe(text),
})

/** The keys of the answer besides its head, `stands` and problems. */
export const DRAW: {
  readonly outcome: z.ZodMiniType
  readonly picture: z.ZodMiniType
  readonly place: z.ZodMiniType
  readonly board: z.ZodMiniType
  readonly shown: z.ZodMiniType
  readonly figures: z.ZodMiniType
  readonly found: z.ZodMiniType
} = {
  outcome: z.literal('answered'),
  picture: z.enum(['terminals', 'circuit', 'curves']),
  place: text,
  board: maybe(board),
  shown: maybe(shown),
  figures: maybe(list(FIGURE)),
  found: maybe(list(FIGURE)),
}
