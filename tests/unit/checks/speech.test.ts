import type { Verdict } from 'ringproof/checks/rule'
import { describe, expect, test } from 'vitest'
import { rewireText, setText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { type Asked, askOne, mendOf } from './_ask.ts'

const SENDS = 'speech.sends'
const RECEIVES = 'speech.receives'
const SIDETONE = 'speech.sidetone'
const IMPEDANCE = 'speech.impedance'

const moved = (...moves: readonly string[]): Asked => ({ text: rewireText('fescue', ...moves) })
const sheet = (...lines: readonly string[]): Asked => ({ text: setText('fescue', ...lines) })
const states = (asked: Asked) => [SENDS, RECEIVES].map((id) => askOne(id, asked).state)

describe('speech sent and received', () => {
  test.each([
    'fescue',
    'fescue-late',
    'sedge',
    'melick',
    'foxtail',
    'marram',
    'brome',
    'fescue-converted',
    'fescue-late-converted',
    'sedge-converted',
    'melick-to-three-wires',
    'sedge-cores-joined-harmless',
  ])('holds for %s, well within the limit', (target) => {
    for (const id of [SENDS, RECEIVES]) {
      const one = askOne(id, { target })
      expect(one).toMatchObject({ state: 'holds', limit: { unit: 'A', side: 'at-least' } })
      expect(one.margin).toBeGreaterThan(0.5)
    }
  })

  test('is measured against the same part straight across the same line, 10 dB down', () => {
    const near = askOne(RECEIVES, { target: 'fescue' })
    // Ohm's law: 370 Ω + 620 Ω ∥ 310 nF of the line, its cable, and 150 Ω + 20 mH of the receiver; 622.2 − j304.564 Ω at 1 kHz
    const straight = (near.limit?.value ?? 0) / 0.316
    const without = 1 / Math.hypot(622.2 + 150, -304.564 + 40 * Math.PI)
    // the kilometre of cable takes a little of it
    expect(straight).toBeLessThan(without)
    expect(straight).toBeGreaterThan(0.75 * without)
    // the same set and another line, another limit
    const far = askOne(RECEIVES, { target: 'fescue', on: 'valley-exchange' })
    expect(far.limit?.value).toBeLessThan(0.6 * (near.limit?.value ?? 0))
    expect(far.state).toBe('holds')
  })

  test.each([
    ['its receiver is shorted', moved('fit strap: B1-B3'), ['holds', 'fails']],
    ['its transmitter is shorted', moved('fit strap: A5-B4'), ['fails', 'holds']],
    ['a core of its receiver is parked', moved('park core: handset.r1'), ['holds', 'fails']],
    [
      'a core of its receiver lands where nothing is',
      moved('land core: handset.r2, onto: C4'),
      ['holds', 'fails'],
    ],
    ['a core of its transmitter is parked', moved('park core: handset.t2'), ['fails', 'fails']],
    ['its receiver is missing', sheet('without: [handset.receiver]'), ['holds', 'fails']],
    ['its transmitter is missing', sheet('without: [handset.transmitter]'), ['fails', 'holds']],
    ['both are missing', sheet('without: [handset.transmitter, handset.receiver]'), ['fails', 'fails']],
    ['its unit is left out', { target: 'fescue-unit-left-out' }, ['fails', 'fails']],
    ['it is landed as another set', { target: 'sedge-converted-as-fescue' }, ['holds', 'fails']],
  ] as const)('is judged where %s', (_says, asked, expected) => {
    const [send, receive] = states(asked)
    expect(send).toBe(expected[0])
    // what a missing transmitter leaves of the loop is not this check's question
    if (!_says.startsWith('a core of its transmitter') && !_says.startsWith('its transmitter is missing'))
      expect(receive).toBe(expected[1])
  })

  test('names what shorts a part, and the way of the short', () => {
    const one = askOne(RECEIVES, moved('fit strap: B1-B3'))
    expect(mendOf(one)).toBe(
      'take out what joins the two ends of the receiver: handset.r1 – B1 – B3 – handset.r2',
    )
    expect(one.path).toEqual(['fescue/handset.r1', 'fescue/B1', 'fescue/B3', 'fescue/handset.r2'])
  })

  test('names a landing that mends it, with the figure that it brings', () => {
    const one = askOne(RECEIVES, { target: 'sedge-converted-as-fescue' })
    expect(mendOf(one)).toBe('land core handset.r2 on B2')
    const [consequence] = one.consequences ?? []
    expect(consequence?.figure.value).toBeLessThan(1e-9)
    expect(consequence?.mended?.value).toBeGreaterThan(one.limit?.value ?? 1)
  })

  test('names no landing where none helps', () => {
    expect(mendOf(askOne(RECEIVES, { target: 'fescue-unit-left-out' }))).toContain('checks of the wiring')
  })

  test('fails without direct current, however well speech passes to the transmitter', () => {
    const blocked = sheet(
      'parts: {block: {kind: capacitor, from: C4, to: A5, capacitance: 10 µF}}',
      'cords: {handset: {cores: {t1: {lands: C4}}}}',
      'spare: []',
    )
    const one = askOne(SENDS, blocked)
    expect(one).toMatchObject({ state: 'fails', figure: { id: 'transmitter.current', unit: 'A' } })
    expect(one.says).toContain('no direct current')
    expect(askOne(SIDETONE, blocked).says).toContain('No direct current')
    // the speech itself would pass
    const [consequence] = one.consequences ?? []
    expect(consequence?.figure.value).toBeGreaterThan(1e-4)
  })

  test('fails at a missing part with what flows in nothing', () => {
    const one = askOne(SENDS, sheet('without: [handset.transmitter]'))
    expect(one).toMatchObject({ state: 'fails', figure: { id: 'speech.send', value: 0 }, limit: null })
    expect(mendOf(one)).toBe('fit a transmitter into the handset')
  })

  test('is near its limit where resistance takes it down by nearly 10 dB', () => {
    const ohms = (value: string) =>
      sheet(
        `parts: {green: {kind: resistor, from: C4, to: B3, resistance: ${value}}}`,
        'cords: {handset: {cores: {r2: {lands: C4}}}}',
        'spare: []',
      )
    expect(askOne(RECEIVES, ohms('1 Ω')).state).toBe('holds')
    expect(askOne(RECEIVES, ohms('10 kΩ')).state).toBe('fails')
  })
})

describe('speech where there is nothing to ask', () => {
  test.each([SENDS, RECEIVES, SIDETONE, IMPEDANCE, 'speech.two-sets'])(
    '%s of a bell alone is undetermined',
    (id) => {
      const one = askOne(id, { target: 'darnel' })
      expect(one).toMatchObject({
        state: 'unknown',
        reason: 'undetermined',
        figure: null,
        says: 'The set has no handset.',
      })
    },
  )

  test.each([SENDS, RECEIVES, SIDETONE, IMPEDANCE, 'speech.two-sets'])(
    '%s of a set without plug has no line',
    (id) => {
      expect(askOne(id, sheet('without: [plug]'))).toMatchObject({ state: 'unknown', reason: 'no-line' })
    },
  )
})

/** Decibels in a sentence. */
const told = ({ says }: Verdict) => Number(/(\d+(?:\.\d+)?) dB/.exec(says)?.[1])

describe('sidetone', () => {
  test('is told beside what is received, and judged by no limit', () => {
    const one = askOne(SIDETONE, { target: 'fescue' })
    expect(one).toMatchObject({
      state: 'unknown',
      reason: 'no-limit',
      figure: { id: 'speech.sidetone' },
      limit: null,
    })
    const [receive] = one.consequences ?? []
    const apart = 20 * Math.log10((receive?.figure.value ?? 0) / (one.figure?.value ?? 1))
    assertClose(told(one), apart, { relative: 0, absolute: 0.5 }, 'dB in words')
    expect(one.says).toContain('below a far voice')
  })

  test('says so where it is louder than a far voice, as without a balance network', () => {
    expect(askOne(SIDETONE, { target: 'marram' }).says).toContain('louder than a far voice')
    expect(askOne(SIDETONE, { target: 'marram', on: 'depot-exchange' }).says).toContain('balance network')
  })

  test('says so where nothing is heard at all', () => {
    expect(askOne(SIDETONE, { target: 'sedge-converted-as-fescue' }).says).toBe(
      'Nothing at all is heard in the receiver.',
    )
  })

  test('has no answer without both parts', () => {
    expect(askOne(SIDETONE, sheet('without: [handset.receiver]'))).toMatchObject({
      state: 'unknown',
      reason: 'undetermined',
    })
  })
})

describe('impedance', () => {
  const one = askOne(IMPEDANCE, { target: 'fescue' })

  test('is told with its return loss, and judged by no limit', () => {
    expect(one).toMatchObject({
      state: 'unknown',
      reason: 'no-limit',
      figure: { id: 'speech.impedance', unit: 'Ω' },
    })
    expect((one.consequences ?? []).map(({ figure }) => [figure.id, figure.frequency])).toEqual([
      ['speech.return-loss', 1000],
      ['speech.return-loss', 500],
      ['speech.return-loss', 1000],
    ])
  })

  test('shows what modern equipment must reach, and does not fail by it', () => {
    // AS/CA S002:2010 clause 5.4.3.2: more than 10 dB to 600 Hz, more than 15 dB above
    expect(one.says).toContain('10 dB below 600 Hz and 15 dB above')
    expect(one.says).toContain('AS/CA S002:2010, 5.4.3.2')
    const [, lower, upper] = (one.consequences ?? []).map(({ figure }) => figure.value ?? 0)
    expect(lower).toBeLessThan(10)
    expect(upper).toBeLessThan(15)
  })

  test('follows from its phasor, against the termination of this line', () => {
    // 20 lg |(Z + Zr)/(Z − Zr)|, Zr = 370 Ω + 620 Ω ∥ 310 nF at 1 kHz: 622.2000 − j304.5639 Ω
    const { re = 0, im = 0 } = one.figure?.phasor ?? {}
    const expected =
      20 * Math.log10(Math.hypot(re + 622.2, im - 304.5639) / Math.hypot(re - 622.2, im + 304.5639))
    assertClose(one.consequences?.[0]?.figure.value, expected, { relative: 1e-5 }, 'dB')
  })

  test('is that of the direct-current point of its line', () => {
    const far = askOne(IMPEDANCE, { target: 'fescue', on: 'valley-exchange' })
    expect(far.figure?.value).toBeGreaterThan(1.05 * (one.figure?.value ?? 0))
  })

  test('has no answer where the a wire is not met', () => {
    expect(askOne(IMPEDANCE, sheet('without: [plug.contacts.5]'))).toMatchObject({
      state: 'unknown',
      reason: 'no-line',
    })
  })
})
