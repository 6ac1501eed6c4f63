/** What is known before the first question, as people write it: complaints, observations and readings. */
import type { BenchTest } from '../book/bench-test.ts'
import { type Complaint, complaintsFor } from '../book/bench-tests/index.ts'
import type { Outcome, Step } from '../diagnosis/state.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { readsAs, wordedOutcome, writtenReading } from './diagnose-outcome.ts'

/** What was said. */
export interface Said {
  /** Complaints by their id, `rings-but-no-speech`, or symptoms as below. */
  readonly symptoms?: readonly string[]
  /** `heard=no`: a question and its answer. */
  readonly observed?: readonly string[]
  /** `plug.a plug.b off-hook 210 Ω`: a reading and its value. */
  readonly readings?: readonly string[]
}

/**
 * All of it as steps, complaints first: what is said more exactly later on counts instead.
 * @throws ProblemError `request-wrong` for what cannot be understood, and for what does not apply where the set stands
 */
export function evidenceOf(
  { symptoms = [], observed = [], readings = [] }: Said,
  tests: readonly BenchTest[],
): readonly Step[] {
  const complaints = complaintsFor(tests)
  return [
    ...symptoms.flatMap((text) => complaintSteps(text, complaints) ?? observedStep(text, tests, complaints)),
    ...observed.flatMap((text) => observedStep(text, tests, [])),
    ...readings.map((text) => readingStep(text, tests)),
  ]
}

function complaintSteps(text: string, complaints: readonly Complaint[]): readonly Step[] | undefined {
  const found = complaints.find(({ id }) => id === text.trim())
  return found?.answers.map(({ test, answers }) => ({ test, outcome: outcomeOf(answers) }))
}

function outcomeOf(answers: readonly string[]): Outcome {
  const [only, ...others] = answers
  return only !== undefined && others.length === 0 ? { answer: only } : { answers }
}

/** `rings=silent`, or `rings` for any answer that is not as it should be. */
function observedStep(
  text: string,
  tests: readonly BenchTest[],
  complaints: readonly Complaint[],
): readonly Step[] {
  const at = text.indexOf('=')
  const id = (at === -1 ? text : text.slice(0, at)).trim()
  const test = tests.find((one) => one.id === id && one.words !== undefined)
  if (test === undefined) {
    const known = [
      ...complaints.map((one) => one.id),
      ...tests.filter(({ words }) => words !== undefined).map((one) => one.id),
    ]
    refuseName(`the symptom \`${id}\``, known, id)
  }
  if (at !== -1) return [{ test: id, outcome: wordedOutcome(test, text.slice(at + 1)) }]
  const amiss = test.words?.answers.filter(({ fine }) => !fine).map((one) => one.id) ?? []
  return [{ test: id, outcome: outcomeOf(amiss) }]
}

/**
 * Ids of readings begin with the range: `ohms plug.a plug.b off-hook`. People leave it out: then it is the first range
 * that shows what was read.
 */
function readingStep(text: string, tests: readonly BenchTest[]): Step {
  const words = text.trim().split(/\s+/)
  const readings = tests.filter((one) => one.words === undefined)
  const fits = (names: readonly string[]): boolean => names.every((name, k) => name === words[k])
  const found = readings
    .flatMap((test) => {
      const names = test.id.split(' ')
      return [names, names.slice(1)]
        .filter((one) => one.length > 0 && fits(one))
        .map((one) => ({ test, one }))
    })
    .map(({ test, one }) => ({ test, length: one.length, value: words.slice(one.length).join(' ') }))
    .sort((a, b) => b.length - a.length)
  const alike = found.filter(({ length }) => length === found[0]?.length)
  const meant = alike.find(({ test, value }) => readsAs(test, value)) ?? alike[0]
  if (meant !== undefined) return { test: meant.test.id, outcome: writtenReading(meant.test, meant.value) }
  const turned = readings.find(({ id }) => {
    const [, red, black, ...when] = id.split(' ')
    return red !== undefined && black !== undefined && fits([black, red, ...when])
  })
  const near = nearest(
    text,
    readings.map(({ id }) => id),
  )
  refuse({
    code: 'request-wrong',
    found: `the reading \`${text}\``,
    expected:
      readings.length === 0
        ? 'no reading, since this book holds none'
        : `a reading of this book, then its value, such as \`${readings[0]?.id} 210 Ω\``,
    ...(turned !== undefined
      ? { mend: `this book holds the leads the other way: \`${turned.id}\`` }
      : near !== undefined
        ? { mend: `perhaps \`${near}\`` }
        : { mend: '`ringproof faults` names the readings that tell' }),
  })
}

function refuseName(found: string, known: readonly string[], word: string): never {
  const near = nearest(word, known)
  refuse({
    code: 'request-wrong',
    found,
    expected: known.length === 0 ? 'no symptom, since the set is on no line' : `one of ${known.join(', ')}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}
