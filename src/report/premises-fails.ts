/** What fails on premises: what is alike in several sets said once. */
import type { Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import type { Figure } from '../figures/figure.ts'
import { placeAbout, placesText, withoutPlace } from './about-place.ts'
import { figureName, limitSource, limitText } from './amounts.ts'
import { consequenceRows, rangeText } from './consequence-rows.ts'
import { type Group, grouped } from './groups.ts'
import type { Page } from './paint.ts'
import { pathText } from './place-names.ts'
import { PAIR_LEGEND, PAIRS, pairTable } from './premises-pairs.ts'
import { explainedBy } from './text-faults.ts'
import { labelled, stateText } from './text-verdict.ts'
import { conditionWords, VERDICT_WORDS } from './words.ts'
import { columns, hanging, wrap } from './wrap.ts'

/** Named faults under their heading, equal ones of several sets as one. */
export function premisesFaults(
  faults: readonly NamedFault[],
  places: readonly string[],
  page: Page,
): string[] {
  if (faults.length === 0) return []
  const groups = grouped(faults, places, ({ fault, subject, says, mend }) =>
    [fault, subject, says, mend].join('\n'),
  )
  return [
    page.paint.bold('What is wrong'),
    ...groups.flatMap(({ first, places: at }) => {
      const place = placeAbout(first, places)
      const where = placesText(at, places) || first.subject
      const title = `${where}: ${first.title}`
      const says = withoutPlace(first.says, place)
      return [
        ...wrap(title, page.width - 2).map((line) => `  ${page.paint.bad(line)}`),
        ...hanging('    ', says, page.width),
        ...(first.path.length === 0
          ? []
          : hanging('    path  ', pathText(shortened(first.path), place, page), page.width)),
        ...consequenceRows(first.consequences, places, page, 4),
      ]
    }),
    '',
  ]
}

/** Failing and marginal verdicts, grouped; what a named fault explains stands in one line. */
export function premisesFails(
  verdicts: readonly Verdict[],
  faults: readonly NamedFault[],
  places: readonly string[],
  page: Page,
): string[] {
  const grave = (['fails', 'marginal'] as const).flatMap((state) =>
    verdicts.filter((one) => one.state === state),
  )
  if (grave.length === 0) return []
  const open = grave.filter((one) => explainedBy(one, faults, places) === undefined)
  const pairs = open.filter(({ check }) => check === PAIRS)
  const others = open.filter((one) => !pairs.includes(one))
  const groups = grouped(others, places, (one) => [one.check, one.state, one.says].join('\n'))
  return [
    page.paint.bold('What fails, by check'),
    ...explainedLines(grave, faults, places, page),
    ...groups.flatMap((group) => groupLines(group, places, page)),
    ...pairLines(pairs, places, page),
    '',
  ]
}

/** Pairs of sets off-hook together, a table for each state. */
function pairLines(pairs: readonly Verdict[], places: readonly string[], page: Page): string[] {
  return (['fails', 'marginal'] as const).flatMap((state) => {
    const some = pairs.filter((one) => one.state === state)
    const [first] = some
    if (first === undefined) return []
    const where = placesText(
      some.map((one) => placeAbout(one, places)),
      places,
    )
    const sources = new Set(some.flatMap(({ limit }) => (limit === null ? [] : [limitSource(limit)])))
    return [
      ...titleLines(first, `${PAIRS} · ${where}`, page),
      ...pairTable(some, places, page),
      ...hanging('  ', PAIR_LEGEND, page.width),
      ...labelled('limit', [...sources].join('; '), page),
    ]
  })
}

/** What named faults explain, a line for each fault and state. */
function explainedLines(
  grave: readonly Verdict[],
  faults: readonly NamedFault[],
  places: readonly string[],
  page: Page,
): string[] {
  const lines = new Map<string, { readonly first: Verdict; readonly says: string; readonly of: Verdict[] }>()
  for (const one of grave) {
    const fault = explainedBy(one, faults, places)
    if (fault === undefined) continue
    const key = `${one.state} ${fault.title}`
    const line = lines.get(key) ?? { first: one, says: fault.title, of: [] }
    line.of.push(one)
    lines.set(key, line)
  }
  return [...lines.values()].flatMap(({ first, says, of }) => {
    const checks = [...new Set(of.map(({ check }) => check))].map((check) => {
      const at = of.filter((one) => one.check === check).map((one) => placeAbout(one, places))
      const where = placesText(at, places)
      return where === '' ? check : `${check} (${where})`
    })
    return titleLines(first, `${checks.join(', ')}; as said above: ${says}`, page)
  })
}

function titleLines(first: Verdict, text: string, page: Page): string[] {
  const word = VERDICT_WORDS[first.state]
  const title = hanging(`${word}  `, text, page.width)
  return [stateText(first, page) + (title[0] ?? '').slice(columns(word)), ...title.slice(1)]
}

function groupLines(
  { first, all, places: at }: Group<Verdict>,
  places: readonly string[],
  page: Page,
): string[] {
  const worst = worstOf(all) ?? first
  const place = placeAbout(worst, places)
  const { figure, limit } = worst
  return [
    ...titleLines(first, `${first.check} · ${placesText(at, places) || first.subject}`, page),
    ...hanging('  ', withoutPlace(worst.says, place), page.width),
    ...(worst.path.length === 0 ? [] : labelled('path', pathText(worst.path, place, page), page)),
    ...(figure === null
      ? []
      : labelled(
          'figure',
          `${figureName(figure)}: ${rangeText(all.flatMap((one) => (one.figure?.id === figure.id ? [one.figure] : [])))} (${conditionWords(alone(figure, place))})`,
          page,
        )),
    ...(limit === null ? [] : labelled('limit', limitText(limit), page)),
  ]
}

/** The figure's condition as far as its own set goes. */
function alone({ condition }: Figure, place: string | undefined): Figure['condition'] {
  const own = place === undefined ? undefined : condition.sets[place]
  return own === undefined || place === undefined
    ? condition
    : { line: condition.line, sets: { [place]: own } }
}

function worstOf(all: readonly Verdict[]): Verdict | undefined {
  return [...all].sort((p, q) => (p.margin ?? 0) - (q.margin ?? 0))[0]
}

/** So many ids of a path are shown on either side of what is left out. */
const ENDS = 3

/** A long path by its ends; JSON has it whole. */
function shortened(path: readonly string[]): readonly string[] {
  return path.length > 3 * ENDS ? [...path.slice(0, ENDS), '…', ...path.slice(-ENDS)] : path
}
