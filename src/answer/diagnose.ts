/** `diagnose`: why does it not work? Causes ranked by what was observed, and the question that tells most. */
import { complaintsFor } from '../book/bench-tests/index.ts'
import { workBook, workPairs } from '../book/work-book.ts'
import { type Case, caseOf } from '../diagnosis/case.ts'
import { nextQuestion, type Question } from '../diagnosis/next.ts'
import { resultOf } from '../diagnosis/result.ts'
import { type Allowed, answer, begin, type State, skip, undo } from '../diagnosis/state.ts'
import { AT_WORK, UNPLUG } from '../meter/cautions.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { type BookRequest, type LaidOut, layOut } from './book-order.ts'
import type { DiagnoseAnswer, NextQuestion } from './diagnose-answer.ts'
import { evidenceOf, type Said } from './diagnose-evidence.ts'
import { writtenOutcome } from './diagnose-outcome.ts'
import { toldAgain } from './diagnose-reading.ts'
import { groupOf, questionOf, weighedOf } from './diagnose-tell.ts'
import { envelope } from './envelope.ts'
import { type BookMeans, meansWith } from './faults.ts'
import { deliveredOdds } from './odds-table.ts'
import { standsOf } from './stands.ts'
import { whereAsked } from './where-asked.ts'

/** Which set, what is known of it, and what may be asked. */
export interface DiagnoseRequest extends BookRequest, Said {
  /** Whether the case may be opened; yes when absent. */
  readonly inside?: boolean
  /** Whether a live line may be asked for where nothing safer tells enough; yes when absent. */
  readonly live?: boolean
  /** Two faults at once as well. */
  readonly pairs?: boolean
}

/** A diagnosis that goes on by question and answer. States are plain data; every function leaves them as they are. */
export interface Diagnosis {
  /** What was said with the request. */
  readonly begin: State
  /** The next question; undefined where one group is sure or nothing tells more. */
  next(state: State): NextQuestion | undefined
  /**
   * The state after an answer as a person writes it.
   * @throws ProblemError `request-wrong` saying what would be understood
   */
  answer(state: State, test: string, written: string): State
  /** The state after a test that cannot or will not be done. */
  skip(state: State, test: string): State
  /** The state before the last answer. */
  undo(state: State): State
  /** What is known in a state, as `diagnose` answers it. */
  result(state: State): DiagnoseAnswer
}

/** Opens a diagnosis. @throws ProblemError for a request that is wrong */
export async function openDiagnosis(
  request: DiagnoseRequest,
  shelf: Shelf,
  means: BookMeans = {},
): Promise<Diagnosis> {
  const laidOut = layOut(request, shelf, means.build)
  const { tests } = laidOut.inputs
  // what cannot be understood is refused before anything is worked out
  const start = begin(allowedBy(request), evidenceOf(request, tests))
  const all = meansWith(means)
  const book = await workBook(laidOut, all)
  const pairs = request.pairs === true ? await workPairs(laidOut, all) : undefined
  const one = caseOf(book, deliveredOdds(), pairs)
  const testNamed = (id: string) => tests.find((test) => test.id === id)
  return {
    begin: start,
    next: (state) => told(one, nextQuestion(one, state)),
    answer: (state, id, written) => {
      const test = testNamed(id)
      return test === undefined ? state : answer(state, id, writtenOutcome(test, written))
    },
    skip,
    undo,
    result: (state) => answerOf(request, laidOut, one, state),
  }
}

/** Diagnoses from what is known. @throws ProblemError for a request that is wrong */
export async function diagnose(
  request: DiagnoseRequest,
  shelf: Shelf,
  means: BookMeans = {},
): Promise<DiagnoseAnswer> {
  const diagnosis = await openDiagnosis(request, shelf, means)
  return diagnosis.result(diagnosis.begin)
}

export type { State as DiagnosisState }

const allowedBy = ({ inside = true, live = true }: DiagnoseRequest): Allowed => ({ inside, live })

function told(one: Case, question: Question | string): NextQuestion | undefined {
  return typeof question === 'string' ? undefined : questionOf(one, question)
}

function answerOf(
  request: DiagnoseRequest,
  { standing, place, kit }: LaidOut,
  one: Case,
  state: State,
): DiagnoseAnswer {
  const { groups, none, evidence, skipped, stands, next: question } = resultOf(one, state)
  const { faults, tests } = one.book
  const next = question && questionOf(one, question)
  const pairs = one.causes.length - faults.length - 1
  return {
    ...envelope('diagnose', { ...asked(request, standing.name), instrument: kit.instrument.name }, [
      ...standing.warnings,
      ...toldAgain(state.steps.filter(({ given }) => given === true)),
    ]),
    outcome: 'answered',
    stands: standsOf(standing),
    place: place.place,
    instrument: kit.instrument.name,
    counts: { faults: faults.length, ...(pairs > 0 ? { pairs } : {}), tests: tests.length },
    decided: stands,
    groups: groups.map((group, k) => groupOf(one, group, k === 0)),
    none,
    evidence: evidence.map(weighedOf),
    skipped: skipped.map(({ id, asks }) => ({ test: id, asks })),
    ...(next === undefined ? {} : { next }),
    cautions: cautionsBefore(next),
    ...(state.steps.length === 0 ? { complaints: complaintsFor(tests) } : {}),
  }
}

/** The first questions are on the live line, yet whatever it is, somebody will open the set to mend it. */
function cautionsBefore(next: NextQuestion | undefined): readonly string[] {
  const theirs = next?.cautions ?? []
  return theirs.includes(UNPLUG) ? theirs : [AT_WORK, ...theirs]
}

function asked(request: DiagnoseRequest, name: string): Record<string, unknown> {
  const { symptoms = [], observed = [], readings = [], inside, live, pairs } = request
  return {
    diagnose: name,
    ...whereAsked(request),
    ...(symptoms.length === 0 ? {} : { symptoms }),
    ...(observed.length === 0 ? {} : { observed }),
    ...(readings.length === 0 ? {} : { readings }),
    ...(inside === false ? { inside } : {}),
    ...(live === false ? { live } : {}),
    ...(pairs === true ? { pairs } : {}),
  }
}
