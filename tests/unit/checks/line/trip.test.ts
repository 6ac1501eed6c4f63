import { describe, expect, test } from 'vitest'
import { assertClose } from '../../../support/close.ts'
import { ask, askOne, house, lineText, MASTER, mendedBy, mendOf, plainSet } from '../_ask.ts'

const FALSE_TRIP = 'line.no-false-trip'
const ANSWERS = 'line.answers-while-ringing'
const TRIP = 'trip: {current: 12 mA, within: 200 ms}'
/** Ohm's law: 50 V / 12 mA − 400 Ω. */
const EDGE = 50 / 0.012 - 400

function leaky(ohms: number, ...more: readonly string[]) {
  const parts = `drain: {kind: resistor, from: A1, to: A2, resistance: ${ohms - 0.1} Ω}`
  return house(
    lineText({}, ...more),
    ['front: {is: master, capacitance: 1.8 µF, resistance: 1e15 Ω}'],
    ['desk: {set: plain, in: front}'],
    plainSet(600, { parts, broken: 1e15 }),
  )
}

describe('ringing that goes on', () => {
  test('holds on the demo’s right houses, once for each', () => {
    for (const target of ['fescue', 'station-house', 'cottage']) {
      const found = ask(FALSE_TRIP, { target })
      expect(found).toHaveLength(1)
      expect(found[0]).toMatchObject({
        state: 'holds',
        subject: target,
        limit: { grade: 'SHEET', clause: 'trip: current' },
      })
      expect(found[0]).not.toHaveProperty('remark')
    }
  })

  test.each([
    [EDGE * (1 + 1e-6), 'marginal'],
    [EDGE * (1 - 1e-6), 'fails'],
    [2 * EDGE, 'holds'],
  ])('on a set that leaks through %f Ω: %s', (ohms, state) => {
    const one = askOne(FALSE_TRIP, leaky(ohms, TRIP))
    expect(one.state).toBe(state)
    const margin = one.consequences?.find(({ figure }) => figure.id === 'ringing.trip-margin')
    assertClose(
      margin?.figure.value,
      1 - 50 / (400 + ohms) / 0.012,
      { relative: 1e-6, absolute: 1e-12 },
      'margin',
    )
  })

  // AS/CA S002:2010, 5.5.1.1.5: 0.6 mA; 47 CFR 68.312(b)(1)(iii): 3 mA; both SEEN-P
  test.each([
    [50 / 0.0006 - 400, 'AS/CA S002:2010', '47 CFR 68.312 (1997)'],
    [50 / 0.003 - 400, '47 CFR 68.312 (1997)', 'no such paper'],
  ])('is remarked upon where a set draws more than a paper allows: %f Ω', (ohms, source, other) => {
    const remark = (value: number) => {
      const one = askOne(FALSE_TRIP, leaky(value, TRIP))
      return one.state === 'holds' ? (one.remark ?? '') : one.state
    }
    expect(remark(ohms * (1 - 1e-6))).toContain(source)
    expect(remark(ohms * (1 - 1e-6))).toContain('desk')
    expect(remark(ohms * (1 - 1e-6))).not.toContain(other)
    expect(remark(ohms * (1 + 1e-6))).not.toContain(source)
  })

  test('stops by itself where several leak together, and the culprit was found by trying', () => {
    const weak = askOne(FALSE_TRIP, { target: 'fescue-reversed-at-cord', on: 'station-house' })
    // one reversed set bridges the capacitor through the bells of four right ones
    expect(weak.figure?.value).toBeGreaterThan(0.005)
    const line = lineText({}, 'trip: {current: 4 mA, within: 200 ms}')
    const one = askOne(
      FALSE_TRIP,
      house(
        line,
        [MASTER, 'back: {is: secondary, fed from: front}'],
        ['desk: {set: plain, in: front}', 'wall: {set: plain, in: back, reversed: yes}'],
        plainSet(600),
      ),
    )
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toBe('exchange the two line cores of wall')
    const [{ now, mended } = { now: 0, mended: 1 }] = mendedBy(one)
    // two bells of 4300 Ω one behind the other, four contacts of 50 mΩ, and 470 kΩ beside one of them
    const bell = 4300.1
    assertClose(now, 50 / (400 + bell + (bell * 470e3) / (bell + 470e3)), { relative: 1e-4 }, 'bridged')
    expect(mended).toBeLessThan(1e-6)
  })

  test('is unknown where no sheet names a trip, where nothing rings and on no line', () => {
    expect(askOne(FALSE_TRIP, leaky(1e6))).toMatchObject({
      state: 'unknown',
      reason: 'no-limit',
      figure: { id: 'leakage.ringing' },
    })
    expect(askOne(FALSE_TRIP, leaky(10_000)).says).toContain('desk')
    const quiet = house(lineText({ ringing: '' }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600))
    expect(askOne(FALSE_TRIP, quiet)).toMatchObject({ reason: 'undetermined' })
    expect(askOne(FALSE_TRIP, { target: 'fescue', on: 'none' })).toMatchObject({ reason: 'no-line' })
  })
})

describe('an answer while it rings', () => {
  const set = (ohms: number, ringing?: string, ...more: readonly string[]) =>
    house(
      lineText(ringing === undefined ? {} : { ringing }, TRIP, ...more),
      ['front: {is: master, capacitance: 1.8 µF, resistance: 1e15 Ω}'],
      ['desk: {set: plain, in: front}'],
      plainSet(ohms - 0.1),
    )

  test.each([
    [EDGE * (1 - 1e-6), 'marginal'],
    [EDGE * (1 + 1e-6), 'fails'],
    [600, 'holds'],
  ])('through %f Ω: %s', (ohms, state) => {
    expect(askOne(ANSWERS, set(ohms))).toMatchObject({
      state,
      subject: 'desk',
      limit: { value: 0.012, side: 'at-least', grade: 'SHEET' },
    })
  })

  test('holds for every set of the demo that has a hook', () => {
    for (const one of ask(ANSWERS, { target: 'gatehouse' })) expect(one.state).toBe('holds')
  })

  test('fails on ringing without battery, and is told what the pause between two rings does', () => {
    const bare = '{voltage: 75 V, frequency: 25 Hz, wave: sine, source: 400 Ω, sent to: b wire}'
    const one = askOne(ANSWERS, set(600, bare))
    expect(one.state).toBe('fails')
    expect(one.figure?.value).toBe(0)
    expect(mendOf(one)).toMatch(/^in the pause between two rings/)
    assertClose(one.consequences?.[0]?.figure.value, 50 / 1000, { relative: 1e-6 }, 'between two rings')
  })

  test('fails where the loop fails anyhow, and sends there', () => {
    expect(mendOf(askOne(ANSWERS, { target: 'fescue-unit-left-out' }))).toMatch(
      /^the loop fails with the line at rest/,
    )
  })

  test('is unknown without hook, trip, ringing or line', () => {
    expect(askOne(ANSWERS, { target: 'darnel' })).toMatchObject({ reason: 'undetermined' })
    expect(askOne(ANSWERS, leaky(1e9))).toMatchObject({ reason: 'no-limit', figure: { id: 'loop.current' } })
    const quiet = house(lineText({ ringing: '' }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600))
    expect(askOne(ANSWERS, quiet)).toMatchObject({ reason: 'undetermined' })
    expect(askOne(ANSWERS, { target: 'fescue', on: 'none' })).toMatchObject({ reason: 'no-line' })
  })
})
