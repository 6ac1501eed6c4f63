/** The readings of a fault book in words. */
import type { Shown, Telling } from '../answer/faults-answer.ts'
import { ON_HOOK } from '../netlist/condition.ts'
import { formatQuantity } from '../quantities/format.ts'
import { subjectText } from './place-names.ts'
import { STATE_WORDS, writtenWords } from './words.ts'

/** What stands in the ids of readings. */
const RANGES: Readonly<Record<string, string>> = {
  ohms: 'ohms',
  capacitance: 'capacitance',
  volts: 'volts',
  'alternating-volts': 'alternating volts',
}

/** Where the leads are and how the set is held: `ohms plug.a – plug.b, handset up`; of a part by itself as its test asks. */
export function readingText({ test, asks, condition, live }: Telling, place: string): string {
  const [what = '', red = '', black = '', when = ''] = test.split(' ')
  const range = RANGES[what] ?? what
  const isApart = when.endsWith('-off') && when !== CORD_OFF
  if (isApart) return `${range} ${asks.slice(asks.indexOf(ACROSS), -1)}`
  const set = condition.sets[place] ?? ON_HOOK
  const held =
    when === CORD_OFF ? 'handset cord off its terminals' : writtenWords({ ...set, line: condition.line })
  return `${subjectText(`${range} ${red} – ${black}`, place)}, ${held}${live ? ' (live)' : ''}`
}

/** The last word of the id of a reading at the loose ends of the handset's cord. */
const CORD_OFF = 'cord-off'
/** What the question of a part by itself says from here on is where the leads are. */
const ACROSS = 'across '

/** A share of what the sound set shows that nobody calls more than nothing. */
const NOTHING = 1e-3

/** What an instrument shows. What is less than half its last digit, or next to nothing beside the sound set, is none. */
export function shownText(one: Shown, { unit, resolution, sound }: Telling): string {
  const { value, state } = one
  if (value === null) return state === undefined ? '–' : STATE_WORDS[state]
  const least = unit === 'V' ? NOTHING * Math.abs(sound.value ?? 0) : 0
  const isNone = Math.abs(value) < Math.max(resolution / 2, least)
  if (isNone && unit === 'F') return 'none'
  return formatQuantity(isNone ? 0 : value, unit)
}
