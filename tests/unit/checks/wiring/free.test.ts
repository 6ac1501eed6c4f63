import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import {
  besides,
  checkMoved,
  checkText,
  DEMO,
  setText,
  troubles,
  verdictOf,
  verdictsOf,
} from '../../../support/bench.ts'

const SPARES = 'wiring.spares-free'
const EARTH = 'wiring.earth-free'
const TOUCHABLE = 'wiring.touchable-free'

describe('spare cores and terminals', () => {
  test('fail on the spare core landed on A1', () => {
    const answer = checkMoved('fescue', 'land core: line.spare, onto: A1')
    expect(troubles(answer)).toEqual({ [SPARES]: 'holds,fails' })
    const one = verdictOf(answer, SPARES, 'fescue/plug.spare')
    expect(one).toMatchObject({ state: 'fails', path: ['fescue/plug.spare'] })
    expect(one.figure?.value).toBeLessThan(1)
  })

  test('fail on a spare terminal strapped to a line wire', () => {
    const answer = checkMoved('fescue', 'fit strap: B5-C4')
    expect(verdictsOf(answer, SPARES).map(({ state }) => state)).toEqual(['fails', 'fails'])
  })

  test('are not asked of a set that has none', () => {
    const one = verdictOf(checkText(setText('fescue', 'without: [plug.contacts.4]', 'spare: []')), SPARES)
    expect(one).toMatchObject({ state: 'holds', figure: null, limit: null, subject: 'trial' })
  })

  test('do not count the fourth contact where the socket has an earth for it', () => {
    const shelf = besides(
      'ringproof: 1\nsheet: premises\nname: earthed\nline: depot-exchange\nreversed: no\nsockets:\n  bench: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ, earth: yes}\nsets: {}\n',
    )
    const answer = check({ target: 'fescue', on: 'earthed' }, shelf)
    expect(verdictsOf(answer, SPARES).map(({ subject }) => subject)).toEqual(['fescue/C4'])
  })
})

describe('earth', () => {
  test('fails on a part from a line wire to earth', () => {
    const text = setText('fescue', 'parts: {drain: {kind: resistor, from: B5, to: earth, resistance: 10 kΩ}}')
    const answer = checkText(text)
    expect(verdictOf(answer, EARTH)).toMatchObject({
      state: 'fails',
      figure: { id: 'resistance.between', unit: 'Ω' },
      path: ['trial/plug.b', 'trial/B5', 'earth'],
    })
    // closed form: the 10 kΩ and one core of the cord
    const ohms = verdictOf(answer, EARTH).figure?.value ?? 0
    expect(ohms).toBeGreaterThan(10_000)
    expect(ohms).toBeLessThan(10_001)
  })

  test('fails also where no battery drives a current to earth, and with the set alone', () => {
    const text = setText('fescue', 'parts: {drain: {kind: resistor, from: B5, to: earth, resistance: 10 kΩ}}')
    const answer = check({ target: '', text, on: 'none' }, DEMO)
    expect(verdictOf(answer, EARTH).state).toBe('fails')
  })

  test('fails on a capacitor to earth that passes ringing: 0.1 µF is 63.7 kΩ at 25 Hz, below 100 kΩ', () => {
    const text = setText(
      'fescue',
      'parts: {drain: {kind: capacitor, from: B5, to: earth, capacitance: 0.1 µF}}',
    )
    expect(troubles(checkText(text))).toEqual({ [EARTH]: 'fails' })
  })

  test('lets a smaller one pass: 10 nF is 637 kΩ at 25 Hz', () => {
    const text = setText(
      'fescue',
      'parts: {drain: {kind: capacitor, from: B5, to: earth, capacitance: 10 nF}}',
    )
    expect(troubles(checkText(text))).toEqual({})
  })

  test('does not mind a small capacitor to earth: 1 nF is 6.4 MΩ at 25 Hz', () => {
    const text = setText(
      'fescue',
      'parts: {drain: {kind: capacitor, from: B5, to: earth, capacitance: 1 nF}}',
    )
    expect(troubles(checkText(text))).toEqual({})
  })

  test('is reached by the recall key alone, and that is allowed', () => {
    const text = setText('fescue', 'contacts: {recall: {from: B5, to: earth, closed when: key}}')
    expect(verdictOf(checkText(text), EARTH).state).toBe('holds')
  })
})

describe('touchable metal', () => {
  test('fails on a cradle joined to a line wire', () => {
    const answer = checkText(setText('fescue', 'touchable metal: {cradle: A1}'))
    expect(troubles(answer)).toEqual({ [TOUCHABLE]: 'fails' })
    expect(verdictOf(answer, TOUCHABLE)).toMatchObject({
      state: 'fails',
      subject: 'cradle',
      path: ['trial/A1'],
    })
  })

  test('fails on metal that only a contact brings to the line, in the condition that does', () => {
    const text = setText(
      'fescue',
      'touchable metal: {cradle: C4}',
      'contacts: {stray: {from: C4, to: A2, closed when: key}}',
      'spare: []',
      'cords: {line: {cores: {spare: {lands: parked}}}}',
    )
    const one = verdictOf(checkText(text), TOUCHABLE)
    expect(one.state).toBe('fails')
    expect(one.condition.sets['trial']).toMatchObject({ hook: 'off-hook', key: 'down' })
  })

  test('holds on metal joined to a terminal that leads nowhere', () => {
    const one = verdictOf(checkText(setText('fescue', 'touchable metal: {cradle: C4}')), TOUCHABLE)
    expect(one).toMatchObject({ state: 'holds', subject: 'cradle', figure: { state: 'open' } })
  })

  test('holds without a figure where none is joined to anything', () => {
    expect(verdictOf(check({ target: 'fescue' }, DEMO), TOUCHABLE)).toMatchObject({
      state: 'holds',
      figure: null,
    })
  })

  test('is unknown without line wires at the plug', () => {
    const text = setText('fescue', 'without: [plug]', 'touchable metal: {cradle: A1}')
    expect(verdictOf(checkText(text), TOUCHABLE)).toMatchObject({ state: 'unknown', reason: 'no-line' })
  })
})
