import { describe, expect, test } from 'vitest'
import { assertClose } from '../../../support/close.ts'
import { ask, askOne, house, lineText, MASTER, mendedBy, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'line.ringing-load'
/** Load of a plain set: 4 kΩ over 4300 Ω + 12 H at 25 Hz, contacts of the plug included. */
const EACH = 4000 / Math.hypot(4300.1, 2 * Math.PI * 25 * 12)

function sets(count: number, ...limits: readonly string[]) {
  const numbers = Array.from({ length: count }, (_, k) => k + 1)
  return house(
    lineText({}, ...limits),
    [MASTER, ...numbers.map((k) => `s${k}: {is: secondary, fed from: front}`)],
    numbers.map((k) => `p${k}: {set: plain, in: s${k}}`),
    plainSet(600),
  )
}

describe('the ringing load of a line', () => {
  test('is the sum of the loads of its sets by the line’s own definition, asked once', () => {
    const [one, ...others] = ask(CHECK, sets(3, 'limits: {ringing load: 4, load by: four-kilohm-unit}'))
    expect(others).toEqual([])
    expect(one).toMatchObject({
      state: 'holds',
      subject: 'trial-house',
      figure: { id: 'ringing.load.four-kilohm-unit', unit: '1' },
      limit: { value: 4, grade: 'SHEET', clause: 'limits: ringing load' },
    })
    assertClose(one?.figure?.value, 3 * EACH, { relative: 1e-9 }, 'three')
    expect(one?.consequences?.map(({ figure }) => figure.subject)).toEqual(['p1', 'p2', 'p3'])
    for (const { figure } of one?.consequences ?? [])
      assertClose(figure.value, EACH, { relative: 1e-9 }, 'each')
  })

  test.each([
    [4 * EACH * (1 - 1e-9), 'fails'],
    [4 * EACH * (1 + 1e-9), 'marginal'],
    [4 * EACH * 1.06, 'holds'],
  ])('of four sets on a line for %f: %s', (most, state) => {
    expect(askOne(CHECK, sets(4, `limits: {ringing load: ${most}, load by: four-kilohm-unit}`)).state).toBe(
      state,
    )
  })

  test('too large by one set asks for any one of the alike to go, and shows what is left', () => {
    const one = askOne(CHECK, { target: 'station-house' })
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toBe('move any one of them to another line')
    const [{ now, mended } = { now: 0, mended: 9 }] = mendedBy(one)
    expect(now).toBeGreaterThan(4)
    expect(mended).toBeLessThan(4)
    expect(one.consequences).toHaveLength(6)
  })

  test('too large by a bell without resistor asks for the resistor, which was tried', () => {
    const one = askOne(CHECK, { target: 'marram' })
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(/^put a bell resistor of 3\.3 kΩ into marram/)
    const [{ mended } = { mended: 9 }] = mendedBy(one)
    const after = askOne(CHECK, { target: 'marram-with-bell-resistor' })
    expect(after.state).toBe('holds')
    assertClose(mended, after.figure?.value ?? 0, { relative: 1e-4 }, 'as the rewire makes it')
  })

  test('too large with and without that resistor asks for the heaviest to go', () => {
    expect(mendOf(askOne(CHECK, { target: 'goods-office' }))).toBe(
      'move clerk to another line, and put a bell resistor of 3.3 kΩ into clerk, which by itself is more than such a line drives',
    )
    expect(mendOf(askOne(CHECK, { target: 'museum-hall' }))).toMatch(
      /^move case-7, (case-\d+, ){6}case-\d+ and|^move case-7(, case-\d+){6} and case-\d+ to another line$/,
    )
    const shared = askOne(CHECK, { target: 'goods-office-shared' })
    expect(shared.state).toBe('fails')
  })

  // AS/CA S002:2010, 5.5.1.2; TIA-968, table 6, secondary copy; rating of bells, secondary copy
  test.each([
    ['unit-ringer', 3, 'SEEN-P'],
    ['type-a', 5, 'SEEN-S'],
    ['type-b', 5, 'SEEN-S'],
    ['four-kilohm-unit', 4, 'SEEN-S'],
  ])('by %s has a published limit where the sheet names the measure alone', (name, value, grade) => {
    const one = askOne(CHECK, sets(1, `limits: {load by: ${name}}`))
    expect(one).toMatchObject({
      state: 'holds',
      limit: { value, grade },
      figure: { id: `ringing.load.${name}` },
    })
  })

  test('by a number without a measure is judged by the usual measure and its published limit', () => {
    expect(askOne(CHECK, sets(1, 'limits: {ringing load: 1}'))).toMatchObject({
      state: 'holds',
      limit: { value: 4, grade: 'SEEN-S' },
    })
  })

  test.each(['older-european', 'sixteen-kilohm'])('by %s has no limit but the sheet’s', (name) => {
    expect(askOne(CHECK, sets(1, `limits: {load by: ${name}}`))).toMatchObject({
      state: 'unknown',
      reason: 'no-limit',
      figure: { id: `ringing.load.${name}` },
    })
    expect(askOne(CHECK, sets(1, `limits: {ringing load: 9, load by: ${name}}`)).state).toBe('holds')
  })

  test('by a measure that nobody knows is unknown, and so is a set on no line', () => {
    expect(askOne(CHECK, sets(1, 'limits: {ringing load: 4, load by: bushel}'))).toMatchObject({
      state: 'unknown',
      reason: 'no-limit',
      figure: null,
    })
    expect(askOne(CHECK, { target: 'fescue', on: 'none' })).toMatchObject({ reason: 'no-line' })
  })
})
