import fc from 'fast-check'
import { groupIndex, groupsOf } from 'ringproof/inference/groups'
import type { Hypotheses } from 'ringproof/inference/hypotheses'
import { describe, expect, test } from 'vitest'
import { asked, hypotheses } from '../../support/hypotheses.ts'
import { SEED } from '../../support/seed.ts'
import { anyHypotheses } from './_any.ts'

const OPEN = Number.POSITIVE_INFINITY
const reading = asked({ scale: 1e-3, error: () => 1 })

/** The definition, word by word: alike where no observable tells, closed transitively by walking. */
function byDefinition({ observables, count, expected }: Hypotheses, allowed: readonly number[]): number[][] {
  const isAlike = (a: number, b: number): boolean =>
    allowed.every((k) => {
      const seen = observables[k]
      const [x = Number.NaN, y = Number.NaN] = [a, b].map((one) => expected[one * observables.length + k])
      if (seen === undefined) return true
      const strange = (z: number): boolean => Number.isNaN(z) || z === Number.NEGATIVE_INFINITY
      if (strange(x) || strange(y)) return strange(x) && strange(y)
      const { cuts, scale } = seen
      if (cuts !== undefined) return cuts.every((cut) => x < cut === y < cut)
      if (x === OPEN || y === OPEN) return x === y
      const [u, v] = [Math.asinh(x / scale), Math.asinh(y / scale)]
      const error = Math.max(...[x, y].map((z) => seen.error(z) / Math.hypot(z, scale)))
      return u === v || Math.abs(u - v) < error
    })
  const groups: number[][] = []
  const seen = new Set<number>()
  for (let k = 0; k < count; k++) {
    if (seen.has(k)) continue
    const group = [k]
    seen.add(k)
    for (const one of group)
      for (let other = 0; other < count; other++)
        if (!seen.has(other) && isAlike(one, other)) {
          seen.add(other)
          group.push(other)
        }
    groups.push(group.sort((a, b) => a - b))
  }
  return groups
}

describe('groups', () => {
  test('hold what differs by less than the error everywhere, and close transitively', () => {
    const among = hypotheses([0.2, 0.2, 0.2, 0.2], [reading], [[100], [103], [100.9], [101.7]])
    expect(groupsOf(among, [0])).toEqual([[0, 2, 3], [1]])
  })

  test('part by any allowed observable, and by none when none is allowed', () => {
    const answer = asked({ cuts: [0.5] })
    const rows = [
      [100, 0, OPEN],
      [100, 1, OPEN],
      [100, 0.6, 5],
      [100, Number.NaN, Number.NaN],
    ]
    const among = hypotheses([0.2, 0.2, 0.2, 0.2], [reading, answer, reading], rows)
    expect(groupsOf(among, [])).toEqual([[0, 1, 2, 3]])
    expect(groupsOf(among, [0])).toEqual([[0, 1, 2, 3]])
    expect(groupsOf(among, [0, 1])).toEqual([[0], [1, 2], [3]])
    expect(groupsOf(among, [0, 2])).toEqual([[0, 1], [2], [3]])
    expect([...groupIndex(groupsOf(among, [0, 2]), 4)]).toEqual([0, 0, 1, 2])
    expect(groupsOf(hypotheses([], [], []), [])).toEqual([])
  })

  test('are those of the definition', () => {
    fc.assert(
      fc.property(anyHypotheses, (among) => {
        const allowed = among.observables.map((_, k) => k)
        expect(groupsOf(among, allowed)).toEqual(byDefinition(among, allowed))
      }),
      { seed: SEED, numRuns: 300 },
    )
  })
})
