/** Words of the diagnosis that the library has in sentences for terminals, here in pieces for a page. */
import type { DiagnoseAnswer, NextQuestion, PossibleCause, PossibleGroup } from '../../../index.ts'
import type { OnBench } from '../../talk/protocol.ts'

/** `about 1 minute`. */
export function minutesText(effort: number): string {
  return `about ${effort} ${effort === 1 ? 'minute' : 'minutes'}`
}

const SITES: Readonly<Record<NextQuestion['site'], string>> = {
  'in-use': 'in use: nothing is opened',
  outside: 'from outside, with the set unplugged',
  inside: 'inside the case, with the set unplugged',
}

/** Where the hands are. */
export function siteText({ site, live }: Pick<NextQuestion, 'site' | 'live'>): string {
  return live ? `${site === 'inside' ? 'inside the case' : 'from outside'}, on the live line` : SITES[site]
}

export const DECIDED: Readonly<Record<DiagnoseAnswer['decided'], string>> = {
  sure: 'It is, by what was found out:',
  asking: 'Not decided yet. Most probable now:',
  'nothing-tells': 'Nothing that may be asked tells more. Most probable:',
}

/** Whether it is rather none of the causes than the most probable of them. */
export function isNone({ groups, none }: Pick<DiagnoseAnswer, 'groups' | 'none'>): boolean {
  return none > (groups[0]?.probability ?? 0)
}

/** What is left of the whole besides the groups that are told and none of these: nothing below what a page can show. */
export function othersShare({ groups, none }: Pick<DiagnoseAnswer, 'groups' | 'none'>): number {
  const left = 1 - none - sharesOf(groups)
  return left < SHOWN_SHARE ? 0 : left
}

/** What groups amount to together. */
export function sharesOf(groups: readonly PossibleGroup[]): number {
  return groups.reduce((sum, { probability }) => sum + probability, 0)
}

/** Half of the last digit that stands on the page. */
const SHOWN_SHARE = 0.0005

/** Why an answer cannot be sent yet, for the field in which it is due. */
export function missingText(written: string, example: string): string | undefined {
  return written.trim() === ''
    ? `Nothing is written yet. Write what the meter shows, such as ${example}.`
    : undefined
}

/** How the probability of a group reads in words. */
export function likelihoodText(probability: number): string {
  if (probability >= 0.95) return 'almost certain'
  if (probability >= 0.8) return 'likely'
  if (probability >= 0.5) return 'more likely than not'
  if (probability >= 0.2) return 'quite possible'
  return probability >= 0.05 ? 'possible' : 'not likely'
}

/** How many causes of a group are not told by name. */
export function untold({ size, causes }: PossibleGroup): number {
  return size - causes.length
}

/** Causes that one look and one mend serve, taken together, in their order. */
export function alike(causes: readonly PossibleCause[]): readonly (readonly PossibleCause[])[] {
  const rows = new Map<string, PossibleCause[]>()
  for (const one of causes) {
    const key = JSON.stringify([one.sign, one.mend])
    rows.set(key, [...(rows.get(key) ?? []), one])
  }
  return [...rows.values()]
}

/** The lines of a text that say something. */
export function linesOf(text: string): readonly string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
}

/** Whether two stand for the same wiring in the same place. */
export function isSameBench(one: OnBench, other: OnBench): boolean {
  const parts = ({ set, moves, on, at, in: socket }: OnBench): string =>
    JSON.stringify([set, moves, on, at, socket])
  return parts(one) === parts(other)
}
