/** All verdicts, the grave ones first and in full. */
import type { Counts } from '../answer/answer.ts'
import type { Reason, Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import { ABOUT } from './amounts.ts'
import type { Page } from './paint.ts'
import { subjectText } from './place-names.ts'
import { explainedBy, faultLines } from './text-faults.ts'
import { explainedBlock, reasonsOf, stateText, verdictBlock } from './text-verdict.ts'
import { counted, REASON_WORDS, VERDICT_WORDS } from './words.ts'
import { hanging } from './wrap.ts'

/** `a, b (2), c`: each check once, with how often it stands there unless that is as `usual`. */
function listed(verdicts: readonly Verdict[], usual: number = 1): string {
  const often = new Map<string, number>()
  for (const { check } of verdicts) often.set(check, (often.get(check) ?? 0) + 1)
  return [...often].map(([check, count]) => (count === usual ? check : `${check} (${count})`)).join(', ')
}

function title(verdicts: readonly Verdict[], state: Verdict['state'], page: Page): string[] {
  return verdicts.length === 0 ? [] : [`${stateText({ state }, page)}  ${counted(verdicts.length, 'check')}`]
}

/** What is not known, by reason. Ends with an empty line. */
export function unknownLines(verdicts: readonly Verdict[], page: Page, sets: number = 1): string[] {
  const all = verdicts.filter((verdict) => verdict.state === 'unknown')
  if (all.length === 0) return []
  const reasons = new Map<Reason, Verdict[]>()
  for (const verdict of all) reasons.set(verdict.reason, [...(reasons.get(verdict.reason) ?? []), verdict])
  const lines = title(all, 'unknown', page)
  for (const [reason, those] of reasons) {
    lines.push(...hanging('  ', `${REASON_WORDS[reason] ?? reason}: ${listed(those, sets)}`, page.width))
  }
  return [...lines, '']
}

function holding(verdicts: readonly Verdict[], place: string | undefined, page: Page): string[] {
  const all = verdicts.filter((verdict) => verdict.state === 'holds')
  if (all.length === 0) return []
  const lines = [...title(all, 'holds', page), ...hanging('  ', listed(all), page.width)]
  for (const { remark, check, subject } of all) {
    if (remark === undefined) continue
    lines.push(...hanging('  remark  ', `${check} (${subjectText(subject, place)}): ${remark}`, page.width))
  }
  return [...lines, '']
}

/** `kitchen/click by its slope, although …`: a part that is swung far along its law. */
const SLOPE = /^(\S+) by its slope, although .*$/
/** So many parts are named. */
const FEW = 3

/** Each reason once, below the verdicts that carry its mark, in plain words. */
export function approximations(reasons: Iterable<string>, page: Page): string[] {
  const distinct = [...new Set(Array.from(reasons, (reason) => reason.split('; ')).flat())]
  if (distinct.length === 0) return []
  const parts = distinct.flatMap((reason) => SLOPE.exec(reason)?.[1] ?? [])
  const names = [...new Set(parts.map((id) => id.slice(id.lastIndexOf('/') + 1)))]
  const named = names.length > FEW ? `${names.length} parts` : names.join(', ')
  const plain = [
    ...distinct.filter((reason) => !SLOPE.test(reason)),
    ...(names.length === 0
      ? []
      : [`${named} by ${names.length === 1 ? 'its' : 'their'} slope at rest (docs/trust.md)`]),
  ]
  return [...hanging(ABOUT, `approximate: ${plain.join('; ')}`, page.width), '']
}

/** What of an answer its verdicts are shown with. */
interface Shown {
  readonly verdicts: readonly Verdict[]
  readonly faults: readonly NamedFault[]
}

/**
 * Named faults, then what fails, then what is marginal, each in full, but in short where a fault explains it;
 * unknown by reason, holds in short. Ends with an empty line.
 */
export function verdictLines(
  { verdicts, faults }: Shown,
  place: string | undefined,
  page: Page,
  whole: boolean = false,
): string[] {
  const places = place === undefined ? [] : [place]
  const block = (verdict: Verdict): string[] => {
    const fault = whole ? undefined : explainedBy(verdict, faults, places)
    return fault === undefined
      ? verdictBlock(verdict, place, page)
      : explainedBlock(verdict, fault, place, page)
  }
  const grave = [
    ...verdicts.filter(({ state }) => state === 'fails'),
    ...verdicts.filter(({ state }) => state === 'marginal'),
  ]
  return [
    ...faultLines(faults, place, page),
    ...grave.flatMap((verdict) => [...block(verdict), '']),
    ...approximations([...grave, ...faults].flatMap(reasonsOf), page),
    ...unknownLines(verdicts, page),
    ...holding(verdicts, place, page),
  ]
}

/** The last line: `1 fault by name, 1 fails, 0 marginal, 55 unknown, 14 hold`. */
export function countsLine({ fails, marginal, unknown, holds, faults }: Counts, { paint }: Page): string {
  const paintFails = fails > 0 ? paint.bad : paint.good
  const named = faults === 0 ? '' : `${paint.bad(`${counted(faults, 'fault')} by name`)}, `
  return `${named}${paintFails(`${fails} ${fails === 1 ? 'fails' : 'fail'}`)}, ${marginal} marginal, ${unknown} unknown, ${holds} ${holds === 1 ? 'holds' : 'hold'}`
}

/** Whether anything here tells a hand to move leads. */
export function leadsHand(verdicts: readonly Verdict[]): boolean {
  return verdicts.some(({ state, condition }) => {
    return state === 'fails' || state === 'marginal' || (state === 'holds' && condition.line === 'ringing')
  })
}

/** States in words, for tables. */
export const stateWord = (state: Verdict['state']): string => VERDICT_WORDS[state].toLowerCase()
