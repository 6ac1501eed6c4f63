import { evidenceOf } from 'ringproof/answer/diagnose-evidence'
import { readsAs, wordedOutcome, writtenOutcome, writtenReading } from 'ringproof/answer/diagnose-outcome'
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

  test('a book without symptoms, or without readings, says so', () => {
    expect(refusal(() => evidenceOf({ symptoms: ['tone'] }, [LOOP]))).toMatch(/on no line/)
    expect(refusal(() => evidenceOf({ readings: ['A1 A2 1 Ω'] }, [TONE]))).toMatch(/holds none/)
  })
})
