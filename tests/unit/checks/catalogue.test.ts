import { type CheckAnswer, check, toJson } from 'ringproof'
import { CHECKS } from 'ringproof/checks/catalogue'
import { describe, expect, test } from 'vitest'
import { checkMoved, checkText, DEMO, setText } from '../../support/bench.ts'

/** Ids of the checks as the design fixes them. */
const WIRING = [
  'cores-separate',
  'cores-reach-parts',
  'loop-through-set',
  'loop-open-on-hook',
  'loop-closed-off-hook',
  'ringing-lead-to-bell',
  'ringing-lead-alone',
  'bell-return',
  'spares-free',
  'no-part-left-out',
  'unit-as-needed',
  'earth-free',
  'touchable-free',
  'one-ringing-capacitor',
  'quench-present',
].map((name) => `wiring.${name}`)
const STEADY = [
  ...['current', 'leakage', 'ringing-load', 'no-false-trip', 'answers-while-ringing', 'either-polarity'].map(
    (name) => `line.${name}`,
  ),
  ...['rings-alone', 'rings-with-all', 'silent-own-dial', 'silent-other-dials'].map((name) => `bell.${name}`),
  ...['rate', 'ratio', 'make', 'break', 'muting', 'understood'].map((name) => `dial.${name}`),
  ...['sends', 'receives', 'sidetone', 'impedance', 'two-sets'].map((name) => `speech.${name}`),
]
/** Those about time. */
const LATER = [
  ...['silent-own-dial', 'silent-other-dials'].map((name) => `bell.${name}`),
  ...['rate', 'ratio', 'make', 'break', 'muting'].map((name) => `dial.${name}`),
]

describe('the checks', () => {
  const fescue = check({ target: 'fescue' }, DEMO)

  test('are those of the design, in its order, and each asks a question', () => {
    expect(CHECKS.map(({ id }) => id)).toEqual([...WIRING, ...STEADY])
    for (const { asks } of CHECKS) expect(asks).toMatch(/^[A-Z].*\?$/)
  })

  test.each(LATER)('%s is unknown, since this version does not compute it', (id) => {
    const found = fescue.verdicts.filter((one) => one.check === id)
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({
      state: 'unknown',
      reason: 'not-modelled',
      subject: 'fescue',
      figure: null,
      limit: null,
      margin: null,
      path: [],
    })
  })
})

const ANSWERS: readonly (readonly [string, () => CheckAnswer])[] = [
  ...[
    'fescue',
    'sedge',
    'fescue-as-found',
    'sedge-as-found',
    'sedge-with-strap',
    'fescue-converted',
    'sedge-converted',
    'sedge-converted-as-fescue',
    'sedge-cores-joined-harmless',
    'fescue-reversed-at-cord',
    'fescue-without-ringing-lead',
    'fescue-unit-left-out',
  ].map((target): readonly [string, () => CheckAnswer] => [target, () => check({ target }, DEMO)]),
  ['a set with all line cores parked', () => checkMoved('fescue', 'park core: line.a', 'park core: line.b')],
  [
    'a set without handset',
    () => checkText(setText('fescue', 'without: [handset.receiver, handset.transmitter, cords.handset]')),
  ],
  ['a set without plug', () => checkText(setText('fescue', 'without: [plug]'))],
  ['a set without bell', () => checkMoved('fescue', 'lift part: bell')],
]

describe('a verdict', () => {
  test.each(ANSWERS)('on %s has one state, its evidence and nothing impossible', (_name, answer) => {
    const { verdicts, counts } = answer()
    expect(new Set(verdicts.map((one) => one.check))).toEqual(new Set([...WIRING, ...STEADY]))
    const { holds, marginal, fails, unknown } = counts
    expect(holds + marginal + fails + unknown).toBe(verdicts.length)
    for (const one of verdicts) {
      const own = Object.keys(one)
      for (const key of ['check', 'subject', 'condition', 'says', 'figure', 'limit', 'margin', 'path']) {
        expect(own, one.check).toContain(key)
      }
      expect(['holds', 'marginal', 'fails', 'unknown']).toContain(one.state)
      expect('mend' in one, `${one.check} has a mend`).toBe(one.state === 'fails' || one.state === 'marginal')
      expect('reason' in one, `${one.check} has a reason`).toBe(one.state === 'unknown')
      if ('remark' in one) expect(one.state).toBe('holds')
      if (one.state === 'fails') expect(one.figure, one.check).not.toBeNull()
      if (one.limit !== null) {
        const { source, clause, grade, unit } = one.limit
        for (const word of [source, clause, grade]) expect(word.length).toBeGreaterThan(0)
        expect(unit).toBe(one.figure?.unit)
      }
      // a margin beyond the limit is a failure and nothing else is
      if (one.margin !== null) expect(one.margin < 0, one.check).toBe(one.state === 'fails')
      for (const id of one.path) expect(id).toMatch(/^[a-z-]+\/[A-Za-z0-9.-]+$/)
    }
  })

  test.each(ANSWERS)('on %s has numbers only, and null with its state', (_name, answer) => {
    const look = (value: unknown, where: string): void => {
      if (typeof value === 'number') expect(Number.isFinite(value), where).toBe(true)
      if (typeof value !== 'object' || value === null) return
      if ('residual' in value && 'value' in value)
        expect((value.value === null) === 'state' in value, where).toBe(true)
      for (const [key, inner] of Object.entries(value)) look(inner, `${where}.${key}`)
    }
    const one = answer()
    look({ verdicts: one.verdicts, figures: one.figures }, 'answer')
    expect(JSON.stringify(toJson(one))).not.toMatch(/NaN|Infinity/)
  })

  test('comes out the same each time', () => {
    const once = check({ target: 'sedge-converted-as-fescue' }, DEMO)
    expect(check({ target: 'sedge-converted-as-fescue' }, DEMO)).toEqual(once)
  })
})
