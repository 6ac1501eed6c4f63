import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import {
  checkMoved,
  checkText,
  DEMO,
  setText,
  troubles,
  verdictOf,
  verdictsOf,
} from '../../../support/bench.ts'

const SEPARATE = 'wiring.cores-separate'
const REACH = 'wiring.cores-reach-parts'

describe('handset cores', () => {
  test('are separate when no link joins two of them', () => {
    const one = verdictOf(check({ target: 'fescue' }, DEMO), SEPARATE)
    expect(one).toMatchObject({ state: 'holds', subject: 'fescue', limit: null, path: [] })
    expect(one).not.toHaveProperty('remark')
    // measured with the handset parts lifted, between the two cores that are nearest to each other
    expect(one.figure).toMatchObject({ id: 'resistance.between', unit: 'Ω' })
    expect(one.figure?.value).toBeGreaterThan(0)
  })

  test.each([
    [
      't1 beside t2 short-circuits the transmitter',
      'handset.t1, onto: B4',
      'handset.t1, handset.t2',
      'speech.send',
      'A5',
    ],
    [
      'r1 beside r2 short-circuits the receiver',
      'handset.r1, onto: B2',
      'handset.r1, handset.r2',
      'speech.receive',
      'B1',
    ],
    [
      'r1 beside t2 takes the receiver out',
      'handset.r1, onto: B4',
      'handset.t2, handset.r1',
      'speech.receive',
      'B1',
    ],
    [
      'r2 beside t2 takes the receiver out',
      'handset.r2, onto: B4',
      'handset.t2, handset.r2',
      'speech.receive',
      'B3',
    ],
  ])('fail where %s, and the mend is the landing of the sheet', (_says, move, pair, lost, home) => {
    const one = verdictOf(checkMoved('fescue', `land core: ${move}`), SEPARATE)
    expect(one).toMatchObject({ state: 'fails', subject: pair, figure: { id: lost } })
    expect(one.figure?.value).toBeLessThan(1e-9)
    expect(one.margin).toBeLessThan(-0.999)
    expect(one).toHaveProperty('mend', expect.stringMatching(new RegExp(`on ${home}$`)))
    expect(one.consequences?.map(({ figure }) => figure.id)).toEqual([
      'speech.send',
      'speech.receive',
      'speech.sidetone',
    ])
    for (const { mended } of one.consequences ?? []) expect(mended?.value).toBeGreaterThan(1e-6)
  })

  test('joined without loss hold with a remark, and the remark says when they are meant to be', () => {
    const joined = 'cords: {handset: {cores: {r2: {lands: B3}}}}'
    const by = (...lines: readonly string[]) =>
      verdictOf(checkText(setText('sedge-with-strap', ...lines)), SEPARATE)
    const plain = by(joined)
    const meant = by(joined, 'common cores: [[r2, t2]]')
    for (const one of [plain, meant]) {
      expect(one).toMatchObject({ state: 'holds', subject: 'handset.t2, handset.r2' })
      expect(one.margin).toBeGreaterThan(0)
      expect(one).toHaveProperty('remark')
    }
    expect(plain).not.toHaveProperty('remark', meant.says)
  })

  test('joined three at a time give a verdict for each pair', () => {
    const answer = checkMoved('fescue', 'land core: handset.r2, onto: B4', 'land core: handset.r1, onto: B4')
    expect(verdictsOf(answer, SEPARATE).map(({ subject }) => subject)).toEqual([
      'handset.t2, handset.r1',
      'handset.t2, handset.r2',
      'handset.r1, handset.r2',
    ])
  })

  test('joined in a set without a receiver are unknown, since nothing tells what is lost', () => {
    const text = setText(
      'fescue',
      'without: [handset.receiver]',
      'cords: {handset: {cores: {r2: {lands: B4}}}}',
    )
    expect(verdictOf(checkText(text), SEPARATE)).toMatchObject({
      state: 'unknown',
      reason: 'undetermined',
      figure: null,
      limit: null,
      margin: null,
      path: ['trial/handset.t2', 'trial/B4', 'trial/handset.r2'],
    })
  })

  test('do not exist in a set without handset cord, and none is then joined', () => {
    const text = setText('fescue', 'without: [handset.receiver, handset.transmitter, cords.handset]')
    expect(verdictOf(checkText(text), SEPARATE)).toMatchObject({ state: 'holds', figure: null })
    expect(verdictOf(checkText(text), REACH)).toMatchObject({ state: 'unknown', reason: 'undetermined' })
  })

  test('that no landing can part are never said to hold', () => {
    // every terminal is on one strapped row, so that any landing joins the cores
    const text = {
      file: 'trial.yaml',
      text: `ringproof: 1
sheet: set
name: trial
strips: {A: 2}
straps: {A1-A2: {hold: solder}}
cords:
  line: {ends in: plug, cores: {a: {lands: A1}, b: {lands: A2}}}
  handset: {ends in: handset, cores: {t1: {lands: A1}, t2: {lands: A2}, r1: {lands: A1}, r2: {lands: A2}}}
plug: {numbered by: wiring, contacts: {5: a, 2: b}}
handset:
  transmitter: {kind: transmitter, from: t1, to: t2, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
  receiver: {kind: receiver, from: r1, to: r2, resistance: 150 Ω, inductance: 20 mH}
`,
    }
    const answer = checkText(text)
    expect(verdictsOf(answer, SEPARATE)).toHaveLength(6)
    for (const one of verdictsOf(answer, SEPARATE)) {
      expect(one).toMatchObject({ state: 'unknown', reason: 'undetermined' })
    }
  })
})

describe('a handset part', () => {
  test.each([
    ['handset.t1', 'transmitter', 'A5'],
    ['handset.t2', 'transmitter', 'B4'],
    ['handset.r1', 'receiver', 'B1'],
    ['handset.r2', 'receiver', 'B3'],
  ])('is out of the circuit when %s is parked, and the mend lands it again', (core, part, home) => {
    const answer = checkMoved('fescue', `park core: ${core}`)
    const one = verdictOf(answer, REACH, `fescue/${part}`)
    expect(one).toMatchObject({
      state: 'fails',
      figure: { id: 'impedance.between', frequency: 1000, state: 'open' },
    })
    expect(one).toHaveProperty('mend', `land core ${core} on ${home}`)
    const other = part === 'receiver' ? 'transmitter' : 'receiver'
    expect(verdictOf(answer, REACH, `fescue/${other}`).state).toBe('holds')
  })

  test('with both cores loose has no single landing that mends it', () => {
    const answer = checkMoved('fescue', 'park core: handset.r1', 'park core: handset.r2')
    const one = verdictOf(answer, REACH, 'fescue/receiver')
    expect(one).toMatchObject({ state: 'fails', path: ['fescue/handset.r1', 'fescue/handset.r2'] })
    expect(one).toHaveProperty('mend', expect.stringContaining('receiver'))
  })

  test('of the wrong conversion is put right by the landing that the set’s own sheets give', () => {
    const answer = check({ target: 'sedge-converted-as-fescue' }, DEMO)
    expect(troubles(answer)).toEqual({ [SEPARATE]: 'fails', [REACH]: 'holds,fails' })
    expect(verdictOf(answer, REACH, 'sedge-as-found/receiver')).toHaveProperty(
      'mend',
      'land core handset.r2 on B2',
    )
  })
})

describe('a joining that costs some of the speech', () => {
  // a resistor from B2 to B4 closes the receiver's loop the long way round
  const half = (resistance: string) =>
    setText(
      'fescue',
      `parts: {half: {kind: resistor, from: B2, to: B4, resistance: ${resistance}}}`,
      'cords: {handset: {cores: {r2: {lands: B4}}}}',
    )

  test('holds below the limit, and the remark says how much is lost', () => {
    const one = verdictOf(checkText(half('330 Ω')), SEPARATE)
    expect(one).toMatchObject({ state: 'holds', figure: { id: 'speech.receive' } })
    const [, receive] = one.consequences ?? []
    const lost = 1 - (receive?.figure.value ?? 0) / (receive?.mended?.value ?? 1)
    expect(lost).toBeGreaterThan(0.01)
    expect(one).toHaveProperty('remark', expect.stringContaining(`${Math.round(lost * 100)} %`))
  })

  test('fails beyond it', () => {
    expect(verdictOf(checkText(half('33 kΩ')), SEPARATE)).toMatchObject({ state: 'fails' })
  })
})

describe('several cores astray at once', () => {
  test('fail although no single landing brings the speech back, and the mend lands them all', () => {
    const answer = checkMoved('fescue', 'land core: handset.r2, onto: B4', 'land core: handset.r1, onto: B4')
    for (const one of verdictsOf(answer, SEPARATE)) {
      expect(one).toMatchObject({ state: 'fails', figure: { id: 'speech.receive' } })
      expect(one.figure?.value).toBeLessThan(1e-9)
      expect(one).toHaveProperty('mend', 'land core handset.r1 on B1, land core handset.r2 on B3')
    }
  })

  test('are unknown, never held harmless, when the sheets themselves mean them so', () => {
    const text = setText('fescue', 'cords: {handset: {cores: {r1: {lands: B4}, r2: {lands: B4}}}}')
    const states = verdictsOf(checkText(text), SEPARATE).map(({ state }) => state)
    expect(states).toHaveLength(3)
    expect(states).not.toContain('holds')
  })

  test('have a margin or none, never one that is no number', () => {
    const answer = checkMoved('fescue', 'land core: handset.t1, onto: B3', 'land core: handset.t2, onto: B2')
    expect(verdictsOf(answer, SEPARATE).map(({ state }) => state)).not.toContain('holds')
    for (const { margin } of answer.verdicts) expect(margin === null || Number.isFinite(margin)).toBe(true)
  })
})
