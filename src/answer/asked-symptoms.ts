/**
 * Symptoms as people ask for them: a complaint such as `rings-but-no-speech`, `rings=silent`, or `rings` for any answer
 * that is not as it should be.
 */
import type { BenchTest } from '../book/bench-test.ts'
import { complaintsFor } from '../book/bench-tests/index.ts'
import { answerAt } from '../book/tell-apart.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'

/** A question, by the index of its test, and the answers that are asked for. */
export interface AskedSymptom {
  readonly test: number
  readonly answers: readonly string[]
}

/**
 * Reads symptoms. A complaint stands for several questions.
 * @throws ProblemError `request-wrong` for a symptom or an answer that is not known
 */
export function askedSymptoms(
  tests: readonly BenchTest[],
  asked: readonly string[],
): readonly AskedSymptom[] {
  const complaints = complaintsFor(tests)
  return asked.flatMap((text) => {
    const complaint = complaints.find(({ id }) => id === text.trim())
    if (complaint === undefined)
      return [
        questionIn(
          text,
          tests,
          complaints.map(({ id }) => id),
        ),
      ]
    return complaint.answers.map(({ test, answers }) => ({
      test: tests.findIndex(({ id }) => id === test),
      answers,
    }))
  })
}

function questionIn(text: string, tests: readonly BenchTest[], complaints: readonly string[]): AskedSymptom {
  const at = text.indexOf('=')
  const id = (at < 0 ? text : text.slice(0, at)).trim()
  const test = tests.findIndex((one) => one.words !== undefined && one.id === id)
  const answers = tests[test]?.words?.answers ?? []
  if (test < 0) {
    const known = tests.filter(({ words }) => words !== undefined).map((one) => one.id)
    refuseName(`the symptom \`${id}\``, [...complaints, ...known], id)
  }
  if (at < 0) return { test, answers: answers.filter(({ fine }) => !fine).map((one) => one.id) }
  const answer = text.slice(at + 1).trim()
  const known = answers.map((one) => one.id)
  if (!known.includes(answer)) refuseName(`the answer \`${answer}\` to \`${id}\``, known, answer)
  return { test, answers: [answer] }
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

/** Whether a row of scores shows all symptoms that are asked for. */
export function showsAll(
  tests: readonly BenchTest[],
  asked: readonly AskedSymptom[],
  scoreOf: (test: number) => number,
): boolean {
  return asked.every(({ test, answers }) => {
    const one = tests[test]
    const given = one === undefined ? undefined : answerAt(one, scoreOf(test))
    return given !== undefined && answers.includes(given.id)
  })
}
