/** Options that several commands share, and how their values are read. */
import { readQuantity } from '../index.ts'
import { type Problem, ProblemError } from '../problem.ts'
import type { WordList } from './word-lists.ts'

/** Options as commander leaves them. */
export interface Given {
  readonly json?: boolean
  readonly strict?: boolean
  readonly on?: string
  readonly at?: string
  readonly in?: string
  readonly condition?: string
  readonly frequency?: string
  readonly picture?: string
  readonly found?: boolean
  readonly from?: string
  readonly to?: string
  readonly between?: readonly string[]
  readonly range?: string
  readonly instrument?: string
  readonly short?: boolean
  readonly whole?: boolean
  readonly symptom?: readonly string[]
  readonly pairs?: boolean
  readonly cache?: boolean
  readonly draws?: string
  readonly seed?: string
  readonly law?: string
  readonly age?: string
  readonly ask?: boolean
  readonly reading?: readonly string[]
  readonly seen?: readonly string[]
  readonly observed?: readonly string[]
  readonly outside?: boolean
  readonly live?: boolean
  readonly rewires?: boolean
  readonly sheets?: readonly string[]
  readonly width?: string
  readonly colour?: boolean
  readonly secondOpinion?: boolean
  readonly digits?: string
  readonly port?: string
  readonly write?: string
}

/** One option: how it is written and what it does. */
export interface OptionRow {
  readonly flags: string
  readonly says: string
  readonly repeatable?: true
  /** Words that its value may be, for a shell to complete. */
  readonly from?: WordList | 'folders'
}

/** Every option, by its name. */
export const OPTIONS: Readonly<Record<keyof Given, OptionRow>> = {
  json: { flags: '--json', says: 'print JSON, its shape fixed by `ringproof schema`' },
  strict: { flags: '--strict', says: 'exit with 1 for marginal and unknown checks too' },
  on: {
    flags: '--on <premises or line>',
    says: 'where it stands: the name of premises or a line, a file, or `none` for a set alone',
    from: 'grounds',
  },
  at: {
    flags: '--at <place>',
    says: 'puts the set in the place of the one that stands there on the premises of `--on`',
    from: 'places',
  },
  in: {
    flags: '--in <socket>',
    says: 'plugs the set into that socket of the premises; without it the first that no other feeds',
    from: 'sockets',
  },
  condition: {
    flags: '--condition <words>',
    says: 'such as on-hook/ringing, off-hook/make; of several sets by place: hall=off-hook,yard=on-hook; without it on-hook for solve, off-hook for follow',
    from: 'conditions',
  },
  frequency: {
    flags: '--frequency <quantity>',
    says: 'such as "1 kHz"; without it direct current, or what the sheet says',
  },
  picture: {
    flags: '--picture <name>',
    says: 'terminals, circuit or curves; terminals without it',
    from: 'pictures',
  },
  found: { flags: '--found', says: 'the set as found, before the moves of its rewire' },
  from: { flags: '--from <node>', says: 'where to begin' },
  to: { flags: '--to <node>', says: 'where to end' },
  between: {
    flags: '--between <points...>',
    says: 'where the red lead is held, then the black one: plug.a plug.b, handset.r1 A1',
    repeatable: true,
  },
  range: {
    flags: '--range <name>',
    says: 'ohms, buzz, diode, capacitance, volts, alternating-volts, or one range of the instrument by its name',
    from: 'ranges',
  },
  instrument: {
    flags: '--instrument <name or file>',
    says: 'digital or needle, or a file of your own in the shape of netlists/instruments.yaml; my-meter.yaml:name for one of several',
    from: 'instruments',
  },
  short: { flags: '--short', says: 'a table for one page of print: the cores of the cords, and what tells' },
  whole: {
    flags: '--whole',
    says: 'the long form: every verdict or fault in full, all figures and the notes of the sheets, also of premises',
  },
  symptom: {
    flags: '--symptom <words>',
    says: 'a complaint such as bell-silent, or a question with its answer: rings=silent; may stand several times',
    repeatable: true,
  },
  pairs: { flags: '--pairs', says: 'two faults at once as well' },
  cache: {
    flags: '--no-cache',
    says: 'work everything out anew and keep nothing; else what was worked out is kept in the cache folder',
  },
  draws: { flags: '--draws <number>', says: 'how many sets are drawn, 1 to 100000; 1000 without it' },
  seed: { flags: '--seed <number>', says: 'a whole number; the same seed draws the same sets' },
  law: {
    flags: '--law <name>',
    says: 'how values lie within their limits: normal, with three standard deviations at them, or uniform',
    from: 'laws',
  },
  age: { flags: '--age <years>', says: 'the sets so many years after they left the works, 0 to 150' },
  ask: { flags: '--ask', says: 'question by question, in the order that tells most for the least effort' },
  reading: {
    flags: '--reading <words>',
    says: 'two points, the condition and what the meter shows: "A3 A4 on-hook 0.2 Ω", "A3 A4 off-hook open"; may stand several times',
    repeatable: true,
  },
  observed: {
    flags: '--observed <what=answer>',
    says: 'a question and its answer, as `diagnose` asks it: tone=none, heard=well; may stand several times',
    repeatable: true,
  },
  outside: { flags: '--outside', says: 'ask only for what is found out without opening the case' },
  live: { flags: '--no-live', says: 'never ask for a reading on a live line' },
  seen: {
    flags: '--seen <what=answer>',
    says: 'what was seen of the set: slot=yes, board=loom, strap=B2-B3, no-strap=B2-B3, part=own-capacitor, strip=A:6, marking=bell-resistor:3k3; may stand several times',
    repeatable: true,
  },
  rewires: { flags: '--rewires', says: 'compare with what the rewires make of their sets as well' },
  sheets: {
    flags: '--sheets <folder>',
    says: 'look for sheets here first; may stand several times',
    repeatable: true,
    from: 'folders',
  },
  width: { flags: '--width <columns>', says: 'lay the text out for so many columns, 60 or more' },
  colour: { flags: '--no-colour', says: 'no colour, even on a terminal' },
  secondOpinion: {
    flags: '--second-opinion',
    says: 'ask everything again as a different system, solved by mathjs, and compare; takes seconds',
  },
  digits: {
    flags: '--digits <number>',
    says: 'the second opinion in so many decimal digits, 16 to 100; in doubles without it',
  },
  port: { flags: '--port <number>', says: 'listen there; without it a port that is free is found' },
  write: {
    flags: '--write <folder>',
    says: 'write the page there as plain files, for any static server, and open nothing',
    from: 'folders',
  },
}

/** A request that cannot be understood. */
export function requestWrong(found: string, expected: string, mend?: string): never {
  const problem: Problem = { code: 'request-wrong', severity: 'error', found, expected }
  throw new ProblemError([mend === undefined ? problem : { ...problem, mend }])
}

const NARROWEST = 60
const WIDEST = 1000
const USUAL = 80

/** Columns to lay out for: as asked, else as wide as the terminal, within reason. @throws ProblemError */
export function widthOf(asked: string | undefined, terminal: number | undefined): number {
  if (asked === undefined) return Math.min(WIDEST, Math.max(NARROWEST, terminal ?? USUAL))
  const width = /^\d{1,4}$/.test(asked) ? Number(asked) : 0
  if (width >= NARROWEST && width <= WIDEST) return width
  requestWrong(
    `the width \`${asked}\``,
    `a whole number of columns from ${NARROWEST} to ${WIDEST}`,
    'write `--width 80`',
  )
}

/** Two points for the leads. @throws ProblemError */
export function pairOf(asked: readonly string[] | undefined): readonly [string, string] | undefined {
  if (asked === undefined) return undefined
  const [red, black] = asked
  if (red !== undefined && black !== undefined && asked.length === 2) return [red, black]
  const found = asked.map((one) => `\`${one}\``).join(', ')
  requestWrong(
    `${found} behind \`--between\``,
    'two points, the red lead first',
    'write `--between plug.a plug.b`',
  )
}

/** A frequency in Hz. @throws ProblemError */
export function frequencyOf(asked: string | undefined): number | undefined {
  if (asked === undefined) return undefined
  const read = readQuantity(asked, 'frequency', { above: 0 })
  if (read.ok) return read.quantity.value
  const { found, expected, mend } = read.fault
  requestWrong(`the frequency ${found}`, expected, mend ?? 'write `--frequency "1 kHz"`')
}

/** A whole number. @throws ProblemError */
export function wholeOf(asked: string | undefined, flag: string): number | undefined {
  if (asked === undefined || /^\d{1,12}$/.test(asked)) return asked === undefined ? undefined : Number(asked)
  requestWrong(
    `\`${asked}\` behind \`--${flag}\``,
    'a whole number',
    `leave \`--${flag}\` out, or write a number`,
  )
}

/** Years. @throws ProblemError */
export function yearsOf(asked: string | undefined): number | undefined {
  if (asked === undefined || /^\d{1,6}(\.\d{1,6})?$/.test(asked))
    return asked === undefined ? undefined : Number(asked)
  requestWrong(`the age \`${asked}\``, 'a number of years from 0 to 150', 'write `--age 50`')
}
