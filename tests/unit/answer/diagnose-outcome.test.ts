import { evidenceOf } from 'ringproof/answer/diagnose-evidence'
import { readsAs, wordedOutcome, writtenOutcome, writtenReading } from 'ringproof/answer/diagnose-outcome'
import { toldAgain } from 'ringproof/answer/diagnose-reading'
import type { BenchAnswer } from 'ringproof/book/bench-test'
import { ProblemError } from 'ringproof/problem'
import { describe, expect, test } from 'vitest'
import { TESTS } from '../diagnosis/_book.ts'

const [TONE, , LOOP] = TESTS
if (TONE === undefined || LOOP === undefined) throw new Error('the book by hand has changed')

/** What a refusal says. */
function refusal(work: () => unknown): string {
  try {
    work()
  } catch (error) {
    if (error instanceof ProblemError) return JSON.stringify(error.problems)
    throw error
  }
  throw new Error('nothing was refused')
}

describe('an answer in words', () => {
  test.each([
    ['1', 'no'],
    ['3', 'well'],
    ['faint', 'faint'],
    [' Well ', 'well'],
    ['f', 'faint'],
    ['not at all', 'no'],
  ])('%j is %s', (text, answer) => {
    expect(wordedOutcome(TONE, text)).toEqual({ answer })
    expect(writtenOutcome(TONE, text)).toEqual({ answer })
  })

  test.each(['0', '4', '', 'loud', '210 Ω'])('%j is refused with what it may be', (text) => {
    expect(refusal(() => wordedOutcome(TONE, text))).toMatch(/one of no, faint, well/)
  })

  test('one that was nearly right is named', () => {
    expect(refusal(() => wordedOutcome(TONE, 'feint'))).toMatch(/perhaps `faint`/)
  })
})

describe('yes and no', () => {
  const answers: readonly BenchAnswer[] = [
    { id: 'no', says: 'not at all', fine: false },
    { id: 'faint', says: 'faintly', fine: false, also: ['yes'] },
    { id: 'well', says: 'well', fine: true, also: ['yes'] },
  ]
  const asked = { ...TONE, words: { answers, cuts: [0.2, 0.7], slip: 0.03 } }

  test('are any of the answers that they plainly mean, in capitals and by a letter too', () => {
    for (const text of ['yes', 'YES', 'y'])
      expect(wordedOutcome(asked, text)).toEqual({ answers: ['faint', 'well'] })
    expect(wordedOutcome(asked, 'N')).toEqual({ answer: 'no' })
  })

  test('are refused where they mean none', () => {
    expect(refusal(() => wordedOutcome(TONE, 'yes'))).toMatch(/one of no, faint, well/)
  })

  test('whoever was just asked is not told the name of the question', () => {
    expect(refusal(() => wordedOutcome(TONE, 'loud'))).toMatch(/to `tone`/)
    expect(refusal(() => writtenOutcome(TONE, 'loud'))).not.toMatch(/to `tone`/)
  })
})

describe('a value as it is written in haste', () => {
  test('is ohms where ohms were just asked for', () => {
    expect(writtenOutcome(LOOP, '200')).toEqual({ x: 200 })
    expect(writtenOutcome(LOOP, ' 0.2 ')).toEqual({ x: 0.2 })
    expect(refusal(() => writtenOutcome({ ...LOOP, unit: 'F' }, '2'))).toMatch(/without a unit.*write `2 µF`/)
  })

  test('needs its unit where nobody asked', () => {
    expect(refusal(() => writtenReading(LOOP, '200'))).toMatch(/without a unit.*write `200 Ω`/)
  })

  test('with a comma is told to have a point', () => {
    expect(refusal(() => writtenOutcome(LOOP, '0,2 Ω'))).toMatch(/write `0\.2 Ω`, with a point, not a comma/)
    expect(refusal(() => writtenOutcome(LOOP, '0,2'))).toMatch(/write `0\.2 Ω`, with a point, not a comma/)
  })
})

describe('a reading', () => {
  test.each([
    ['210 Ω', { x: 210 }],
    ['3k3', { x: 3300 }],
    ['open', { open: true }],
    ['OL', { open: true }],
  ])('%j is read', (text, outcome) => {
    expect(writtenReading(LOOP, text)).toEqual(outcome)
    expect(writtenOutcome(LOOP, text)).toEqual(outcome)
    expect(readsAs(LOOP, text)).toBe(true)
  })

  test.each(['', '48 V', 'much', 'NaN Ω'])('%j is refused with an example', (text) => {
    expect(refusal(() => writtenReading(LOOP, text))).toMatch(/210 Ω/)
    expect(readsAs(LOOP, text)).toBe(false)
  })
})

describe('what is known before', () => {
  test('a symptom without an answer is any that is not as it should be', () => {
    expect(evidenceOf({ symptoms: ['tone'] }, TESTS)).toEqual([
      { test: 'tone', outcome: { answers: ['no', 'faint'] } },
    ])
  })

  test('complaints, observations and readings stand in this order', () => {
    const said = evidenceOf(
      {
        readings: ['plug.a plug.b off-hook 100 Ω', 'ohms A1 A2 on-hook open'],
        observed: ['tone = faint'],
        symptoms: ['cannot-be-heard'],
      },
      TESTS,
    )
    expect(said).toEqual([
      { test: 'heard', outcome: { answers: ['no', 'faint'] } },
      { test: 'tone', outcome: { answer: 'faint' } },
      { test: 'ohms plug.a plug.b off-hook', outcome: { x: 100 } },
      { test: 'ohms A1 A2 on-hook', outcome: { open: true } },
    ])
  })

  test('what is said of one question twice is what all of it leaves', () => {
    expect(evidenceOf({ symptoms: ['cannot-be-heard'], observed: ['Heard=Faint'] }, TESTS)).toEqual([
      { test: 'heard', outcome: { answer: 'faint' } },
    ])
    expect(evidenceOf({ symptoms: ['heard=faint', 'cannot-be-heard'] }, TESTS)).toEqual([
      { test: 'heard', outcome: { answer: 'faint' } },
    ])
  })

  test('what contradicts itself is refused, with both sides', () => {
    expect(refusal(() => evidenceOf({ observed: ['tone=well', 'tone=no'] }, TESTS))).toMatch(
      /`tone=well` and `tone=no`.*the first says well, the other no/,
    )
    expect(
      refusal(() => evidenceOf({ symptoms: ['cannot-be-heard'], observed: ['heard=well'] }, TESTS)),
    ).toMatch(/contradict/)
  })

  test('an observation needs its answer, and a complaint is no observation', () => {
    expect(refusal(() => evidenceOf({ observed: ['tone'] }, TESTS))).toMatch(
      /`tone=` with one of no, faint, well/,
    )
    expect(refusal(() => evidenceOf({ observed: ['cannot-be-heard'] }, TESTS))).toMatch(
      /write `--symptom cannot-be-heard`/,
    )
  })

  test('a complaint that the set cannot give cause for is told as that', () => {
    expect(refusal(() => evidenceOf({ symptoms: ['bell-silent'] }, TESTS))).toMatch(
      /the bell is silent.*of which `rings` could be asked.*one may complain: .*cannot-be-heard/,
    )
    expect(refusal(() => evidenceOf({ symptoms: ['bell-silent'] }, [{ ...TONE, id: 'buzz' }]))).toMatch(
      /what is seen of it: one of buzz/,
    )
  })

  test('complaints and questions are named apart', () => {
    expect(refusal(() => evidenceOf({ symptoms: ['purple'] }, TESTS))).toMatch(
      /a complaint: .*cannot-be-heard.*; or a question with its answer.*one of tone, heard/,
    )
  })

  test.each([
    ['plug.q plug.b off-hook 3 Ω', /the point `plug\.q`.*perhaps `plug\.[ab]`/],
    ['ohms plug.a plug.q off-hook 3 Ω', /the point `plug\.q`/],
    ['plug.a plug.b offhook 3 Ω', /the condition `offhook`.*perhaps `off-hook`/],
    ['plug.a', /no point/],
    ['A2 A1 on-hook 3 Ω', /the other way: `ohms A1 A2 on-hook`/],
    ['A2 A3 on-hook 3 Ω', /read instead one of `ohms A1 A2 on-hook`, `ohms A1 A3 on-hook`/],
    ['A1 A2 off-hook 3 Ω', /read instead one of `ohms A1 A2 on-hook`/],
  ])('the reading %j: what is wrong with it', (text, says) => {
    expect(refusal(() => evidenceOf({ readings: [text] }, TESTS))).toMatch(says)
  })

  test('a reading with two values is told', () => {
    const twice = (...all: readonly string[]) =>
      toldAgain(evidenceOf({ readings: all.map((value) => `A1 A2 on-hook ${value}`) }, TESTS))
    expect(twice('3 Ω', '4 Ω')).toMatchObject([{ severity: 'warning' }])
    expect(twice('3 Ω', '3 Ω')).toEqual([])
  })

  test('a book without symptoms, or without readings, says so', () => {
    expect(refusal(() => evidenceOf({ symptoms: ['tone'] }, [LOOP]))).toMatch(/on no line/)
    expect(refusal(() => evidenceOf({ readings: ['A1 A2 1 Ω'] }, [TONE]))).toMatch(/holds none/)
  })
})
