import type { Verdict } from 'ringproof'
import { becameWords, grouped, statesOf } from 'ringproof/web/views/bench/verdicts/compared'
import { describe, expect, it } from 'vitest'

const verdict = (check: string, subject: string, state: Verdict['state']): Verdict =>
  ({ check, subject, state, condition: { line: 'idle', sets: {} } }) as unknown as Verdict

describe('becameWords', () => {
  const before = statesOf([
    verdict('a', 'x', 'holds'),
    verdict('a', 'y', 'fails'),
    verdict('b', 'x', 'holds'),
  ])

  it('tells what changed and keeps silent of what did not', () => {
    expect(becameWords(verdict('a', 'x', 'fails'), before)).toBe('became fails')
    expect(becameWords(verdict('a', 'y', 'holds'), before)).toBe('became holds')
    expect(becameWords(verdict('a', 'x', 'holds'), before)).toBeUndefined()
  })
  it('compares a new subject with the gravest that the check said before', () => {
    expect(becameWords(verdict('a', 'z', 'fails'), before)).toBeUndefined()
    expect(becameWords(verdict('b', 'z', 'fails'), before)).toBe('became fails')
  })
  it('calls a check new that had nothing to say before', () => {
    expect(becameWords(verdict('c', 'x', 'fails'), before)).toBe('new')
  })
  it('says nothing before there is anything to compare with', () => {
    expect(becameWords(verdict('a', 'x', 'fails'), new Map())).toBeUndefined()
  })
})

describe('grouped', () => {
  it('puts the gravest first and leaves out what there is none of', () => {
    const all = [verdict('a', 'x', 'holds'), verdict('b', 'x', 'unknown'), verdict('c', 'x', 'fails')]
    expect(grouped(all).map(({ state }) => state)).toEqual(['fails', 'unknown', 'holds'])
  })
})
