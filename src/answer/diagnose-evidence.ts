/** What is known before the first question, as people write it: complaints, observations and readings. */
import type { BenchTest } from '../book/bench-test.ts'
import { COMPLAINTS, type Complaint, complaintsFor } from '../book/bench-tests/index.ts'
import type { Step } from '../diagnosis/state.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { oneOf, wordedOutcome } from './diagnose-outcome.ts'
import { readingStep } from './diagnose-reading.ts'

/** What was said. */
export interface Said {
  /** Complaints by their id, `rings-but-no-speech`, or symptoms as below. */
  readonly symptoms?: readonly string[]
  /** `heard=no`: a question and its answer. */
  readonly observed?: readonly string[]
  /** `plug.a plug.b off-hook 210 Ω`: a reading and its value. */
  readonly readings?: readonly string[]
}

/** A step with the words that it was said in. */
interface Worded extends Step {
  readonly text: string
}

/**
 * All of it as steps, complaints first. What is said of a question several times, here by a complaint, there by its
 * answer, is what all of it leaves.
 * @throws ProblemError `request-wrong` for what cannot be understood, what does not apply where the set stands, and
 * what contradicts itself
 */
export function evidenceOf(
  { symptoms = [], observed = [], readings = [] }: Said,
  tests: readonly BenchTest[],
): readonly Step[] {
  const complaints = complaintsFor(tests)
  const worded = [
    ...symptoms.flatMap(
      (text) => complaintSteps(text, complaints) ?? [observedStep(text, tests, complaints, false)],
    ),
    ...observed.map((text) => observedStep(text, tests, complaints, true)),
  ]
  return [...agreed(worded), ...readings.map((text) => readingStep(text, tests))]
}

/** Steps of the same question made one. @throws ProblemError where they leave no answer */
function agreed(steps: readonly Worded[]): readonly Step[] {
  const all = new Map<string, Worded>()
  for (const step of steps) {
    const before = all.get(step.test)
    all.set(step.test, before === undefined ? step : both(before, step))
  }
  return [...all.values()].map(({ test, outcome }) => (outcome === undefined ? { test } : { test, outcome }))
}

function both(before: Worded, now: Worded): Worded {
  const left = answersIn(now).filter((id) => answersIn(before).includes(id))
  if (left.length > 0) return { ...now, outcome: oneOf(left), text: `${before.text}, ${now.text}` }
  refuse({
    code: 'request-wrong',
    found: `\`${before.text}\` and \`${now.text}\`, which contradict each other about \`${now.test}\``,
    expected: 'only what holds now',
    mend: `leave one of them out: the first says ${answersIn(before).join(' or ')}, the other ${answersIn(now).join(' or ')}`,
  })
}

function answersIn({ outcome }: Step): readonly string[] {
  if (outcome === undefined) return []
  return 'answers' in outcome ? outcome.answers : 'answer' in outcome ? [outcome.answer] : []
}

function complaintSteps(text: string, complaints: readonly Complaint[]): readonly Worded[] | undefined {
  const id = text.trim().toLowerCase()
  const found = complaints.find((one) => one.id === id)
  return found?.answers.map(({ test, answers }) => ({ test, outcome: oneOf(answers), text: id }))
}

/** `rings=silent`; as a symptom also `rings`, for any answer that is not as it should be. */
function observedStep(
  text: string,
  tests: readonly BenchTest[],
  complaints: readonly Complaint[],
  isAnswered: boolean,
): Worded {
  const at = text.indexOf('=')
  const id = (at === -1 ? text : text.slice(0, at)).trim().toLowerCase()
  const test = tests.find((one) => one.id === id && one.words !== undefined)
  if (test === undefined) refuseName(id, tests, complaints, isAnswered)
  if (at !== -1) return { test: id, outcome: wordedOutcome(test, text.slice(at + 1)), text: text.trim() }
  const answers = test.words?.answers ?? []
  if (isAnswered)
    refuse({
      code: 'request-wrong',
      found: `the question \`${id}\` without an answer`,
      expected: `\`${id}=\` with one of ${answers.map((one) => one.id).join(', ')}`,
      mend: `write \`--observed ${id}=${answers[0]?.id}\`, if that is what it does`,
    })
  const amiss = answers.filter(({ fine }) => !fine).map((one) => one.id)
  return { test: id, outcome: oneOf(amiss), text: id }
}

function refuseName(
  id: string,
  tests: readonly BenchTest[],
  complaints: readonly Complaint[],
  isAnswered: boolean,
): never {
  const questions = tests.filter(({ words }) => words !== undefined).map((one) => one.id)
  const complaint = COMPLAINTS.find((one) => one.id === id)
  if (complaint !== undefined && questions.length > 0)
    isAnswered && complaints.includes(complaint)
      ? refuse({
          code: 'request-wrong',
          found: `the complaint \`${id}\` where an answer is due`,
          expected: `a question with its answer: one of ${questions.join(', ')}`,
          mend: `write \`--symptom ${id}\``,
        })
      : refuseComplaint(complaint, questions, complaints)
  const names = [...(isAnswered ? [] : complaints.map((one) => one.id)), ...questions]
  const near = nearest(id, names)
  const asked = `a question with its answer, such as \`${questions[0]}=…\`: one of ${questions.join(', ')}`
  const told = `a complaint: ${complaints.map((one) => one.id).join(', ')}; or `
  refuse({
    code: 'request-wrong',
    found: isAnswered ? `the question \`${id}\`` : `the symptom \`${id}\``,
    expected:
      questions.length === 0
        ? 'no symptom, since the set is on no line'
        : `${isAnswered || complaints.length === 0 ? '' : told}${asked}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** A complaint that somebody may have, yet not of this set where it stands. */
function refuseComplaint(
  { id, says, answers }: Complaint,
  questions: readonly string[],
  complaints: readonly Complaint[],
): never {
  const lacks = answers.map(({ test }) => test).filter((test) => !questions.includes(test))
  refuse({
    code: 'request-wrong',
    found: `the complaint \`${id}\`: ${says}`,
    expected: `something that this set can do or fail to do where it stands; it has no part, or nothing beside it, of which ${lacks.map((one) => `\`${one}\``).join(' and ')} could be asked`,
    mend:
      complaints.length === 0
        ? `say what is seen of it: one of ${questions.join(', ')}`
        : `of this set one may complain: ${complaints.map((one) => one.id).join(', ')}`,
  })
}
