/** The parts of the answer to `identify`: groups, findings, what to ask next. */
import { differencesOf } from '../identify/differences.ts'
import { type Finding, findingId } from '../identify/evidence.ts'
import type { Reader } from '../identify/expected.ts'
import { type Fit, fitOf } from '../identify/fits.ts'
import type { Judged } from '../identify/judge.ts'
import type { KnownSet } from '../identify/known.ts'
import { questionId, type Worthwhile } from '../identify/next.ts'
import { NO_TERMINAL, OPEN, outcomesOf } from '../identify/outcomes.ts'
import { type Laid, LEADS } from '../identify/stage.ts'
import type {
  IdentifiedGroup,
  IdentifiedSet,
  IdentifyAnswer,
  IdentifyFinding,
  IdentifyNext,
} from './identify-answer.ts'

/** A group by indices of known sets, the most probable first. */
export interface Ranked {
  readonly members: readonly number[]
  readonly probability: number
}

/** Groups by their probability, members too; of a set that is in no sheet those first that it is most like. */
export function rankGroups(
  groups: readonly (readonly number[])[],
  { of, changed, unknown }: Judged,
): readonly Ranked[] {
  const rank = (k: number): number => (of[k] ?? 0) + (unknown > 0.5 ? (changed[k] ?? 0) : 0)
  const sum = (members: readonly number[], by: (k: number) => number): number =>
    members.reduce((all, k) => all + by(k), 0)
  return groups
    .map((members) => ({
      members: [...members].sort((a, b) => rank(b) - rank(a) || a - b),
      probability: Math.min(
        1,
        sum(members, (k) => of[k] ?? 0),
      ),
      rank: sum(members, rank),
    }))
    .sort((a, b) => b.rank - a.rank || (a.members[0] ?? 0) - (b.members[0] ?? 0))
}

function setJson({ name, set, rewire, unit }: KnownSet): IdentifiedSet {
  return {
    name,
    set,
    ...(rewire === undefined ? {} : { rewire }),
    ...(unit === undefined ? {} : { unit }),
  }
}

/** A group with what hides in it. */
export function groupJson({ members, probability }: Ranked, known: readonly KnownSet[]): IdentifiedGroup {
  const sets = members.flatMap((k) => known[k] ?? [])
  const [first, ...others] = sets
  return {
    sets: sets.map(setJson),
    probability,
    hidden:
      first === undefined
        ? []
        : others.flatMap((one) => differencesOf(first, one).map((each) => ({ set: one.name, ...each }))),
  }
}

/** The set that a changed one was, most likely. */
export function likeMost({ changed }: Judged, known: readonly KnownSet[]): { readonly like?: string } {
  const best = changed.indexOf(Math.max(...changed))
  const name = known[best]?.name
  return name === undefined ? {} : { like: name }
}

/** A finding beside what two known sets lead to expect. */
export function findingJson(
  finding: Finding,
  first: KnownSet | undefined,
  next: KnownSet | undefined,
  reader: Reader,
): IdentifyFinding {
  const expects = (known: KnownSet | undefined): Fit =>
    known === undefined ? {} : fitOf(finding, known, reader)
  return {
    id: findingId(finding),
    found: finding.found,
    ...saidOf(finding),
    first: expects(first),
    ...(next === undefined ? {} : { next: expects(next) }),
    ...(finding.found === 'sighting' && finding.sighting.weak !== undefined
      ? { weak: finding.sighting.weak }
      : {}),
  }
}

/** A finding that no longer counts. */
export function takenBackJson(finding: Finding): IdentifyAnswer['taken back'][number] {
  return { id: findingId(finding), ...saidOf(finding) }
}

function saidOf(finding: Finding): Pick<IdentifyFinding, 'says' | 'ohms'> {
  if (finding.found === 'sighting') return { says: finding.sighting.answers[finding.answer] ?? '' }
  if (finding.found === 'absent') return { says: NO_TERMINAL }
  return Number.isFinite(finding.ohms) ? { ohms: finding.ohms } : { says: OPEN }
}

/** A question with its outcomes. */
export function nextJson(
  { question, bits, effort }: Worthwhile,
  bench: Laid,
  alive: readonly number[],
): Omit<IdentifyNext, 'again'> {
  const outcomes = outcomesOf(question, bench.known, alive, bench.reader).map(({ sets, ...rest }) => ({
    ...rest,
    sets: sets.flatMap((k) => bench.known[k]?.name ?? []),
  }))
  const about = { id: questionId(question), ask: question.ask, bits, effort, outcomes }
  if (question.ask === 'sighting') {
    const { asks, answers } = question.sighting
    return { ...about, asks, answers }
  }
  const { red, black } = question.pair
  return {
    ...about,
    asks: `What does the meter read between ${red} and ${black}?`,
    answers: [],
    pair: question.pair,
  }
}

const SURE: readonly (readonly [least: number, says: string])[] = [
  [0.99, 'as good as certain'],
  [LEADS, 'almost certain'],
  [0.8, 'likely'],
  [0.5, 'more likely than not'],
  [0, 'not sure'],
]

/** How sure, in words. */
export function sureWords(probability: number): string {
  return SURE.find(([least]) => probability >= least)?.[1] ?? 'not sure'
}
