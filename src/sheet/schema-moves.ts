/** Moves at the bench as rewires and jobs write them: one key that says the move, and what belongs to it. */
import * as z from 'zod/mini'
import { partSchema } from '../parts/index.ts'
import type { PlacedMove } from './model.ts'
import { date, name, optional, says, terminal, word } from './schema-fields.ts'
import { HOLDS, STRAP_NAME } from './schema-set.ts'

/** A core by its cord: `handset.r2`. */
export const CORE: RegExp = /^[a-z][a-z0-9-]*\.[a-z][a-z0-9-]*$/

const strap = (what: string): z.ZodMiniType<string> =>
  says(z.string().check(z.regex(STRAP_NAME)), what, { examples: ['B2-B3'] })
const core = (what: string): z.ZodMiniType<string> =>
  says(z.string().check(z.regex(CORE)), what, { examples: ['handset.r2'] })

/** The words of moves, each with its sentence and what stands beside it. */
const ACTIONS: Readonly<Record<PlacedMove['do'], z.core.$ZodLooseShape>> = {
  'fit strap': {
    'fit strap': strap('strap to be fitted, named by its two terminals'),
    hold: optional(word(HOLDS, 'what holds it; a screw when absent')),
  },
  'lift strap': { 'lift strap': strap('strap to be taken away') },
  'land core': {
    'land core': core('core to be moved, as `cord.core`'),
    onto: terminal('terminal on which it lands'),
  },
  'park core': { 'park core': core('core to be insulated and left on nothing, as `cord.core`') },
  'fit part': {
    'fit part': name('name of the new part'),
    with: says(partSchema(), 'the part: its `kind` and what that kind asks for'),
  },
  'lift part': { 'lift part': name('part to be taken out') },
  'plug unit': { 'plug unit': name('unit to be plugged in'), in: name('slot that takes it') },
  'pull unit': { 'pull unit': name('slot whose unit is pulled') },
  cut: { cut: strap('strap to be cut, soldered or on the board') },
  bridge: { bridge: name('part to be bridged by a link') },
}

/** The words that begin a move. */
export const ACTION_WORDS: ReadonlySet<string> = new Set(Object.keys(ACTIONS))

/** One move. Its place is filled in by the reader. */
export function move(): z.ZodMiniType<PlacedMove> {
  const shapes = Object.values(ACTIONS).map((shape) =>
    z.strictObject({ ...shape, date: optional(date('day on which it was done')) }),
  )
  return z.pipe(
    says(
      z.union(shapes) as unknown as z.ZodMiniType<Record<string, unknown>>,
      'a move: one key that says what is done, and what belongs to it',
    ),
    z.transform((written: Record<string, unknown>) => {
      const [action = '', what] = Object.entries(written).find(([key]) => ACTION_WORDS.has(key)) ?? []
      const { [action]: _, ...rest } = written
      return { do: action, what, ...rest }
    }),
  ) as unknown as z.ZodMiniType<PlacedMove>
}
