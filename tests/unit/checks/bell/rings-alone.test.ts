import { describe, expect, test } from 'vitest'
import { DEMO, setText } from '../../../support/bench.ts'
import { assertClose } from '../../../support/close.ts'
import { ask, askOne, house, lineText, MASTER, mendedBy, mendOf, plainSet } from '../_ask.ts'

const CHECK = 'bell.rings-alone'

describe('a bell alone on the line', () => {
  test('holds on the right wiring, by the current that the sheet of the set asks for', () => {
    expect(askOne(CHECK, { target: 'fescue' })).toMatchObject({
      state: 'holds',
      subject: 'fescue/bell',
      figure: { id: 'ringing.current', unit: 'A', frequency: 25 },
      limit: {
        value: 0.003,
        side: 'at-least',
        source: 'sheet of this set',
        clause: 'rings from',
        grade: 'SHEET',
      },
    })
  })

  test('is judged without the others: in a full house each rings alone', () => {
    const found = ask(CHECK, { target: 'museum-hall' })
    expect(found).toHaveLength(12)
    for (const one of found) expect([one.subject, one.state]).toEqual([one.subject, 'holds'])
  })

  test('holds with a hair more than its sheet asks for, and fails with a hair less', () => {
    // 75 V over 400 Ω, 1.8 µF and 4300 Ω + 12 H with its two contacts; 470 kΩ beside it takes a share
    const current = askOne(
      CHECK,
      house(lineText(), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600)),
    ).figure?.value
    const wanting = (amperes: number) => {
      const text = plainSet(600).text.replace('3 mA at', `${amperes} A at`)
      return askOne(
        CHECK,
        house(lineText(), [MASTER], ['desk: {set: plain, in: front}'], { file: 'plain.yaml', text }),
      ).state
    }
    expect(current).toBeGreaterThan(0.01)
    expect(wanting((current ?? 0) * (1 - 1e-6))).toBe('marginal')
    expect(wanting((current ?? 0) * (1 + 1e-6))).toBe('fails')
    expect(wanting((current ?? 0) * 0.9)).toBe('holds')
  })

  test('fails reversed at its own cord, and exchanging its line cores was tried before it is named', () => {
    const one = askOne(CHECK, { target: 'fescue-reversed-at-cord' })
    expect(one).toMatchObject({ state: 'fails', subject: 'fescue/bell' })
    expect(mendOf(one)).toBe('exchange the two line cores of the set')
    const [{ now, mended } = { now: 1, mended: 0 }] = mendedBy(one)
    // alone it gets what 470 kΩ pass: about a hundredth
    expect(now).toBeLessThan(mended / 50)
    expect(mended).toBe(askOne(CHECK, { target: 'fescue' }).figure?.value)
  })

  test('holds reversed at the exchange', () => {
    const asked = house(lineText(), [MASTER], ['desk: {set: fescue, in: front}'])
    const text = asked.text?.text.replace('sockets:', 'reversed: yes\nsockets:') ?? ''
    expect(askOne(CHECK, { ...asked, text: { file: 'house.yaml', text } }).state).toBe('holds')
  })

  test('fails in a socket without ringing lead, and a third wire from one that has it was tried and mends it', () => {
    const one = askOne(CHECK, { target: 'cottage-bare' })
    expect(one).toMatchObject({ state: 'fails', path: ['parlour/plug.ringing'] })
    expect(mendOf(one)).toMatch(/^run a third wire .* from socket box.* to socket wall;.*licensed practice/)
    const wired = house(
      lineText(),
      [MASTER, 'wall: {is: secondary, fed from: front}'],
      ['desk: {set: fescue, in: wall}'],
    )
    const bare = house(
      lineText(),
      [MASTER, 'wall: {is: secondary, fed from: front, ringing lead: no}'],
      ['desk: {set: fescue, in: wall}'],
    )
    const [{ mended } = { mended: 0 }] = mendedBy(askOne(CHECK, bare))
    assertClose(mended, askOne(CHECK, wired).figure?.value ?? 0, { relative: 1e-9 }, 'as the very wire does')
  })

  test('fails in an outlet of two wires, and an adapter lead with its own capacitor was tried and mends it', () => {
    const text = (DEMO.find('premises', 'cottage-bare')?.text ?? '')
      .replace('{is: master, capacitance: 1.8 µF, resistance: 470 kΩ, gas tube: 250 V}', '{is: outlet}')
      .replace('name: cottage-bare', 'name: bare')
    const one = askOne(CHECK, { text: { file: 'bare.yaml', text } })
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(
      /^put an adapter lead with its own capacitor of 1\.8 µF and resistor of 470 kΩ/,
    )
    const [{ now, mended } = { now: 1, mended: 0 }] = mendedBy(one)
    expect(now).toBeLessThan(1e-9)
    expect(mended).toBeGreaterThan(0.003)
    // the very lead stands in the other cottage, before a converter of 40 Ω
    const cottage = askOne(CHECK, { target: 'cottage' })
    expect(cottage.state).toBe('holds')
    expect(cottage.figure?.value).toBeGreaterThan(mended * 0.95)
    expect(cottage.figure?.value).toBeLessThan(mended)
  })

  test('names no mend that was tried in vain: a ringing core that is parked is looked for inside', () => {
    const one = askOne(CHECK, { target: 'fescue-without-ringing-lead' })
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(/^nothing that was tried outside the set mends it/)
    expect(mendedBy(one)).toEqual([])
  })

  test('says of a mend that it is not enough: a line that rings weakly', () => {
    const ringing =
      '{voltage: 12 V, frequency: 25 Hz, wave: sine, source: 400 Ω, sent to: b wire, over battery: 50 V}'
    const sockets = [MASTER, 'wall: {is: secondary, fed from: front, ringing lead: no}']
    const one = askOne(CHECK, house(lineText({ ringing }), sockets, ['desk: {set: fescue, in: wall}']))
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toMatch(
      /third wire.*: it gets more, but not enough; the ringing of this line is too weak/,
    )
    const [{ now, mended } = { now: 1, mended: 0 }] = mendedBy(one)
    expect(now).toBeLessThan(mended)
    expect(mended).toBeLessThan(0.003)
  })

  test('takes a free socket with a ringing lead where an adapter lead does not do', () => {
    // behind 100 kΩ of a bad joint in the branch nothing rings; at the front it does
    const sockets = [
      MASTER,
      'bad: {is: converter, fed from: front, series resistance: 100 kΩ}',
      'wall: {is: secondary, fed from: bad}',
    ]
    const one = askOne(CHECK, house(lineText(), sockets, ['desk: {set: fescue, in: wall}']))
    expect(one.state).toBe('fails')
    expect(mendOf(one)).toBe('plug the set into the socket front')
  })

  test('fails for good where no current rings it', () => {
    const bell = 'coils: {resistance: 500 Ω, inductance: 3 H, joined: series, turned: yes}'
    const asked = house(lineText(), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600, { bell }))
    for (const check of [CHECK, 'bell.rings-with-all']) {
      const one = askOne(check, asked)
      expect(one).toMatchObject({ state: 'fails', limit: null, margin: null })
      expect(one.says).toContain('its two coils oppose each other')
    }
  })

  test('is unknown without a line, without a bell and where nothing rings', () => {
    expect(askOne(CHECK, { target: 'fescue', on: 'none' })).toMatchObject({
      state: 'unknown',
      reason: 'no-line',
    })
    expect(askOne(CHECK, { text: setText('fescue', 'without: [parts.bell]') })).toMatchObject({
      state: 'unknown',
      reason: 'undetermined',
      says: 'The set has no bell.',
    })
    const quiet = house(lineText({ ringing: '' }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600))
    expect(askOne(CHECK, quiet)).toMatchObject({ state: 'unknown', says: 'Nothing rings on this line.' })
  })

  test('remarks on a sheet that speaks of another frequency than the line rings at', () => {
    const ringing =
      '{voltage: 75 V, frequency: 17 Hz, wave: sine, source: 400 Ω, sent to: b wire, over battery: 50 V}'
    const asked = house(lineText({ ringing }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600))
    for (const check of [CHECK, 'bell.rings-with-all']) {
      expect(askOne(check, asked)).toMatchObject({
        state: 'holds',
        remark: 'Its sheet tells the current at 25 Hz; this line rings at 17 Hz.',
      })
    }
  })
})
