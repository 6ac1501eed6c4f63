import { hypothesesOf, observedOf, sightingColumn } from 'ringproof/identify/columns'
import type { Finding } from 'ringproof/identify/evidence'
import { judge } from 'ringproof/identify/judge'
import type { SightingOdds } from 'ringproof/identify/odds'
import { candidatePairs } from 'ringproof/identify/pairs'
import { type Sighting, yesNo } from 'ringproof/identify/seen/sighting'
import { unreadShare, unreadStraps } from 'ringproof/identify/unread'
import { expectedInformation, worthOf } from 'ringproof/inference/information'
import { describe, expect, test } from 'vitest'
import { KNOWN, knownSet, ODDS, READER, SIGHTINGS } from './_bench.ts'

/** Odds under which a set is one of the known ones, and a sighting is mistaken with probability f. */
function plainOdds(f: number): SightingOdds {
  const never = { probability: 1e-12, source: 'test' }
  return {
    ...ODDS,
    sightings: { ...ODDS.sightings, part: { slip: f, effort: 1, source: 'test' } },
    unknown: { ...ODDS.unknown, foreign: never, changed: never },
  }
}

const pair = [knownSet('sedge'), knownSet('marram')].map((one) => ({ ...one, share: 1 / 2 }))
const asked = (id: string): Sighting => yesNo(id, 'part', id, ({ set }) => set === 'marram')
const saw = (...answers: readonly number[]): readonly Finding[] =>
  answers.map((answer, k) => ({ found: 'sighting', sighting: asked(`part.${k}`), answer }))

/**
 * Sightings of two sets, each mistaken with probability f, are a binary symmetric channel with a repetition code.
 * @source MacKay, Information Theory, Inference, and Learning Algorithms (2003), section 1.2 (repetition code R3, f = 0.1)
 *   and section 9.5 (capacity of that channel 0.53 bit); from memory, the fractions worked by hand
 */
describe('Bayes over known sets', () => {
  test.each([
    // r = 000: ratio ((1 - f)/f)³ = 729 for nought
    [[0, 0, 0], 729 / 730],
    // r = 001: one flip against two, ratio 9
    [[0, 0, 1], 9 / 10],
    [[0, 1, 0], 9 / 10],
    [[1, 1, 0], 1 / 10],
    [[1, 1, 1], 1 / 730],
  ])('decodes %j as the textbook does', (answers, probability) => {
    const odds = plainOdds(0.1)
    const { of } = judge(pair, observedOf(saw(...answers), READER, odds), odds)
    expect(Math.abs((of[0] ?? 0) - probability)).toBeLessThan(1e-9)
  })

  test('expects of one sighting the capacity of the channel, 1 − H₂(0.1) = 0.531 bit', () => {
    const among = hypothesesOf(pair, [sightingColumn(asked('part.0'), plainOdds(0.1))], 1e-12)
    const bits = expectedInformation(among, worthOf({ of: Float64Array.of(0.5, 0.5), none: 0 }), 0)
    expect(Math.abs(bits - (1 + 0.1 * Math.log2(0.1) + 0.9 * Math.log2(0.9)))).toBeLessThan(1e-9)
  })

  test('sums to one over known, changed and foreign sets', () => {
    const findings: readonly Finding[] = [
      { found: 'reading', pair: { red: 'A3', black: 'A4', condition: 'on-hook' }, ohms: 0.2, times: 1 },
      { found: 'absent', pair: { red: 'S1', black: 'S2', condition: 'on-hook' } },
      ...SIGHTINGS.filter(({ id }) => id === 'slot').map(
        (sighting) => ({ found: 'sighting', sighting, answer: 0 }) as const,
      ),
    ]
    const { of, changed, foreign, unknown } = judge(KNOWN, observedOf(findings, READER, ODDS), ODDS)
    const sum = (all: Float64Array) => all.reduce((total, one) => total + one, 0)
    expect(Math.abs(sum(of) + sum(changed) + foreign - 1)).toBeLessThan(1e-12)
    expect(Math.abs(unknown - sum(changed) - foreign)).toBeLessThan(1e-12)
  })

  test('believes a repeated reading more than a single one, and colours less than a slot', () => {
    const read = (times: number): Finding => ({
      found: 'reading',
      pair: { red: 'A3', black: 'A4', condition: 'on-hook' },
      ohms: Number.POSITIVE_INFINITY,
      times,
    })
    const at = KNOWN.findIndex(({ name }) => name === 'sedge')
    const sedge = (times: number) => judge(KNOWN, observedOf([read(times)], READER, ODDS), ODDS).of[at] ?? 0
    expect(sedge(2)).toBeLessThan(sedge(1) / 5)
    expect(ODDS.sightings.colours.slip).toBeGreaterThan(5 * ODDS.sightings.slot.slip)
  })
})

describe('a change where nothing was read', () => {
  const marram = knownSet('marram')
  const others = (): number =>
    judge([{ ...marram, share: 1 }], observedOf(agreeing, READER, ODDS), ODDS, () => 0.5).unknown
  /** Every reading that may be asked for, each as the set's own. */
  const agreeing: readonly Finding[] = candidatePairs([marram]).map((pair) => ({
    found: 'reading',
    pair,
    ohms: READER.read(marram, pair)?.ohms ?? 0,
    times: 1,
  }))

  // hand-worked: half of its straps unread and half of the changes in straps, so that a quarter of the changed sets,
  // 0.15 · ¼, answer as the known one, 0.81, does: 0.0375/(0.0375 + 0.81)
  test('stays as probable as it was, however much fits elsewhere', () => {
    const whole = 1 - ODDS.unknown.changed.probability - ODDS.unknown.foreign.probability
    const hidden = ODDS.unknown.changed.probability / 4
    expect(Math.abs(others() - hidden / (hidden + whole))).toBeLessThan(5e-3)
  })

  test('counts the straps that a reading leads through or that were looked at, not those of a board', () => {
    const fescue = knownSet('fescue')
    expect(unreadStraps(fescue, [])).toEqual(['B2-B3', 'B4-B5', 'C3-A1'])
    const read: Finding = {
      found: 'reading',
      pair: { red: 'B3', black: 'B2', condition: 'on-hook' },
      ohms: 0.1,
      times: 1,
    }
    const strap = SIGHTINGS.find(({ id }) => id === 'strap.B4-B5')
    const seen: readonly Finding[] =
      strap === undefined ? [] : [{ found: 'sighting', sighting: strap, answer: 1 }]
    expect(unreadStraps(fescue, [read, ...seen])).toEqual(['C3-A1'])
    expect(unreadShare(fescue, [read, ...seen])).toBeCloseTo(1 / 3, 12)
    expect(unreadStraps(knownSet('sedge'), [])).not.toContain('A3-A4')
    expect(unreadShare(knownSet('darnel'), [])).toBe(0)
  })
})
