import { type CheckAnswer, check } from 'ringproof'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import type { SheetText, Shelf } from 'ringproof/sheet/shelf'

/** The sheets of the demo, and nothing else. */
export const DEMO: Shelf = folderShelf([], packagedFolder())

/** A shelf that has these sheets besides those of the demo; found by their words behind `sheet:` and `name:`. */
export function besides(...texts: readonly string[]): Shelf {
  const known = texts.map((text) => ({
    text,
    kind: /^sheet: (\S+)/m.exec(text)?.[1],
    name: /^name: (\S+)/m.exec(text)?.[1] ?? '',
  }))
  return {
    find: (kind, name, from) => {
      const own = known.find((one) => one.kind === kind && one.name === name)
      return own === undefined ? DEMO.find(kind, name, from) : { file: `${name}.yaml`, text: own.text }
    },
    names: (kind, from) =>
      [...DEMO.names(kind, from), ...known.filter((one) => one.kind === kind).map(({ name }) => name)].sort(),
  }
}

/** A demo set with moves made on it, as the text of a rewire. */
export function rewireText(set: string, ...moves: readonly string[]): SheetText {
  const lines = moves.map((move) => `  - {${move}}\n`).join('')
  return {
    file: 'trial.yaml',
    text: `ringproof: 1\nsheet: rewire\nname: trial\nset: ${set}\nmoves:\n${lines}`,
  }
}

/** A set sheet based on a demo set, with lines of its own. */
export function setText(base: string, ...lines: readonly string[]): SheetText {
  return {
    file: 'trial.yaml',
    text: `ringproof: 1\nsheet: set\nname: trial\nbased on: ${base}\n${lines.join('\n')}\n`,
  }
}

/** Checks a text where the demo's sheets are in reach. */
export function checkText(text: SheetText, on?: string, shelf: Shelf = DEMO): CheckAnswer {
  return check({ target: '', text, ...(on === undefined ? {} : { on }) }, shelf)
}

/** Checks a demo set after moves. */
export function checkMoved(set: string, ...moves: readonly string[]): CheckAnswer {
  return checkText(rewireText(set, ...moves))
}

/** The verdicts of one check. */
export function verdictsOf(answer: CheckAnswer, id: string): CheckAnswer['verdicts'] {
  return answer.verdicts.filter((one) => one.check === id)
}

/** The one verdict of a check, of a subject where there are several. */
export function verdictOf(
  answer: CheckAnswer,
  id: string,
  subject?: string,
): CheckAnswer['verdicts'][number] {
  const found = verdictsOf(answer, id).filter((one) => subject === undefined || one.subject === subject)
  const [only] = found
  if (only === undefined || found.length > 1)
    throw new Error(`${id} has ${found.length} verdicts of ${subject ?? 'any subject'}`)
  return only
}

/** States by check, several of one check joined by a comma, of the wiring group only. */
export function wiringStates(answer: CheckAnswer): Readonly<Record<string, string>> {
  const states: Record<string, string> = {}
  for (const { check: id, state } of answer.verdicts) {
    if (!id.startsWith('wiring.')) continue
    states[id] = states[id] === undefined ? state : `${states[id]},${state}`
  }
  return states
}

/** Wiring checks that do not plainly hold, with their states. */
export function troubles(answer: CheckAnswer): Readonly<Record<string, string>> {
  const all = Object.entries(wiringStates(answer))
  return Object.fromEntries(all.filter(([, states]) => states.split(',').some((state) => state !== 'holds')))
}
