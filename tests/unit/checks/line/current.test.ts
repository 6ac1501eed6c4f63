import { describe, expect, test } from 'vitest'
import { setText } from '../../../support/bench.ts'
import { assertClose } from '../../../support/close.ts'
import { askOne, house, lineText, mendedBy, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'line.current'
const SOCKET = ['front: {is: master, capacitance: 1.8 µF, resistance: 1e15 Ω}']
const SPAN = 'limits: {loop current: 20 mA to 100 mA}'

function loop(ohms: number, ...more: readonly string[]) {
  return house(lineText({}, ...more), SOCKET, ['desk: {set: plain, in: front}'], plainSet(ohms - 0.1))
}

describe('the loop current', () => {
  // Ohm's law: 50/0.02 − 400 = 2100 Ω and 50/0.1 − 400 = 100 Ω
  test.each([
    [2100 * (1 - 1e-6), 'marginal', 'at-least', 0.02],
    [2100 * (1 + 1e-6), 'fails', 'at-least', 0.02],
    [100 * (1 + 1e-6), 'marginal', 'at-most', 0.1],
    [100 * (1 - 1e-6), 'fails', 'at-most', 0.1],
    [600, 'holds', 'at-most', 0.1],
    [1500, 'holds', 'at-least', 0.02],
  ])(
    'through %f Ω on a line of 20 mA to 100 mA %s, by the limit that is nearer',
    (ohms, state, side, value) => {
      expect(askOne(CHECK, loop(ohms, SPAN))).toMatchObject({
        state,
        figure: { id: 'loop.current' },
        limit: { side, value, source: 'sheet of this line', clause: 'limits: loop current', grade: 'SHEET' },
      })
    },
  )

  // ministerial ordinance on telecommunications facilities (Japan), article 27, secondary copy, SEEN-S: 15 mA into
  // 300 Ω, 130 mA into 50 Ω; feeds DERIVED: 42 V behind 2500 Ω, 53 V behind 357.692 Ω
  test.each([
    ['42 V', '2500 Ω', 300 * (1 - 1e-5), 'marginal', 0.015],
    ['42 V', '2500 Ω', 300 * (1 + 1e-5), 'fails', 0.015],
    ['53 V', '357.692 Ω', 50 * (1 + 1e-4), 'marginal', 0.13],
    ['53 V', '357.692 Ω', 50 * (1 - 1e-4), 'fails', 0.13],
  ])(
    'is judged by law where the sheet says nothing: %s behind %s into %f Ω',
    (volts, behind, ohms, state, value) => {
      const line = lineText({ feed: `{voltage: ${volts}, resistance: ${behind}, negative: b wire}` })
      const asked = house(line, SOCKET, ['desk: {set: plain, in: front}'], plainSet(ohms - 0.1))
      expect(askOne(CHECK, asked)).toMatchObject({
        state,
        limit: { value, clause: 'article 27', grade: 'SEEN-S' },
      })
    },
  )

  test('that is too small by the house is mended where the line comes in, which was tried', () => {
    const sockets = [...SOCKET, 'wall: {is: converter, fed from: front, series resistance: 2 kΩ}']
    const one = askOne(
      CHECK,
      house(lineText({}, SPAN), sockets, ['desk: {set: plain, in: wall}'], plainSet(600)),
    )
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toBe('plug the set into front, where the line comes in')
    const [{ now, mended } = { now: 0, mended: 0 }] = mendedBy(one)
    assertClose(now, 50 / 3000.1, { relative: 1e-6 }, 'as it is')
    assertClose(mended, 50 / 1000.1, { relative: 1e-6 }, 'at the front')
  })

  test('that is too small by the cable is owned up to: nothing at the set mends it', () => {
    const cable = 'cable: {type: twin, gauge: 0.4 mm, length: 7 km, temperature: 20 °C}'
    const one = askOne(CHECK, loop(600, SPAN, cable))
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(/^the 7 km of cable take it: only thicker cores or a stronger feed/)
    assertClose(mendedBy(one)[0]?.mended, 50 / 1000, { relative: 1e-6 }, 'beside the exchange')
    expect(one.figure?.value).toBeLessThan(0.02)
  })

  test('that is too small by the set is looked for in the set', () => {
    expect(mendOf(askOne(CHECK, loop(3000, SPAN)))).toMatch(/look for resistance in the loop of the set/)
    expect(mendOf(askOne(CHECK, { target: 'fescue-unit-left-out' }))).toMatch(
      /look for resistance in the loop/,
    )
  })

  test('that is too large is brought down by a resistor that was tried', () => {
    const one = askOne(CHECK, loop(50, SPAN))
    expect(mendOf(one)).toMatch(/^put 50 Ω \(common practice, no source\) into one of the line wires/)
    assertClose(mendedBy(one)[0]?.mended, 0.1, { relative: 1e-9 }, 'with the resistor')
    // 20 mA to 20.5 mA: a step of 50 Ω misses it
    const narrow = askOne(CHECK, loop(1000, 'limits: {loop current: 20 mA to 20.1 mA}'))
    expect(mendOf(narrow)).toMatch(/put \d+ Ω|asks for a set of more resistance/)
  })

  test('is unknown without hook contact or line', () => {
    expect(askOne(CHECK, { target: 'darnel' })).toMatchObject({ state: 'unknown', reason: 'undetermined' })
    expect(askOne(CHECK, { text: setText('fescue', 'title: a fescue'), on: 'none' })).toMatchObject({
      state: 'unknown',
      reason: 'no-line',
    })
  })
})
