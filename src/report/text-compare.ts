/** The answer to `compare` as text: two sides, next to each other. */
import type { Because, CompareAnswer } from '../answer/answer.ts'
import type { Verdict } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { figureName, figureText, silentBells } from './amounts.ts'
import { equalOnBothLines } from './equal-bells.ts'
import { caution, heading } from './heading.ts'
import type { Page } from './paint.ts'
import { solePlace, subjectText } from './place-names.ts'
import { table } from './table.ts'
import { approximations, countsLine, stateWord, verdictLines } from './text-verdicts.ts'
import { conditionWords } from './words.ts'
import { hanging } from './wrap.ts'

type Side = CompareAnswer['found']

/** Whether a changed thing, named by its id alone or with more behind it, is this one. */
function names(changed: readonly string[], id: string): boolean {
  return changed.some(
    (name) => name === id || (name.startsWith(id) && !/[a-z.-]/.test(name[id.length] ?? '')),
  )
}

const placeOf = ({ verdicts, figures }: Side): string | undefined =>
  solePlace([...verdicts, ...figures].map(({ condition }) => condition))

type Pair<T> = readonly [found: T | undefined, proposed: T | undefined]

/** Both sides' things under one key each, in the order in which they come up. */
function pairs<T>(
  found: readonly T[],
  proposed: readonly T[],
  keys: readonly ((one: T) => string)[],
): Pair<T>[] {
  const [keyFound = String, keyProposed = String] = keys
  const all = new Map<string, Pair<T>>()
  for (const one of found) all.set(keyFound(one), [one, undefined])
  for (const one of proposed) all.set(keyProposed(one), [all.get(keyProposed(one))?.[0], one])
  return [...all.values()]
}

const GRAVITY: readonly Verdict['state'][] = ['fails', 'marginal', 'unknown', 'holds']

/** The gravest state of each check on one side. */
function states(verdicts: readonly Verdict[]): Map<string, Verdict['state']> {
  const worst = new Map<string, Verdict['state']>()
  for (const { check, state } of verdicts) {
    const before = worst.get(check)
    if (before === undefined || GRAVITY.indexOf(state) < GRAVITY.indexOf(before)) worst.set(check, state)
  }
  return worst
}

function checkLines({ found, proposed, changed }: CompareAnswer, page: Page): string[] {
  const sides = [states(found.verdicts), states(proposed.verdicts)] as const
  const checks = [...new Set([...sides[0].keys(), ...sides[1].keys()])].filter((id) =>
    names(changed.checks, id),
  )
  if (checks.length === 0) return ['No check changes its state.', '']
  const word = (state: Verdict['state'] | undefined): string => (state === undefined ? '–' : stateWord(state))
  const rows = checks.map((check) => [check, word(sides[0].get(check)), word(sides[1].get(check))])
  const heads = [{ heading: 'check' }, { heading: 'as found' }, { heading: 'proposed' }]
  return ['Checks that change', ...table(heads, rows, page), '', ...becauseLines(changed.because, page)]
}

/** Why each check changes: its words on both sides, and the moves that do it. */
function becauseLines(because: CompareAnswer['changed']['because'], page: Page): string[] {
  const side = (label: string, one: Because['found']): string[] =>
    one === null ? [] : hanging(`    ${label.padEnd(10)}`, one.says, page.width)
  if (because.length === 0) return []
  return [
    'Why they change',
    ...because.flatMap((one) => [
      ...hanging(`  ${one.check}: `, one.says, page.width),
      ...side('as found', one.found),
      ...side('proposed', one.proposed),
    ]),
    '',
  ]
}

/** Faults by name that are on one side only. */
function faultChanges({ found, proposed }: CompareAnswer, page: Page): string[] {
  const named = (side: Side): Map<string, string> => {
    const place = placeOf(side)
    return new Map(
      side.faults.map(({ fault, title, subject }) => [
        `${fault} ${subject}`,
        `${title} (${subjectText(subject, place)})`,
      ]),
    )
  }
  const [before, after] = [named(found), named(proposed)]
  const only = (side: Map<string, string>, other: Map<string, string>): string[] =>
    [...side].flatMap(([key, words]) => (other.has(key) ? [] : [words]))
  const [gone, come] = [only(before, after), only(after, before)]
  if (gone.length === 0 && come.length === 0) return []
  return [
    'Faults by name',
    ...(gone.length === 0 ? [] : hanging('  no more: ', gone.join(', '), page.width)),
    ...(come.length === 0 ? [] : hanging('  new: ', come.join(', '), page.width)),
    '',
  ]
}

function figureLines({ found, proposed, changed }: CompareAnswer, page: Page): string[] {
  const key = (side: Side) => {
    const place = placeOf(side)
    return (figure: Figure): string =>
      [figureName(figure), subjectText(figure.subject, place), conditionWords(figure.condition)].join('\n')
  }
  const silent = [silentBells(found.figures), silentBells(proposed.figures)] as const
  const rows = pairs(found.figures, proposed.figures, [key(found), key(proposed)]).flatMap(
    ([before, after]) => {
      const one = after ?? before
      if (one === undefined || !names(changed.figures, one.id)) return []
      const texts = [before, after].map((figure, k) =>
        figure === undefined ? '–' : figureText(figure, silent[k]),
      )
      if (texts[0] === texts[1]) return []
      const place = placeOf(after === undefined ? found : proposed)
      return [[figureName(one), subjectText(one.subject, place), conditionWords(one.condition), ...texts]]
    },
  )
  if (rows.length === 0) return ['No figure changes.', '']
  const heads = [
    { heading: 'figure' },
    { heading: 'of' },
    { heading: 'with' },
    { heading: 'as found', align: 'right' },
    { heading: 'proposed', align: 'right' },
  ] as const
  const reasons = [...found.figures, ...proposed.figures].flatMap(({ id, approximate }) =>
    approximate === undefined || !names(changed.figures, id) ? [] : [approximate],
  )
  return ['Figures that change', ...table(heads, rows, page), '', ...approximations(reasons, page)]
}

/** Moves, what they change, the proposed side's verdicts, and its counts on the last line. */
export function compareText(answer: CompareAnswer, page: Page): string[] {
  const { moves, proposed, counts } = answer
  const steps = moves.flatMap((move, at) => hanging(`${String(at + 1).padStart(3)} `, move, page.width))
  return [
    ...heading(answer, page),
    ...(steps.length === 0
      ? ['No rewire leads from one side to the other; their wiring may differ all the same.']
      : ['Moves', ...steps]),
    '',
    ...checkLines(answer, page),
    ...faultChanges(answer, page),
    ...equalOnBothLines(answer.found.figures, answer.proposed.figures, page),
    ...figureLines(answer, page),
    ...hanging('', `As proposed: ${proposed.name}`, page.width),
    '',
    ...verdictLines(proposed, placeOf(proposed), page),
    ...caution(page),
    countsLine(counts, page),
  ]
}
