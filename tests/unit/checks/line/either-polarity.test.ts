import { describe, expect, test } from 'vitest'
import { setText } from '../../../support/bench.ts'
import { ask, askOne, house, lineText, MASTER, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'line.either-polarity'
const TRIP = 'trip: {current: 12 mA, within: 200 ms}'

/** A set whose loop goes through a diode, anode at the a wire or at the b wire. */
function oneWay(from: string, to: string) {
  const text = plainSet(600).text.replace(
    'load: {kind: resistor, from: A5, to: A2,',
    `gate: {kind: diode, from: ${from}, to: ${to}, drop: 0.7 V at 20 mA}\n  load: {kind: resistor, from: A5, to: A7,`,
  )
  return house(lineText({}, TRIP), [MASTER], ['desk: {set: plain, in: front}'], { file: 'plain.yaml', text })
}

describe('the pair either way round', () => {
  test('holds for every set of the demo on its own line, bells and bridges included', () => {
    for (const target of ['fescue', 'marram', 'melick', 'foxtail', 'darnel']) {
      expect(askOne(CHECK, { target }).state).toBe('holds')
    }
  })

  test('shows what was tried with the pair reversed: loop, answer and bell', () => {
    const one = askOne(CHECK, { target: 'fescue' })
    expect(one.consequences?.map(({ figure }) => figure.id)).toEqual([
      'loop.current',
      'loop.current',
      'ringing.current',
    ])
    expect(one.says).toContain('it makes no difference')
  })

  test('fails where a diode in the loop lets one polarity through', () => {
    const [forward, backward] = [askOne(CHECK, oneWay('A7', 'A2')), askOne(CHECK, oneWay('A2', 'A7'))]
    // the a wire is positive: from A7 to A2 current flows as the pair lies, and stops when it is reversed
    expect(forward).toMatchObject({
      state: 'fails',
      figure: { id: 'loop.current' },
      limit: { clause: '5.5.1.8', grade: 'SEEN-P' },
    })
    expect(forward.says).toContain('the loop current is lost')
    expect(forward.figure?.value).toBeLessThan(1e-6)
    expect(mendOf(forward)).toContain('a bridge of four diodes')
    // the other way round it works only with the pair reversed
    expect(backward).toMatchObject({ state: 'fails', figure: { id: 'loop.current' } })
    expect(backward.says).toContain('one way round only')
    expect(backward.consequences?.[0]?.mended?.value).toBeGreaterThan(0.012)
    expect(mendOf(backward)).toContain('turn the pair round')
  })

  test('holds with that diode behind a bridge', () => {
    expect(askOne(CHECK, { target: 'foxtail' }).state).toBe('holds')
    expect(askOne(CHECK, { target: 'foxtail', on: 'adapter-port' }).state).toBe('holds')
  })

  test('is no fault of a reversed house, and blames no set that fails either way', () => {
    for (const one of ask(CHECK, { target: 'lamp-room' })) expect(one.state).toBe('holds')
    const silent = askOne(CHECK, { target: 'fescue-without-ringing-lead' })
    expect(silent).toMatchObject({
      state: 'holds',
      remark: 'Too little either way round: the current in the bell.',
    })
  })

  test('has nothing to lose where nothing works, and says so without a limit of none', () => {
    const [signalman] = ask(CHECK, { target: 'crossing-box-astray' })
    expect(signalman).toMatchObject({ state: 'unknown', reason: 'undetermined', limit: null })
    expect(signalman?.says).toMatch(
      /nothing works that could be lost .*the loop current.*What fails is to be mended first/,
    )
  })

  test('is judged by what works where something else does not', () => {
    const silent = askOne(CHECK, { target: 'fescue-without-ringing-lead' })
    expect(silent).toMatchObject({ figure: { id: 'loop.current' }, limit: { side: 'at-least', unit: 'A' } })
  })

  test('is unknown on no line, and of a set with neither hook nor bell', () => {
    expect(askOne(CHECK, { target: 'fescue', on: 'none' })).toMatchObject({ reason: 'no-line' })
    const box = setText('darnel', 'without: [parts.bell]')
    expect(askOne(CHECK, { text: box })).toMatchObject({ state: 'unknown', reason: 'undetermined' })
  })
})
