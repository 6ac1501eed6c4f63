/** What a person notices of a fault, short: what follows from something else that is noticed is left out. */
import type { FaultRow, Notice } from '../answer/faults-answer.ts'

/** A symptom with its answer, as `--symptom` takes it: `tone=none`. */
export const symptomOf = ({ test, answer }: Pick<Notice, 'test' | 'answer'>): string => `${test}=${answer}`

/**
 * What else follows by itself: without dial tone nobody is heard in that receiver, its owner neither, and nothing can go
 * when he dials; who cannot hear or be heard cannot talk.
 */
const FOLLOWS: Readonly<Record<string, readonly string[]>> = {
  'tone=none': ['hears=no', 'own-voice=none', 'talk=no', 'dial-breaks=stays'],
  'tone=faint': ['hears=faint', 'talk=no'],
  'hears=no': ['talk=no', 'own-voice=none'],
  'hears=faint': ['talk=no'],
  'heard=no': ['talk=no'],
  'heard=faint': ['talk=no'],
  'others-ring=silent': ['others=affected'],
  'others-ring=weak': ['others=affected'],
  'others-tone=none': ['others=affected'],
  'others-tone=faint': ['others=affected'],
  'rings=silent': ['rings-alone=silent'],
  'rings=weak': ['rings-alone=weak'],
  'engaged=engaged': ['goes-on-ringing=drops'],
}

/** The notices that no other one explains, in their order. */
export function leading(notices: readonly Notice[]): readonly Notice[] {
  const explained = new Set(notices.flatMap((one) => FOLLOWS[symptomOf(one)] ?? []))
  return notices.filter((one) => !explained.has(symptomOf(one)))
}

/** `Does the bell ring? it is silent`. */
export function noticeText(notices: readonly Notice[]): string {
  return notices.map(({ asks, says }) => `${asks} ${says}`).join('; ')
}

/** So many are told of what a group shows. */
const TOLD = 3

/** What leads, three at most; how many more there are. */
export function leadingText(notices: readonly Notice[]): string {
  const all = leading(notices)
  const more = all.length - TOLD
  return noticeText(all.slice(0, TOLD)) + (more > 0 ? `; and ${more} more` : '')
}

/** Faults of which a person notices the same. */
export interface NoticedGroup {
  readonly notices: readonly Notice[]
  readonly rows: readonly FaultRow[]
}

/** The largest group first, in its order of the netlist; the one of which nothing is noticed last. */
export function noticedGroups(
  rows: readonly FaultRow[],
  shown: (notices: readonly Notice[]) => readonly Notice[],
): readonly NoticedGroup[] {
  const groups = new Map<string, { notices: readonly Notice[]; rows: FaultRow[] }>()
  for (const row of rows) {
    const notices = shown(row.notices)
    const key = notices.map(symptomOf).join()
    const group = groups.get(key) ?? { notices, rows: [] }
    group.rows.push(row)
    groups.set(key, group)
  }
  const isQuiet = ({ notices }: NoticedGroup): number => (notices.length === 0 ? 1 : 0)
  return [...groups.values()].sort((p, q) => isQuiet(p) - isQuiet(q) || q.rows.length - p.rows.length)
}
