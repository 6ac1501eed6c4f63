import { meter, toJson } from 'ringproof'
import type { MeterAnswer } from 'ringproof/answer/meter-answer'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { DEMO } from '../netlist/_nets.ts'

const TIGHT = { relative: 1e-4 }

/** Readings of one kind between two points, by condition of hook and dial. */
function at(answer: MeterAnswer, red: string, black: string, hook: string, dial = 'rest', id = 'meter.ohms') {
  const full = (name: string) => `${answer.place}/${name}`
  return answer.readings.find((one) => {
    const own = Object.values(one.condition.sets)[0]
    return (
      one.id === id &&
      one.red === full(red) &&
      one.black === full(black) &&
      own?.hook === hook &&
      own.dial === dial
    )
  })
}

describe('the table of a set by itself', () => {
  const answer = meter({ target: 'fescue' }, DEMO)

  // sums of the sheet's own resistances: bell 1 kΩ and bell resistor 3.3 kΩ; windings 25, 37 and 30 Ω beside 150 Ω
  test.each([
    ['plug.a', 'plug.ringing', 4300],
    ['plug.ringing', 'C2', 3300],
    ['plug.a', 'C2', 1000],
    ['handset.t1', 'A6', 37],
    ['handset.r1', 'handset.r2', 25],
  ])('reads between %s and %s what its parts come to', (red, black, ohms) => {
    assertClose(at(answer, red, black, 'on-hook')?.value, ohms, { relative: 1e-3 }, `${red} – ${black}`)
  })

  test('closes the loop off-hook alone, and shorts it while the dial turns', () => {
    expect(at(answer, 'plug.a', 'plug.b', 'on-hook')).toMatchObject({ value: null, state: 'open' })
    expect(at(answer, 'plug.a', 'plug.b', 'off-hook')?.contacts).toEqual(['fescue/hook', 'fescue/impulse'])
    expect(at(answer, 'plug.a', 'plug.b', 'off-hook', 'make')?.value).toBeLessThan(1)
    expect(at(answer, 'plug.a', 'plug.b', 'off-hook', 'break')?.state).toBe('open')
    const quench = at(answer, 'A2', 'A3', 'off-hook', 'break', 'meter.capacitance')
    assertClose(quench?.value, 0.1e-6, { relative: 1e-2 }, 'quench')
  })

  test('has every pair of points with cores in every condition', () => {
    const cores = answer.points.filter(({ ids }) => ids.some((id) => /handset|plug/.test(id)))
    const pairs = new Set(answer.readings.map(({ red, black }) => `${red} ${black}`))
    for (const [k, one] of cores.entries())
      for (const other of cores.slice(k + 1)) expect(pairs.has(`${one.name} ${other.name}`)).toBe(true)
  })

  test('joins what straps and cores join into one point', () => {
    const [, b] = answer.points
    expect(b?.ids).toEqual(['fescue/plug.b', 'fescue/handset.t2', 'fescue/B4', 'fescue/B5'])
    expect(b?.colours).toEqual({ 'fescue/plug.b': 'grey', 'fescue/handset.t2': 'yellow' })
  })

  test('tells the cores of the line cord apart, and of the handset cord the pairs by ear', () => {
    const [line, handset] = answer.cords
    expect(line?.groups).toEqual([['line.a'], ['line.b'], ['line.ringing'], ['line.spare']])
    expect(handset?.loose).toBe(true)
    expect(handset?.groups).toEqual([
      ['handset.t1', 'handset.t2'],
      ['handset.r1', 'handset.r2'],
    ])
    expect(handset?.alike.flat()).toContainEqual(['handset.t1', 'handset.r1'])
    expect(handset?.alike.flat()).not.toContainEqual(['handset.r1', 'handset.r2'])
  })

  test('keeps every value within its band, and the parts’ own within the instrument’s', () => {
    for (const { value, band, spread } of answer.readings) {
      if (value === null || band === undefined || spread === undefined) continue
      const above = (most: number | null) => most ?? Number.POSITIVE_INFINITY
      expect(band.least).toBeLessThanOrEqual(value)
      expect(above(band.most)).toBeGreaterThanOrEqual(value)
      expect(spread.interval.least).toBeGreaterThanOrEqual(band.least)
      expect(above(spread.interval.most)).toBeLessThanOrEqual(above(band.most))
    }
  })

  test('is JSON to the last number, by either instrument', () => {
    // toJson throws for NaN and infinities
    expect(() => toJson(answer)).not.toThrow()
    expect(() => toJson(meter({ target: 'sedge-as-found', instrument: 'needle' }, DEMO))).not.toThrow()
  })

  test('says what it does not show', () => {
    const blind = answer.readings.flatMap((one) => one.blind.map(({ branch }) => branch))
    for (const part of ['bell', 'transmitter', 'receiver', 'impulse-quench'])
      expect(blind).toContain(`fescue/${part}`)
  })
})

describe('the trap', () => {
  // common practice, no source: a strapped neighbour joins two handset cores
  test('shows as a receiver core and a transmitter core that are one point', () => {
    const { points, place } = meter({ target: 'sedge-converted-as-fescue' }, DEMO)
    const joined = points.find(({ ids }) => ids.includes(`${place}/handset.r2`))
    expect(joined?.ids).toContain(`${place}/handset.t2`)
  })
})

describe('one reading', () => {
  const ask = (more: object) => meter({ target: 'fescue', between: ['plug.a', 'plug.b'], ...more }, DEMO)

  test('is of the set alone, on-hook, on ohms, unless said otherwise', () => {
    expect(ask({}).readings).toMatchObject([{ id: 'meter.ohms', value: null, state: 'open', live: false }])
    expect(ask({ condition: 'off-hook', range: 'buzz' }).readings).toMatchObject([{ id: 'meter.buzz' }])
    expect(ask({ range: 'volts-60' }).readings).toMatchObject([{ range: 'volts-60', value: 0 }])
  })

  test('on a live line is one of volts, marked and with its caution', () => {
    const { readings, cautions } = ask({ on: 'depot-exchange' })
    expect(readings).toMatchObject([{ id: 'meter.volts', live: true }])
    expect(cautions.join()).toMatch(/live line.*licensed practice/s)
    const ringing = ask({ on: 'depot-exchange', condition: 'on-hook/ringing' })
    expect(ringing.readings).toMatchObject([{ id: 'meter.alternating-volts', live: true }])
    assertClose(readings[0]?.value, 50, { relative: 0.05 }, 'the battery, on-hook')
  })

  test.each([
    ['ohms on a live line', { on: 'depot-exchange', range: 'ohms' }, /live line.*unplug first/],
    ['alternating volts on an idle line', { on: 'depot-exchange', range: 'alternating-volts' }, /idle line/],
    ['an unknown point', { between: ['plug.a', 'B9'] }, /`B9`/],
    ['the same point twice', { between: ['plug.a', 'plug.a'] }, /twice/],
    ['an unknown range', { range: 'ohm' }, /perhaps `ohms`/],
    ['a range of another instrument', { range: 'diode', instrument: 'needle' }, /range `diode`/],
    ['a condition that is none', { condition: 'up' }, /condition/],
  ])('is refused for %s', (_says, more, words) => {
    let said = ''
    try {
      ask(more)
    } catch (error) {
      const { problems } = error as { problems: { found: string; expected: string; mend?: string }[] }
      said = problems.map(({ found, expected, mend }) => `${found} ${expected} ${mend}`).join()
    }
    expect(said).toMatch(words)
  })

  test('may be held to ends that parts share with nothing but a joint', () => {
    const { readings } = meter({ target: 'fescue', between: ['joint-3', 'A1'] }, DEMO)
    assertClose(readings[0]?.value, 100, TIGHT, 'hush resistor')
  })
})

describe('the table on a live line', () => {
  const { readings, what, cords } = meter({ target: 'fescue', on: 'depot-exchange' }, DEMO)
  test('is volts alone, all of them live', () => {
    expect(what).toBe('live')
    expect(cords).toEqual([])
    expect(readings.every(({ live, unit }) => live && unit === 'V')).toBe(true)
    expect(readings.some(({ id }) => id === 'meter.alternating-volts')).toBe(true)
  })
})
