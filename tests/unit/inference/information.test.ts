import fc from 'fast-check'
import { believe } from 'ringproof/inference/belief'
import { groupIndex, groupsOf } from 'ringproof/inference/groups'
import type { Hypotheses } from 'ringproof/inference/hypotheses'
import { entropy, expectedInformation, uncertainty, worthOf } from 'ringproof/inference/information'
import { rankNext } from 'ringproof/inference/next'
import { outcomesOf } from 'ringproof/inference/outcomes'
import { describe, expect, test } from 'vitest'
import { asked, hypotheses } from '../../support/hypotheses.ts'
import { SEED } from '../../support/seed.ts'
import { anyHypotheses } from './_any.ts'

const runs = { seed: SEED, numRuns: 200 }
const all = (among: Hypotheses): number[] => among.observables.map((_, k) => k)

describe('expected information', () => {
  test('lies between nothing and the entropy of the groups; outcomes are probabilities', () => {
    fc.assert(
      fc.property(anyHypotheses, fc.boolean(), (among, grouped) => {
        const groups = grouped ? groupIndex(groupsOf(among, [0]), among.count) : undefined
        const worth = worthOf(believe(among, []), groups)
        for (const k of all(among)) {
          const bits = expectedInformation(among, worth, k)
          expect(bits).toBeGreaterThanOrEqual(0)
          expect(bits).toBeLessThanOrEqual(uncertainty(worth) + 1e-9)
          for (const row of outcomesOf(among, k, worth.asked).rows)
            expect(Math.abs(row.reduce((sum, one) => sum + one, 0) - 1)).toBeLessThan(1e-9)
        }
      }),
      runs,
    )
  })

  test('of the members and of their groups: the chain rule', () => {
    // I(H; O) = I(G; O) + Σ p(g) I(H; O | g), Cover and Thomas, 2nd ed., theorem 2.5.2
    fc.assert(
      fc.property(anyHypotheses, (among) => {
        const half = Int32Array.from({ length: among.count }, (_, k) => k % 2)
        const belief = believe(among, [])
        const whole = worthOf(belief)
        const parted = worthOf(belief, half)
        for (const k of all(among).filter((one) => among.observables[one]?.cuts !== undefined)) {
          let within = 0
          for (const g of [0, 1]) {
            const of = belief.of.map((p, at) => (half[at] === g ? p : 0))
            const share = of.reduce((sum, one) => sum + one, 0)
            if (share === 0) continue
            const inside = worthOf({ of: of.map((p) => p / share), none: 0 })
            within += share * expectedInformation(among, inside, k)
          }
          const [one, other] = [whole, parted].map((worth) => expectedInformation(among, worth, k))
          expect(Math.abs((one ?? 0) - (other ?? 0) - within)).toBeLessThan(1e-9)
        }
      }),
      runs,
    )
  })

  test('of an answer is the mean fall of uncertainty over what may be answered', () => {
    fc.assert(
      fc.property(anyHypotheses, (among) => {
        const before = worthOf(believe(among, []))
        for (const k of all(among)) {
          const cuts = among.observables[k]?.cuts
          if (cuts === undefined) continue
          const { rows, row } = outcomesOf(among, k, before.asked)
          let mean = 0
          for (let answer = 0; answer <= cuts.length; answer++) {
            let share = before.none * (rows.at(-1)?.[answer] ?? 0)
            before.weight.forEach((p, i) => {
              share += p * (rows[row[i] ?? 0]?.[answer] ?? 0)
            })
            mean += share * uncertainty(worthOf(believe(among, [{ observable: k, answer }])))
          }
          const bits = expectedInformation(among, before, k)
          expect(Math.abs(uncertainty(before) - mean - bits)).toBeLessThan(1e-4)
        }
      }),
      runs,
    )
  })

  test('is one bit for two numbers far apart, none for two alike, and counts `open`', () => {
    const reading = asked({ scale: 0.1, error: (x) => 0.01 * Math.abs(x) + 0.1 })
    const bits = (a: number, b: number): number => {
      const among = hypotheses([0.5, 0.5], [reading], [[a], [b]])
      return expectedInformation(among, worthOf(believe(among, [])), 0)
    }
    expect(bits(100, 1000)).toBeGreaterThan(0.998)
    expect(bits(100, 100)).toBeLessThan(1e-9)
    expect(bits(100, Number.POSITIVE_INFINITY)).toBeGreaterThan(0.998)
    expect(bits(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(0)
  })

  test('prunes what is hardly probable, and many that are equally so', () => {
    const sound = new Array<number>(2000).fill(0.9 / 2000)
    const worth = worthOf(believe(hypotheses([0.1 - 1e-9, 1e-9, ...sound], [], []), []))
    expect(worth.asked.length).toBe(500)
    expect(worth.asked[0]).toBe(0)
    expect(worth.asked).not.toContain(1)
    expect(Math.abs(worth.weight.reduce((sum, one) => sum + one, worth.none) - 1)).toBeLessThan(1e-12)
    expect(entropy([0.5, 0.5, 0])).toBe(1)
  })
})

describe('what to observe next', () => {
  const yes = asked({ cuts: [0.5] })
  test('is what tells most for its effort, then what costs least, then what comes first', () => {
    const rows = [
      [0, 0, 0, 1],
      [0, 1, 1, 1],
      [1, 0, 0, 1],
      [1, 1, 1, 1],
    ]
    const observables = [{ ...yes, effort: 3 }, { ...yes, effort: 2 }, { ...yes, effort: 2 }, yes]
    const among = hypotheses([0.25, 0.25, 0.25, 0.25], observables, rows)
    const worth = worthOf(believe(among, []))
    expect(rankNext(among, worth, [3, 2, 1, 0]).map(({ observable }) => observable)).toEqual([1, 2, 0, 3])
    const cheap = (k: number): number => (k === 0 ? 1 : 5)
    expect(rankNext(among, worth, [1, 0], cheap)[0]).toEqual({ observable: 0, bits: 1, effort: 1 })
  })
})
