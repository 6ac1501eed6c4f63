/** The fault book as text: how many faults show what, then the faults by what a person notices, with what tells them. */
import type { FaultsAnswer, Notice, PairsAnswer } from '../answer/faults-answer.ts'
import { leading, noticeText, symptomOf } from './fault-book-notices.ts'
import { heading } from './heading.ts'
import type { Page } from './paint.ts'
import { shortId, subjectText } from './place-names.ts'
import { type Column, table } from './table.ts'
import { groupsLines, stillLines } from './text-fault-book-groups.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** How many of all, by symptom; faults in groups of what is noticed, those that move nothing, pairs. */
export function faultsText(answer: FaultsAnswer, page: Page): string[] {
  const { cautions, sound } = answer
  return [
    ...heading({ ...answer, request: shownRequest(answer) }, page),
    ...cautions.flatMap((one) => wrap(`Caution: ${one}`, page.width).map((line) => page.paint.warn(line))),
    ...(cautions.length === 0 ? [] : ['']),
    ...countLines(answer, page),
    ...summaryLines(answer, page),
    ...(sound.length === 0
      ? []
      : [
          ...hanging(
            'With nothing wrong: ',
            `${noticeText(leading(sound))}; that is no fault of the set.`,
            page.width,
          ),
          '',
        ]),
    ...groupsLines(answer, page),
    ...stillLines(answer, page),
    ...pairLines(answer, page),
  ]
}

/** The symptoms stand in the heading as they were asked for. */
function shownRequest({ request }: FaultsAnswer): FaultsAnswer['request'] {
  const { symptoms, ...rest } = request
  return Array.isArray(symptoms) ? { ...rest, symptom: symptoms.join(', ') } : rest
}

const SUMMARY: readonly Column[] = [
  { heading: 'faults', align: 'right' },
  { heading: 'with which is noticed' },
]

/** By symptom how many faults show it, the most first; one that only ever follows from another is left out. */
function summaryLines({ faults }: FaultsAnswer, page: Page): string[] {
  const counts = new Map<string, { readonly one: Notice; count: number }>()
  const leads = new Set(faults.flatMap(({ notices }) => leading(notices).map(symptomOf)))
  for (const one of faults.flatMap(({ notices }) => notices)) {
    if (!leads.has(symptomOf(one))) continue
    const known = counts.get(symptomOf(one)) ?? { one, count: 0 }
    known.count += 1
    counts.set(symptomOf(one), known)
  }
  const quiet = faults.filter(({ notices }) => notices.length === 0).length
  const rows = [...counts.values()]
    .sort((p, q) => q.count - p.count)
    .map(({ one, count }) => [`${count}`, noticeText([one])])
  if (rows.length > 0 && quiet > 0) rows.push([`${quiet}`, 'nothing; readings alone tell'])
  return rows.length === 0 ? [] : [...table(SUMMARY, rows, page), '']
}

/** So many pairs are printed; JSON holds more. */
const FEW = 20

function pairLines({ pairs, place }: FaultsAnswer, page: Page): string[] {
  if (pairs === undefined) return []
  const shown = pairs.likeliest.slice(0, FEW)
  const rows = shown.map(({ says, notices }) => [
    says.map((one) => subjectText(one, place)).join(' and '),
    notices.length === 0
      ? 'nothing'
      : leading(notices)
          .map((one) => `${shortId(one.test, place)} ${one.answer}`)
          .join(', '),
  ])
  const heads = [{ heading: 'two faults at once' }, { heading: 'noticed' }]
  return [
    ...wrap(pairsTitle(pairs), page.width).map((line) => page.paint.bold(line)),
    ...(rows.length === 0 ? ['  none'] : table(heads, rows, page)),
    '',
  ]
}

function pairsTitle({ count, matching, 'only together': together, likeliest }: PairsAnswer): string {
  const few =
    likeliest.length === 0 ? '' : likeliest.length > FEW ? `; the likeliest ${FEW} of these` : '; these'
  const shown = matching === count ? '' : `, ${matching} with what was asked for`
  const alone = together === matching ? '' : `, ${together} of which neither fault does it alone`
  return `Two faults at once: ${counted(count, 'pair')}${shown}${alone}${few}`
}

function countLines({ counts }: FaultsAnswer, page: Page): string[] {
  const { faults, matching, symptoms, readings } = counts
  const asked = matching === faults ? '' : `, ${matching} of them with what was asked for`
  const still = counts['moving nothing']
  const silent = still === 0 ? '' : `, ${still} that nothing here tells`
  const text = `${counted(faults, 'fault')}${asked}${silent}; ${counted(symptoms, 'symptom')} and ${counted(readings, 'reading')} looked at`
  return [...wrap(text, page.width), '']
}
