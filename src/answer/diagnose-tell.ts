/** A diagnosis in words and numbers: causes, evidence and the next question as the answer shows them. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Case, Cause } from '../diagnosis/case.ts'
import type { Question } from '../diagnosis/next.ts'
import type { Expectation } from '../diagnosis/outcomes.ts'
import type { Evidence, RankedGroup } from '../diagnosis/result.ts'
import type { Outcome } from '../diagnosis/state.ts'
import type { NextQuestion, PossibleCause, PossibleGroup, Seen, Weighed, WhatIf } from './diagnose-answer.ts'
import { noticesOf, scoresOf } from './fault-rows.ts'

/** So many causes of a group are told; of the leading one as many as a person may want to go through. */
const TOLD = 6
const TOLD_FIRST = 100

type Words = Pick<PossibleCause, 'says' | 'sign' | 'mend'>

const SOUND: Words = {
  says: 'nothing is wrong with the set, or nothing that anybody would notice',
  sign: 'whether another set in the same place does the same',
  mend: 'where it does, look at the line and at what else stands on it',
}

/** No fault beside what the sheet says, in words: a set that is wired wrongly by its sheet does what it must. */
function asItsSheet({ book }: Case): Words {
  const notices = noticesOf(book.tests, scoresOf(book, 0))
  if (notices.length === 0) return SOUND
  const amiss = notices.map(({ asks, says }) => `${asks} ${says}`).join('; ')
  return {
    says: `no fault beside what its sheet says; wired so, where it stands, it does this by itself: ${amiss}`,
    sign: 'whether it is wired as its sheet says',
    mend: '`ringproof check` says what fails as wired, and what mends it',
  }
}

/** What a cause is, in words. */
export function causeSays(one: Case, cause: Cause): string {
  if (cause.length === 0) return asItsSheet(one).says
  return cause.map((f) => one.book.faults[f]?.says ?? '').join('; and ')
}

/** A group with its likeliest members; those of the leading group all, as far as anybody would read. */
export function groupOf(
  one: Case,
  { members, probability, apart }: RankedGroup,
  isLeading: boolean,
): PossibleGroup {
  return {
    probability,
    size: members.length,
    causes: soundFirst(members)
      .slice(0, isLeading ? TOLD_FIRST : TOLD)
      .map((member) => ({
        ...causeOf(one, one.causes[member.cause] ?? []),
        probability: member.probability,
      })),
    ...(apart === undefined ? {} : { apart: { test: apart.id, asks: apart.asks } }),
  }
}

/** Where the sound set is among them that is said first: whatever else it may be, nobody notices it. */
function soundFirst(members: RankedGroup['members']): RankedGroup['members'] {
  return [...members].sort((a, b) => Number(b.cause === 0) - Number(a.cause === 0))
}

function causeOf(one: Case, cause: Cause): Omit<PossibleCause, 'probability'> {
  if (cause.length === 0) return { faults: [], ...asItsSheet(one) }
  const faults = cause.flatMap((f) => one.book.faults[f] ?? [])
  const both = (key: 'sign' | 'mend'): string =>
    [...new Set(faults.map((fault) => fault[key]))].join('; and ')
  return {
    faults: faults.map(({ id }) => id),
    says: causeSays(one, cause),
    sign: both('sign'),
    mend: both('mend'),
  }
}

/** What a test showed. */
export function seenOf({ words, unit }: BenchTest, outcome: Outcome): Seen {
  if ('x' in outcome) return { value: outcome.x, unit }
  if ('open' in outcome) return { value: null, state: 'open', unit }
  const answers = 'answers' in outcome ? outcome.answers : [outcome.answer]
  const says = answers.map((id) => words?.answers.find((one) => one.id === id)?.says ?? id)
  return { answers, says: says.join(', or '), unit }
}

/** What one observation says. */
export function weighedOf({ test, outcome, leading, sound, speaks, ratio }: Evidence): Weighed {
  return {
    test: test.id,
    asks: test.asks,
    observed: seenOf(test, outcome),
    leading: leading === undefined ? null : seenOf(test, leading),
    sound: sound === undefined ? null : seenOf(test, sound),
    speaks,
    ratio,
  }
}

/** The next question with what each outcome would point at. */
export function questionOf(one: Case, { test, bits, effort, cautions, outcomes }: Question): NextQuestion {
  const { id, asks, how, site, live, condition, unit } = test
  return {
    ...{ test: id, asks, how, site, live, condition, unit, effort, bits, cautions },
    outcomes: outcomes.map((each) => whatIf(one, test, each)),
  }
}

function whatIf(one: Case, test: BenchTest, { outcome, probability, points }: Expectation): WhatIf {
  const told = points.map(({ cause, members, probability: share }) => ({
    says: causeSays(one, one.causes[cause] ?? []),
    size: members,
    probability: share,
  }))
  return { ...namedOutcome(test, outcome), probability, points: told }
}

function namedOutcome({ words }: BenchTest, outcome: Expectation['outcome']): Partial<WhatIf> {
  if ('least' in outcome) return { least: outcome.least, most: outcome.most }
  if ('open' in outcome) return { state: 'open' }
  if (!('answer' in outcome)) return {}
  const says = words?.answers.find(({ id }) => id === outcome.answer)?.says
  return { answer: outcome.answer, ...(says === undefined ? {} : { says }) }
}
