import type { SpreadAnswer } from 'ringproof/answer/spread-answer'
import { PLAIN } from 'ringproof/report/paint'
import { spreadVerdicts } from 'ringproof/report/text-spread-verdicts'
import { describe, expect, test } from 'vitest'

type Shown = SpreadAnswer['verdicts'][number]

const CONDITION = { line: 'speech', sets: {} } as const
const VERDICT: Shown = {
  check: 'speech.two-sets',
  subject: 'office',
  condition: CONDITION,
  stated: 'holds',
  state: 'marginal',
  figure: {
    id: 'speech.send',
    subject: 'office/transmitter',
    condition: CONDITION,
    frequency: 1000,
    value: 477e-6,
    unit: 'A',
    residual: 0,
  },
  limit: {
    value: 366e-6,
    side: 'at-least',
    unit: 'A',
    source: 'test',
    clause: '-',
    grade: 'from memory',
  } as never,
  worst: null,
  fails: null,
}

function wordsOf(worst: Shown['worst']): string {
  const answer = { verdicts: [{ ...VERDICT, worst }], 'not followed': [] } as unknown as SpreadAnswer
  return spreadVerdicts(answer, undefined, PAGE).join(' ').replace(/\s+/g, ' ')
}

const PAGE = { width: 80, paint: PLAIN }

describe('a verdict in its worst case', () => {
  test('names another figure that decides there, without the frequency of the first', () => {
    const rests = { id: 'loop.current', subject: 'shelter', unit: 'A' } as const
    const words = wordsOf({ value: 3.1e-3, limit: 20e-3, rests })
    expect(words).toContain(
      'in the worst case loop current of shelter decides, 3.10 mA against at least 20 mA',
    )
  })

  test('says so where it cannot be judged there', () => {
    expect(wordsOf(null)).toContain('not to be judged in the worst case')
  })
})
