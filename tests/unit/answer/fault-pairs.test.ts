import { answerText, type FaultsAnswer, PLAIN, toJson } from 'ringproof'
import { pairsAnswer } from 'ringproof/answer/fault-rows'
import type { BenchTest } from 'ringproof/book/bench-test'
import type { Book } from 'ringproof/book/book'
import type { Pairs } from 'ringproof/book/pairs'
import { describe, expect, test } from 'vitest'

const RINGS: BenchTest = {
  id: 'rings',
  asks: 'Does the bell ring?',
  how: 'Have the line called.',
  site: 'in-use',
  live: false,
  effort: 1,
  condition: { line: 'ringing', sets: {} },
  unit: '1',
  scale: 0.05,
  error: () => 0,
  words: {
    answers: [
      { id: 'silent', says: 'it is silent', fine: false },
      { id: 'rings', says: 'it rings well', fine: true },
    ],
    cuts: [1],
    slip: 0.03,
  },
  plans: [],
  score: () => 1,
}

const fault = (id: string, weight: number): Book['faults'][number] => ({
  id: `hall/${id}`,
  subjects: [`hall/${id}`],
  family: 'open',
  says: `hall/${id} is out`,
  sign: 'look',
  mend: 'mend',
  weight,
  source: 'from memory',
  changes: [],
})

/** The bell rings with each fault but the last one; with the first two at once it is silent. */
const book: Book = {
  tests: [RINGS],
  faults: [fault('p', 2), fault('q', 3), fault('r', 5), fault('s', 7)],
  scores: Float64Array.of(2, 2, 2, 2, 0),
  spreads: new Float64Array(5),
}
const pairs: Pairs = {
  count: 6,
  first: Uint16Array.of(0, 0, 0, 1, 1, 2),
  second: Uint16Array.of(1, 2, 3, 2, 3, 3),
  scores: Float32Array.of(0, 2, 0, 0.5, 0, 0),
}
const SILENT = [{ test: 0, answers: ['silent'] }]

describe('pairs of faults', () => {
  test('that show a symptom are counted; shown are those of which neither shows it alone, the likeliest first', () => {
    const { likeliest, ...counts } = pairsAnswer(book, pairs, SILENT)
    expect(counts).toEqual({ count: 6, matching: 5, 'only together': 2 })
    expect(likeliest.map(({ faults }) => faults)).toEqual([
      ['hall/q', 'hall/r'],
      ['hall/p', 'hall/q'],
    ])
    expect(likeliest[0]?.notices).toEqual([
      { test: 'rings', asks: 'Does the bell ring?', answer: 'silent', says: 'it is silent' },
    ])
  })

  test('are all shown where no symptom is asked for, a hundred at most', () => {
    const all = pairsAnswer(book, pairs, [])
    expect([all.matching, all['only together']]).toEqual([6, 6])
    expect(all.likeliest[0]?.faults).toEqual(['hall/r', 'hall/s'])
    const many: Pairs = {
      count: 150,
      first: new Uint16Array(150),
      second: new Uint16Array(150).fill(1),
      scores: new Float32Array(150),
    }
    expect(pairsAnswer(book, many, []).likeliest).toHaveLength(100)
  })

  const answer = (shown: FaultsAnswer['pairs']): FaultsAnswer => ({
    ringproof: 'faults/1',
    'made by': '0',
    request: { faults: 'hall', pairs: true },
    problems: [],
    outcome: 'answered',
    place: 'hall',
    instrument: 'digital',
    counts: { faults: 4, matching: 1, 'moving nothing': 0, symptoms: 1, readings: 0 },
    sound: [],
    faults: [],
    'moving nothing': [],
    ...(shown === undefined ? {} : { pairs: shown }),
    cautions: [],
  })
  const textOf = (shown: FaultsAnswer['pairs']): string =>
    answerText(answer(shown), { width: 80, paint: PLAIN })

  test('stand in the text with what is noticed, without the place', () => {
    const text = textOf(pairsAnswer(book, pairs, SILENT))
    expect(text.replace(/\s+/g, ' ')).toContain(
      'Two faults at once: 6 pairs, 5 with what was asked for, 2 of which neither fault does it alone; these two faults at once noticed q is out and r is out rings silent p is out and q is out rings silent',
    )
    expect(textOf({ count: 6, matching: 0, 'only together': 0, likeliest: [] })).toContain('  none\n')
    expect(textOf(pairsAnswer(book, pairs, []))).toContain('nothing')
    expect(textOf(undefined)).not.toContain('pair')
  })

  test('of which there are more than twenty are cut short in the text, not in JSON', () => {
    const many: Pairs = {
      count: 30,
      first: new Uint16Array(30),
      second: new Uint16Array(30).fill(1),
      scores: new Float32Array(30),
    }
    const shown = pairsAnswer(book, many, [])
    const text = textOf(shown)
    expect(text).toContain('Two faults at once: 30 pairs; the likeliest 20 of these')
    expect(text.match(/p is out and q is out/g)).toHaveLength(20)
    const json = JSON.parse(JSON.stringify(toJson(answer(shown))))
    expect(json.pairs.likeliest).toHaveLength(30)
    expect(json.pairs.count).toBe(30)
  })

  test('what is noticed with nothing wrong is said to be no fault of the set', () => {
    const notices = [{ test: 'rings', asks: 'Does the bell ring?', answer: 'silent', says: 'it is silent' }]
    const text = answerText({ ...answer(undefined), sound: notices }, { width: 100, paint: PLAIN })
    expect(text).toContain(
      'With nothing wrong: Does the bell ring? it is silent; that is no fault of the set.',
    )
  })
})
