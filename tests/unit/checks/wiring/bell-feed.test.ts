/** A bell that hangs on the pair through a capacitor of its own is right, whatever stands beside it. */
import { type CheckAnswer, check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { checkMoved, checkText, DEMO, setText, verdictOf, verdictsOf } from '../../../support/bench.ts'

const ONE = 'wiring.one-ringing-capacitor'
const LEAD = 'wiring.ringing-lead-to-bell'
const failing = ({ verdicts }: CheckAnswer): readonly string[] =>
  verdicts
    .filter(({ check: id, state }) => id.startsWith('wiring.') && state === 'fails')
    .map(({ check: id, subject }) => `${id} ${subject}`)

describe('a set on two wires among sets on a ringing lead', () => {
  test.each(['foxtail', 'melick', 'fescue-to-two-wires', 'melick-new-cord', 'marram-as-found'])(
    '%s has one capacitor in its way, though the socket’s carries a little of the others’ current',
    (target) => {
      for (const on of ['station-house', 'gatehouse', 'goods-office']) {
        const answer = check({ target, on }, DEMO)
        expect(verdictOf(answer, ONE)).toMatchObject({ state: 'holds', figure: { value: 1 } })
        expect(failing(answer)).toEqual([])
        // the house may have faults of its own
        const own = answer.verdicts[0]?.subject.split('/')[0] ?? ''
        expect(answer.faults.filter(({ subject }) => subject.startsWith(own))).toEqual([])
      }
    },
  )
})

describe('a ringing core parked on purpose', () => {
  test.each(['depot-exchange', 'gatehouse', 'cottage-bare', 'station-house'])(
    'is a remark where the bell rings from the pair: %s',
    (on) => {
      const answer = check({ target: 'fescue-to-two-wires', on }, DEMO)
      expect(verdictOf(answer, LEAD)).toMatchObject({
        state: 'holds',
        figure: { id: 'ringing.current' },
        limit: { side: 'at-least', value: 0.003 },
        path: ['fescue/plug.ringing'],
        remark: expect.stringContaining('takes its current from the pair'),
      })
    },
  )

  test('cannot be judged without a line', () => {
    const answer = check({ target: 'fescue-to-two-wires', on: 'none' }, DEMO)
    expect(verdictOf(answer, LEAD)).toMatchObject({ state: 'unknown', reason: 'no-line' })
    expect(answer.faults).toEqual([])
  })

  test('fails where the capacitor is too small to ring it, as where there is none', () => {
    const small = '{kind: capacitor, from: C1, to: B5, capacitance: 0.1 µF}'
    const answer = checkMoved('fescue', 'park core: line.ringing', `fit part: own, with: ${small}`)
    expect(verdictOf(answer, LEAD).state).toBe('fails')
    expect(answer.faults.map(({ fault }) => fault)).toContain('ringing-lead-missing')
    expect(verdictOf(checkMoved('fescue', 'park core: line.ringing'), LEAD).state).toBe('fails')
  })

  test('is none where the bell rings by way of the earth', () => {
    const relief = verdictsOf(check({ target: 'crossing-box-astray' }, DEMO), LEAD)
    expect(relief.find(({ subject }) => subject === 'relief/bell')?.state).toBe('fails')
  })
})

describe('two capacitors in the way of a bell on the ringing lead', () => {
  test('name the one that goes only after it was tried', () => {
    const left = verdictOf(check({ target: 'fescue-own-capacitor-left-in' }, DEMO), ONE)
    expect(left).toMatchObject({
      state: 'fails',
      mend: expect.stringMatching(/take own-capacitor out: the bell then rings/),
    })
    // in series it would leave the bell without current: a strap takes its place
    const series = verdictOf(check({ target: 'marram-own-capacitor-in-series' }, DEMO), ONE)
    expect(series).toMatchObject({
      state: 'fails',
      mend: expect.stringMatching(/take own-capacitor out and put a strap or a bell resistor in its place/),
    })
  })

  test('name none where each would silence the bell', () => {
    const moves = [
      'lift strap: C3-A1',
      'fit part: other, with: {kind: capacitor, from: C3, to: A1, capacitance: 1.8 µF}',
    ]
    // the own one cannot be replaced by a strap either: the bell is too weak for what is left
    const weak = setText('fescue', 'parts: {bell: {rings from: 3 mA at 25 Hz}}')
    expect(verdictOf(checkText(weak), ONE).state).toBe('holds')
    const one = verdictOf(checkMoved('fescue', ...moves), ONE)
    expect(one).toMatchObject({
      state: 'fails',
      mend: expect.stringMatching(/take other out and put a strap/),
    })
  })

  test('the stray of the lead tells its capacitor by name, tried as well', () => {
    const one = verdictOf(
      check({ target: 'fescue-own-capacitor-left-in' }, DEMO),
      'wiring.ringing-lead-alone',
    )
    expect(one).toMatchObject({ mend: expect.stringMatching(/take own-capacitor out, which joins them/) })
    const strap = verdictOf(checkMoved('fescue', 'fit strap: C1-B5'), 'wiring.ringing-lead-alone')
    expect(strap).toHaveProperty('mend', expect.not.stringContaining('out'))
  })
})
