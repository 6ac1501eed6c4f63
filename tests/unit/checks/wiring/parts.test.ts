import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import {
  checkMoved,
  checkText,
  DEMO,
  setText,
  troubles,
  verdictOf,
  verdictsOf,
} from '../../../support/bench.ts'

const LEFT_OUT = 'wiring.no-part-left-out'
const UNIT = 'wiring.unit-as-needed'
const QUENCH = 'wiring.quench-present'

describe('a part left out', () => {
  test('fails with the branch and both of its ends', () => {
    const text = setText(
      'fescue',
      'parts: {extra: {kind: resistor, from: C4, to: A1, resistance: 1 kΩ}}',
      'spare: []',
      'cords: {line: {cores: {spare: {lands: parked}}}}',
    )
    const answer = checkText(text)
    expect(troubles(answer)).toEqual({ [LEFT_OUT]: 'fails' })
    expect(verdictOf(answer, LEFT_OUT)).toMatchObject({
      state: 'fails',
      subject: 'trial/extra',
      path: ['trial/C4', 'trial/A1'],
      figure: { id: 'impedance.between', frequency: 1000, state: 'open' },
    })
  })

  test('counts one verdict for each branch on no closed way', () => {
    const answer = checkMoved('fescue', 'lift strap: C3-A1')
    expect(verdictsOf(answer, LEFT_OUT).map(({ subject }) => subject)).toEqual([
      'fescue/bell-resistor',
      'fescue/bell',
    ])
  })

  test('is none where every branch lies on a closed way', () => {
    expect(verdictOf(check({ target: 'fescue' }, DEMO), LEFT_OUT)).toMatchObject({
      state: 'holds',
      subject: 'fescue',
      figure: null,
    })
  })
})

describe('the plug-in unit', () => {
  test('fails when its slot is empty, with the sockets and the loop current that is left', () => {
    const one = verdictOf(checkMoved('fescue', 'pull unit: regulator'), UNIT)
    expect(one).toMatchObject({
      state: 'fails',
      subject: 'regulator',
      path: ['fescue/A3', 'fescue/A4', 'fescue/B5'],
      figure: { id: 'loop.current' },
    })
  })

  test('holds in its slot, and where the set has no slot', () => {
    expect(verdictOf(check({ target: 'fescue' }, DEMO), UNIT)).toMatchObject({
      state: 'holds',
      subject: 'regulator',
    })
    expect(verdictOf(check({ target: 'sedge' }, DEMO), UNIT)).toMatchObject({
      state: 'holds',
      subject: 'sedge',
      path: [],
    })
  })

  test('that is plugged in again mends the loop', () => {
    expect(troubles(checkMoved('fescue', 'pull unit: regulator', 'plug unit: vetch, in: regulator'))).toEqual(
      {},
    )
  })
})

describe('the quench', () => {
  test('fails when it is lifted, with both ends of the impulse contact', () => {
    const answer = checkMoved('fescue', 'lift part: impulse-quench')
    expect(troubles(answer)).toEqual({ [QUENCH]: 'fails' })
    expect(verdictOf(answer, QUENCH)).toMatchObject({
      subject: 'fescue/impulse',
      path: ['fescue/A2', 'fescue/A3'],
      condition: { sets: { fescue: { hook: 'off-hook', dial: 'break' } } },
    })
  })

  test('is measured across the open contact', () => {
    const { figure } = verdictOf(check({ target: 'fescue' }, DEMO), QUENCH)
    // closed form: 100 Ω in series with 0.1 µF at 1 kHz, nothing of the set beside it
    const expected = Math.hypot(100, 1 / (2 * Math.PI * 1000 * 0.1e-6))
    expect(Math.abs((figure?.value ?? 0) / expected - 1)).toBeLessThan(0.01)
  })

  test('is not asked of a set without an impulse contact', () => {
    const text = setText('fescue', 'without: [contacts.impulse]', 'straps: {A2-A3: {hold: screw}}')
    expect(verdictOf(checkText(text), QUENCH)).toMatchObject({ state: 'unknown', reason: 'undetermined' })
  })

  test('is also wanted by a contact that closes to send a pulse', () => {
    const text = setText(
      'fescue',
      'without: [contacts.impulse, parts.impulse-quench]',
      'contacts: {pulse: {from: A2, to: A3, closed when: make}}',
    )
    expect(verdictOf(checkText(text), QUENCH)).toMatchObject({ state: 'fails', subject: 'trial/pulse' })
  })
})
