import { NOTHING_TOLD } from 'ringproof/web/views/diagnosis/dialogue'
import { problemText } from 'ringproof/web/views/diagnosis/problem-text'
import {
  alike,
  isNone,
  isSameBench,
  likelihoodText,
  linesOf,
  minutesText,
  missingText,
  othersShare,
  siteText,
  untold,
} from 'ringproof/web/views/diagnosis/words'
import { describe, expect, test } from 'vitest'

const cause = (says: string, sign: string, mend: string) => ({
  faults: [says],
  says,
  sign,
  mend,
  probability: 0.1,
})

describe('words of the diagnosis', () => {
  test('lines that say something', () => {
    expect(linesOf(' plug.a plug.b 1 Ω \r\n\n  \ntone=none')).toEqual(['plug.a plug.b 1 Ω', 'tone=none'])
    expect(linesOf('')).toEqual([])
  })

  test('effort, place and likelihood', () => {
    expect(minutesText(1)).toBe('about 1 minute')
    expect(minutesText(8)).toBe('about 8 minutes')
    expect(siteText({ site: 'inside', live: true })).toContain('on the live line')
    expect(siteText({ site: 'outside', live: false })).toContain('unplugged')
    expect([0.99, 0.85, 0.6, 0.3, 0.1, 0.01].map(likelihoodText)).toEqual([
      'almost certain',
      'likely',
      'more likely than not',
      'quite possible',
      'possible',
      'not likely',
    ])
  })

  test('causes with one look and one mend are taken together, in their order', () => {
    const [a, b, c] = [cause('a', 'look', 'mend'), cause('b', 'other', 'mend'), cause('c', 'look', 'mend')]
    expect(alike([a, b, c])).toEqual([[a, c], [b]])
    expect(untold({ probability: 1, size: 5, causes: [a, b] })).toBe(3)
  })

  test('none of these is said only where it is more probable than the first', () => {
    const group = { probability: 0.4, size: 1, causes: [] }
    expect(isNone({ groups: [group], none: 0.3 })).toBe(false)
    expect(isNone({ groups: [group], none: 0.5 })).toBe(true)
    expect(isNone({ groups: [], none: 0.1 })).toBe(true)
  })

  test('the shares on the page make up the whole', () => {
    const groups = [0.6, 0.25].map((probability) => ({ probability, size: 1, causes: [] }))
    expect(othersShare({ groups, none: 0.1 })).toBeCloseTo(0.05, 9)
    expect(othersShare({ groups, none: 0.15 })).toBe(0)
  })

  test('nothing is asked of a live line unless it is allowed', () => {
    expect(NOTHING_TOLD.live).toBe(false)
  })

  test('an empty field is told in words of the page', () => {
    expect(missingText('  ', '210 Ω')).toBe(
      'Nothing is written yet. Write what the meter shows, such as 210 Ω.',
    )
    expect(missingText('3 Ω', '210 Ω')).toBeUndefined()
  })

  test('the same wiring in the same place is the same bench', () => {
    const move = { do: 'park core', what: 'handset.r1' } as const
    expect(isSameBench({ set: 'a', moves: [move] }, { set: 'a', moves: [{ ...move }] })).toBe(true)
    expect(isSameBench({ set: 'a', moves: [move] }, { set: 'a', moves: [] })).toBe(false)
    expect(isSameBench({ set: 'a', moves: [], on: 'p' }, { set: 'a', moves: [] })).toBe(false)
  })

  test('a refused answer is a sentence without its code', () => {
    const text = problemText({
      code: 'request-wrong',
      severity: 'error',
      found: '`x`',
      expected: 'ohms',
      mend: 'write `3 Ω`',
    })
    expect(text).toBe('Not understood: `x`. Expected: ohms. Write `3 Ω`.')
  })
})
