import { caseOf } from 'ringproof/diagnosis/case'
import { nextQuestion, type Question, rankedTests } from 'ringproof/diagnosis/next'
import { planOf } from 'ringproof/diagnosis/plan'
import { resultOf } from 'ringproof/diagnosis/result'
import { answer, begin, type Outcome, type State, skip, undo } from 'ringproof/diagnosis/state'
import { allowedTests, beliefIn, groupingIn, outcomeAt } from 'ringproof/diagnosis/weigh'
import { describe, expect, test } from 'vitest'
import { BOOK, FAULTS, ODDS, TESTS } from './_book.ts'

const one = caseOf(BOOK, ODDS)
const APART = 'ohms A1 A2 on-hook'
const APART_TOO = 'ohms A1 A3 on-hook'
const LOOP = 'ohms plug.a plug.b off-hook'
const LIVE = 'volts plug.a plug.b off-hook'
const PAIRS = {
  count: 2,
  first: Uint16Array.of(0, 1),
  second: Uint16Array.of(1, 3),
  scores: new Float32Array(2 * TESTS.length).fill(7),
}

const said = (...all: readonly (readonly [string, Outcome])[]): State =>
  all.reduce((state, [id, outcome]) => answer(state, id, outcome), begin())
const asksIn = (state: State): string => {
  const next = nextQuestion(one, state)
  return typeof next === 'string' ? next : next.test.id
}
const questionIn = (state: State): Question => {
  const next = nextQuestion(one, state)
  if (typeof next === 'string') throw new Error(next)
  return next
}

describe('a case', () => {
  test('has the sound set first, priors in proportion to the weights, and keeps a share for `none`', () => {
    const { prior, none, count } = one.among
    expect(count).toBe(1 + FAULTS.length)
    expect(none).toBe(0.03)
    expect(Math.abs(prior.reduce((sum, p) => sum + p, none) - 1)).toBeLessThan(1e-12)
    expect((prior[5] ?? 0) / (prior[0] ?? 1)).toBeCloseTo(14 / 12, 12)
  })

  test('with pairs gives them their own share, by the product of the weights', () => {
    const { among, causes } = caseOf(BOOK, ODDS, PAIRS)
    expect(causes.slice(-2)).toEqual([
      [0, 1],
      [1, 3],
    ])
    const [first = 0, second = 0] = among.prior.slice(-2)
    expect(Math.abs(first + second - 0.97 * 0.1)).toBeLessThan(1e-12)
    expect(Math.abs(second / first - (11 * 13) / (10 * 11))).toBeLessThan(1e-12)
    expect(among.expected[6 * TESTS.length]).toBe(7)
    expect(Math.abs((among.spread[6 * TESTS.length] ?? 0) - Math.hypot(0.01, 0.01))).toBeLessThan(1e-12)
    expect(Math.abs(among.prior.reduce((sum, p) => sum + p, among.none) - 1)).toBeLessThan(1e-12)
  })

  test('groups what the allowed tests do not tell apart', () => {
    expect(groupingIn(one, begin()).groups).toEqual([[0], [1], [2], [3], [4], [5]])
    expect(groupingIn(one, begin({ live: false })).groups).toEqual([[0, 3], [1], [2], [4], [5]])
    expect(groupingIn(one, begin({ inside: false, live: false })).groups).toEqual([[0, 3], [1], [2], [4, 5]])
    expect(allowedTests(one, begin({ inside: false })).map((t) => TESTS[t]?.id)).not.toContain(APART)
  })
})

describe('a state', () => {
  test('is plain data: it goes through JSON and comes back the same', () => {
    const state = skip(
      answer(begin({ live: false }, [{ test: 'tone', outcome: { answer: 'no' } }]), LOOP, { open: true }),
      APART,
    )
    expect(JSON.parse(JSON.stringify(state))).toEqual(state)
    expect(beliefIn(one, JSON.parse(JSON.stringify(state)))).toEqual(beliefIn(one, state))
  })

  test('undoes one step at a time, but not what was said at the beginning', () => {
    const start = begin({}, [{ test: 'tone', outcome: { answer: 'no' } }])
    const state = skip(answer(start, 'heard', { answer: 'well' }), LOOP)
    expect(undo(undo(state))).toEqual(start)
    expect(undo(start)).toBe(start)
  })

  test('takes one of several answers, and lets unknown tests and answers be', () => {
    const prior = beliefIn(one, begin())
    expect(beliefIn(one, said(['what', { answer: 'no' }]))).toEqual(prior)
    expect(beliefIn(one, said(['tone', { answer: 'what' }]))).toEqual(prior)
    const faintOrWell = beliefIn(one, said(['tone', { answers: ['faint', 'well'] }]))
    expect(faintOrWell.of[1] ?? 1).toBeLessThan((prior.of[1] ?? 0) / 5)
  })
})

describe('the next question', () => {
  test('is first what a call shows, in its order', () => {
    expect(planOf(one, begin()).map((t) => TESTS[t]?.id)).toEqual(['tone', 'heard'])
    expect(asksIn(begin())).toBe('tone')
    expect(asksIn(said(['tone', { answer: 'well' }]))).toBe('heard')
  })

  test('tells outcomes with their probabilities, which sum to 1, and where they point', () => {
    const { outcomes } = questionIn(begin())
    expect(outcomes.map(({ outcome }) => outcome)).toEqual([
      { answer: 'no' },
      { answer: 'faint' },
      { answer: 'well' },
    ])
    expect(Math.abs(outcomes.reduce((sum, { probability }) => sum + probability, 0) - 1)).toBeLessThan(1e-9)
    expect(outcomes[0]?.points.slice(0, 2).map(({ cause }) => cause)).toEqual([2, 1])
  })

  test('goes outside before inside, and cheaper inside once the case is open', () => {
    const heard = said(['tone', { answer: 'well' }], ['heard', { answer: 'faint' }])
    const next = questionIn(heard)
    expect(next.test.id).toBe(APART_TOO)
    expect(next.effort).toBe(9)
    expect(next.cautions.join(' ')).toMatch(/Unplug/)
    const open = answer(heard, APART_TOO, { x: 60 })
    const inside = rankedTests(one, open, beliefIn(one, open)).find(({ observable }) => observable === 3)
    expect(inside?.effort).toBe(3)
  })

  test('shows readings in stretches and `open`', () => {
    const { outcomes } = questionIn(
      skip(said(['tone', { answer: 'well' }], ['heard', { answer: 'faint' }]), APART_TOO),
    )
    const [number, open] = outcomes
    expect(number?.outcome).toMatchObject({ least: expect.any(Number), most: expect.any(Number) })
    if (number !== undefined && 'least' in number.outcome) {
      expect(number.outcome.least).toBeLessThan(50)
      expect(number.outcome.most).toBeGreaterThan(50)
    }
    expect(open?.outcome).toEqual({ open: true })
    expect(open?.points[0]?.cause).toBe(5)
  })

  test('comes to a live line last, with its caution, and never where that is not allowed', () => {
    const fine = said(['tone', { answer: 'well' }], ['heard', { answer: 'well' }], [LOOP, { x: 100 }])
    const next = questionIn(fine)
    expect(next.test.id).toBe(LIVE)
    expect(next.cautions.join(' ')).toMatch(/insulated leads/)
    const state: State = { ...fine, allowed: { inside: true, live: false } }
    for (const { observable } of rankedTests(one, state, beliefIn(one, state)))
      expect(TESTS[observable]?.live).toBe(false)
  })

  test('is none where a group is sure, and none where nothing tells', () => {
    const sure = said(['tone', { answer: 'no' }], ['heard', { answer: 'no' }], [LOOP, { open: true }])
    expect(nextQuestion(one, sure)).toBe('sure')
    const all = TESTS.reduce((state, { id }) => skip(state, id), begin())
    expect(nextQuestion(one, all)).toBe('nothing-tells')
  })

  test('asks nothing twice, whether answered or passed over', () => {
    let state = begin()
    const asked: string[] = []
    for (let next = nextQuestion(one, state); typeof next !== 'string'; next = nextQuestion(one, state)) {
      asked.push(next.test.id)
      state = skip(state, next.test.id)
    }
    expect(new Set(asked).size).toBe(asked.length)
  })
})

describe('the result', () => {
  test('ranks groups, weighs evidence for and against, and says what was passed over', () => {
    const state = skip(
      said(['tone', { answer: 'no' }], ['heard', { answer: 'no' }], [LOOP, { open: true }]),
      APART,
    )
    const { groups, none, evidence, skipped, stands, next } = resultOf(one, state)
    expect(groups[0]?.members[0]?.cause).toBe(2)
    expect(groups[0]?.probability).toBeGreaterThan(0.99)
    expect(none).toBeLessThan(0.01)
    expect(evidence.map(({ speaks }) => speaks)).toEqual(['for', 'for', 'for'])
    expect(evidence[2]).toMatchObject({ leading: { open: true }, sound: { x: 100 } })
    expect(skipped.map(({ id }) => id)).toEqual([APART])
    expect({ stands, next }).toEqual({ stands: 'sure', next: undefined })
  })

  test('says what speaks against the leading cause, and the question that is left', () => {
    const { evidence, stands, next } = resultOf(
      one,
      said(['heard', { answer: 'faint' }], ['tone', { answer: 'no' }]),
    )
    expect(evidence.some(({ speaks }) => speaks === 'against')).toBe(true)
    expect(stands).toBe('asking')
    expect(next?.test.id).toBe(LOOP)
  })

  test('names the test that was not allowed and would tell a group’s members apart', () => {
    const shut = answer(begin({ inside: false, live: false }), 'heard', { answer: 'faint' })
    const [first] = resultOf(one, shut).groups
    expect(first?.members.map(({ cause }) => cause).sort()).toEqual([4, 5])
    expect([APART, APART_TOO]).toContain(first?.apart?.id)
  })

  test('knows what a row would show', () => {
    expect(outcomeAt(one, 0.5, 0)).toEqual({ answer: 'faint' })
    expect(outcomeAt(one, Number.POSITIVE_INFINITY, 2)).toEqual({ open: true })
    expect(outcomeAt(one, 5, 2)).toEqual({ x: 5 })
    expect(outcomeAt(one, Number.NaN, 2)).toBeUndefined()
    expect(outcomeAt(one, 5, 99)).toBeUndefined()
  })
})
