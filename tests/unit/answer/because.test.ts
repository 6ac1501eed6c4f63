import { compare } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO, rewireText } from '../../support/bench.ts'

const reasons = (moves: readonly string[], set = 'fescue') => {
  const { changed } = compare({ found: '', foundText: rewireText(set, ...moves) }, DEMO)
  return new Map(changed.because.map((one) => [one.check, one]))
}

describe('why a check changes', () => {
  test('is the one move that does it, whatever stands beside it', () => {
    const why = reasons(['park core: handset.r2', 'park core: line.ringing'])
    expect(why.get('wiring.cores-reach-parts')).toMatchObject({
      moves: [1],
      says: 'Move 1 does it: without it the check would hold.',
      found: { state: 'holds' },
      proposed: { state: 'fails' },
    })
    expect(why.get('wiring.ringing-lead-to-bell')?.moves).toEqual([2])
    expect(why.get('wiring.cores-reach-parts')?.proposed?.says).not.toBe('')
  })

  test('is told in words about the same part on both sides', () => {
    const { changed } = compare({ found: 'sedge-converted' }, DEMO)
    const reach = changed.because.find(({ check }) => check === 'wiring.cores-reach-parts')
    expect(reach?.found?.says).toMatch(/^The receiver is out/)
    expect(reach?.proposed?.says).toMatch(/^The receiver is in/)
  })

  test('is every move of several that only do it together', () => {
    const joined = reasons(['fit strap: A1-C4', 'fit strap: C4-B5']).get('wiring.loop-open-on-hook')
    expect(joined).toMatchObject({ moves: [1, 2], found: { state: 'holds' }, proposed: { state: 'fails' } })
    expect(joined?.says).toMatch(
      /^Moves 1 and 2 do it together: without any one of them the check would hold\.$/,
    )
  })

  test('is each of two moves where either alone is enough', () => {
    const why = reasons(['park core: handset.r1', 'park core: handset.r2'])
    expect(why.get('wiring.cores-reach-parts')).toMatchObject({
      moves: [1, 2],
      says: 'Moves 1 and 2: each alone does it.',
    })
  })

  test('is two moves together where two others do the same', () => {
    const why = reasons([
      'fit strap: A1-C4',
      'fit strap: C4-B5',
      'fit part: one, with: {kind: resistor, from: A1, to: B1, resistance: 1 Ω}',
      'fit part: other, with: {kind: resistor, from: B2, to: B5, resistance: 1 Ω}',
    ])
    expect(why.get('wiring.loop-open-on-hook')).toMatchObject({
      moves: [1, 2],
      says: 'Moves 1 and 2 together do it, and so do the others without one of them.',
    })
  })

  test('is tried without what leans on a move as well, and that is said', () => {
    const why = reasons([
      'lift part: bell',
      'fit part: bell, with: {kind: resistor, from: C2, to: A1, resistance: 1 kΩ}',
    ])
    expect(why.size).toBeGreaterThan(0)
    const [one] = [...why.values()].filter(({ moves }) => moves.length === 1)
    expect(one?.moves).toEqual([1])
    expect(one?.says).toContain('Move 1 does it: without it, which takes 2 with it, the check would')
  })

  test('stands for every check that changes, in their order', () => {
    const { changed } = compare({ found: 'sedge-converted-as-fescue' }, DEMO)
    expect(changed.because.map(({ check }) => check)).toEqual(changed.checks)
  })

  test('is not known between two sets that no rewire joins', () => {
    const { changed, moves } = compare({ found: 'fescue', proposed: 'sedge-as-found' }, DEMO)
    expect(moves).toEqual([])
    expect(changed.because.length).toBeGreaterThan(0)
    for (const one of changed.because)
      expect(one).toMatchObject({ moves: [], says: 'No rewire leads from one side to the other.' })
  })

  test('is found from the set on the one side to its rewire on the other, and not from elsewhere', () => {
    const there = compare({ found: 'sedge-as-found', proposed: 'sedge-converted' }, DEMO)
    expect(there.moves).toHaveLength(5)
    expect(compare({ found: 'sedge', proposed: 'sedge-converted' }, DEMO).moves).toEqual([])
  })
})
