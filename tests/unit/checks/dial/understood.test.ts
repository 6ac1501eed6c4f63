import { describe, expect, test } from 'vitest'
import { setText } from '../../../support/bench.ts'
import { assertClose } from '../../../support/close.ts'
import { ask, askOne, house, lineText, mendedBy, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'dial.understood'
const SOCKET = ['front: {is: master, capacitance: 1.8 µF, resistance: 1e15 Ω}']
/** AS/CA S002:2010, 5.5.1.8, grade SEEN-P: 48 V behind 1900 Ω. */
const FEED = { feed: '{voltage: 48 V, resistance: 1900 Ω, negative: b wire}' }
const UNDERSTOOD = 'limits: {pulses: {understood: yes}}'

function pulses(made: number, broken: number, ...more: readonly string[]) {
  const line = lineText(FEED, ...(more.length === 0 ? [UNDERSTOOD] : more))
  return house(line, SOCKET, ['desk: {set: plain, in: front}'], plainSet(made - 0.1, { broken }))
}

describe('pulses on a line that understands them', () => {
  test('hold on the demo’s own line', () => {
    expect(askOne(CHECK, { target: 'fescue' })).toMatchObject({ state: 'holds', subject: 'fescue' })
  })

  // facts of AS/CA S002:2010 5.5.1.8: 2100 Ω is 12 mA, 15 242.857 Ω is 2.8 mA
  test.each([
    [2100 * (1 - 1e-6), 1e9, 'marginal', 'loop.current'],
    [2100 * (1 + 1e-6), 1e9, 'fails', 'loop.current'],
    [600, 14_642.857 * (1 + 1e-5), 'marginal', 'dial.leakage-open'],
    [600, 14_642.857 * (1 - 1e-5), 'fails', 'dial.leakage-open'],
    [600, 1e9, 'holds', 'loop.current'],
    [100, 20_000, 'holds', 'dial.leakage-open'],
  ])('of %f Ω made and %f Ω across the open contact: %s', (made, broken, state, figure) => {
    expect(askOne(CHECK, pulses(made, broken))).toMatchObject({
      state,
      figure: { id: figure },
      limit: { source: 'AS/CA S002:2010', clause: '5.5.1.8', grade: 'SEEN-P' },
    })
  })

  test('are told with the resistance that the loop has while it is made', () => {
    const one = askOne(CHECK, pulses(1000, 1e9))
    const made = one.consequences?.find(({ figure }) => figure.id === 'dial.resistance-made')
    assertClose(made?.figure.value, 1000, { relative: 1e-9 }, 'made')
  })

  test('drown in the bells of a house where one set is reversed, and exchanging its cores was tried', () => {
    for (const one of ask(CHECK, { target: 'lamp-room' })) {
      expect(one.state).toBe('fails')
      expect(one.says).toContain('direct current flows through lamps/bell, wicks/bell')
      expect(mendOf(one)).toBe('exchange the two line cores of wicks')
      const [{ now, mended } = { now: 0, mended: 1 }] = mendedBy(one)
      expect(now).toBeGreaterThan(0.0028)
      expect(mended).toBeLessThan(1e-6)
      const carried = (one.consequences ?? []).filter(({ figure }) => figure.id === 'bell.direct-current')
      expect(carried).toHaveLength(2)
    }
  })

  test('that leak in the set itself are looked for there', () => {
    const one = askOne(CHECK, pulses(600, 5000))
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(/^look for what bridges the open contact in the set/)
  })
})

describe('pulses on a line that does not understand them', () => {
  const NOT = 'limits: {pulses: {understood: no}}'

  test('fail, and a converter of 55 Ω was tried before it is named', () => {
    const one = askOne(CHECK, pulses(600, 1e9, NOT))
    expect(one).toMatchObject({ state: 'fails', limit: null, margin: null, figure: { id: 'loop.current' } })
    expect(mendOf(one)).toMatch(/^put a converter from pulses to tones between socket and set/)
    const [{ now, mended } = { now: 0, mended: 0 }] = mendedBy(one)
    assertClose(now, 48 / 2500, { relative: 1e-9 }, 'as it is')
    assertClose(mended, 48 / 2555, { relative: 1e-9 }, 'behind the converter')
  })

  test('are not mended by a converter that leaves too little, and that is said', () => {
    // 2080 Ω are a make, 2080 Ω + 55 Ω are none
    const one = askOne(CHECK, pulses(2080, 1e9, NOT))
    expect(mendOf(one)).toMatch(/was tried and leaves too little current$/)
    expect(mendedBy(one)[0]?.mended).toBeLessThan(0.012)
  })

  test('are not mended by a converter that hears no break, and that is said', () => {
    const one = askOne(CHECK, { target: 'lamp-room', on: 'adapter-port' }, 'lamps')
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(/was tried, and heard no break$/)
    expect(one.consequences?.[0]?.figure.value).toBeGreaterThan(0.0028)
  })

  test('hold behind a converter, which hears them', () => {
    const sockets = [...SOCKET, 'tones: {is: converter, fed from: front, series resistance: 40 Ω}']
    const asked = house(lineText(FEED, NOT), sockets, ['desk: {set: plain, in: tones}'], plainSet(600))
    const one = askOne(CHECK, asked)
    expect(one.state).toBe('holds')
    expect(one.says).toMatch(/^A converter in line hears the pulses/)
  })

  test('hold in the demo’s cottage with a converter and fail in the one without', () => {
    expect(askOne(CHECK, { target: 'cottage' }).state).toBe('holds')
    expect(askOne(CHECK, { target: 'cottage-bare' }).state).toBe('fails')
  })
})

describe('pulses of which nothing is known', () => {
  test('are unknown where the line’s sheet says nothing of them', () => {
    expect(askOne(CHECK, pulses(600, 1e9, 'recall: none'))).toMatchObject({
      state: 'unknown',
      reason: 'no-limit',
      figure: { id: 'loop.current' },
    })
  })

  test('are unknown of a set without dial, and of one on no line', () => {
    expect(askOne(CHECK, { target: 'darnel' })).toMatchObject({
      reason: 'undetermined',
      says: 'The set has no dial.',
    })
    expect(askOne(CHECK, { text: setText('fescue', 'title: a fescue'), on: 'none' })).toMatchObject({
      reason: 'no-line',
    })
  })
})
