import {
  CONDITION_WORDS,
  conditionOf,
  describeCondition,
  gateState,
  ON_HOOK,
  readCondition,
  type SetCondition,
  shareOf,
  type WrittenCondition,
  writeCondition,
} from 'ringproof/netlist/condition'
import type { GateWord } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'

const rest: WrittenCondition = { hook: 'on-hook', dial: 'rest', key: 'up', line: 'idle' }
/** As design 3b writes them. */
const WRITTEN: Readonly<Record<string, Partial<WrittenCondition>>> = {
  'on-hook': {},
  'on-hook/ringing': { line: 'ringing' },
  'off-hook': { hook: 'off-hook' },
  'off-hook/speech': { hook: 'off-hook', line: 'speech' },
  'off-hook/make': { hook: 'off-hook', dial: 'make' },
  'off-hook/break': { hook: 'off-hook', dial: 'break' },
  'off-hook/key': { hook: 'off-hook', key: 'down' },
  'off-hook/ringing': { hook: 'off-hook', line: 'ringing' },
}
const every: readonly WrittenCondition[] = (['on-hook', 'off-hook'] as const).flatMap((hook) =>
  (['rest', 'make', 'break'] as const).flatMap((dial) =>
    (['up', 'down'] as const).flatMap((key) =>
      (['idle', 'ringing', 'speech'] as const).map((line) => ({ hook, dial, key, line })),
    ),
  ),
)

describe('a condition in words', () => {
  test.each(Object.entries(WRITTEN))('%s is read and written so', (text, says) => {
    expect(readCondition(text)).toEqual({ ...rest, ...says })
    expect(writeCondition({ ...rest, ...says })).toBe(text)
  })

  test('is read as it was written, for all thirty-six', () => {
    expect(every).toHaveLength(36)
    for (const one of every) expect(readCondition(writeCondition(one))).toEqual(one)
    expect(new Set(every.map(writeCondition)).size).toBe(36)
  })

  test('may say what is at rest, in any order and with blanks', () => {
    expect(readCondition(' idle / key-up/rest/ on-hook ')).toEqual(rest)
    expect(readCondition('ringing/key/break/off-hook')).toEqual({
      hook: 'off-hook',
      dial: 'break',
      key: 'down',
      line: 'ringing',
    })
  })

  test('is made of known words alone, each of which counts', () => {
    expect([...CONDITION_WORDS].sort()).toEqual([
      'break',
      'idle',
      'key',
      'key-up',
      'make',
      'off-hook',
      'on-hook',
      'rest',
      'ringing',
      'speech',
    ])
    for (const word of CONDITION_WORDS.filter((one) => !one.endsWith('hook')))
      expect(readCondition(`off-hook/${word}`), word).toBeDefined()
  })

  test.each([
    '',
    'ringing',
    'make',
    'on-hook/off-hook',
    'off-hook/make/break',
    'off-hook/ringing/speech',
    'off-hook/key/key-up',
    'on-hook/on-hook',
    'off hook',
    'On-hook',
    'off-hook/',
    '__proto__',
    'off-hook/constructor',
    'on-hook/toString',
  ])('"%s" is none', (text) => {
    expect(readCondition(text)).toBeUndefined()
  })
})

describe('a condition of several sets', () => {
  const one = { hook: 'off-hook', dial: 'break', key: 'up', line: 'ringing' } as const

  test('leaves those not named on-hook, and gives the line one state for all', () => {
    const condition = conditionOf('kitchen', one)
    expect(condition).toEqual({
      line: 'ringing',
      sets: { kitchen: { hook: 'off-hook', dial: 'break', key: 'up' } },
    })
    expect(shareOf(condition, 'kitchen')).toEqual(one)
    expect(shareOf(condition, 'office')).toEqual({ ...ON_HOOK, line: 'ringing' })
    expect(shareOf(condition, 'constructor')).toEqual({ ...ON_HOOK, line: 'ringing' })
  })

  test('is described for one place, else for the first one named', () => {
    const condition = conditionOf('kitchen', one)
    expect(describeCondition(condition, 'kitchen')).toBe('off-hook/break/ringing')
    expect(describeCondition(condition, 'office')).toBe('on-hook/ringing')
    expect(describeCondition(condition)).toBe('off-hook/break/ringing')
    expect(describeCondition({ line: 'speech', sets: {} })).toBe('on-hook/speech')
  })
})

describe('a gate', () => {
  const rows: readonly (readonly [GateWord, (one: SetCondition) => boolean])[] = [
    ['off-hook', ({ hook }) => hook === 'off-hook'],
    ['off-normal', ({ dial }) => dial === 'make' || dial === 'break'],
    ['make', ({ dial }) => dial === 'make'],
    ['break', ({ dial }) => dial === 'break'],
    ['key', ({ key }) => key === 'down'],
  ]
  test.each(rows)('of the word %s closes when it holds, or opens', (word, holds) => {
    for (const one of every) {
      expect(gateState({ word, closed: true }, one)).toBe(holds(one) ? 'closed' : 'open')
      expect(gateState({ word, closed: false }, one)).toBe(holds(one) ? 'open' : 'closed')
    }
  })
})
