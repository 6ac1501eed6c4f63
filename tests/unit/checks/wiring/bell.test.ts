import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, checkMoved, checkText, DEMO, setText, troubles, verdictOf } from '../../../support/bench.ts'

const OWN_CAPACITOR = 'parts: {own-capacitor: {kind: capacitor, from: C2, to: B5, capacitance: 1.8 µF}}'

describe('the ringing lead to the bell', () => {
  test('fails on a parked ringing core, and names the terminal where the bell waits', () => {
    const one = verdictOf(checkMoved('fescue', 'park core: line.ringing'), 'wiring.ringing-lead-to-bell')
    expect(one).toMatchObject({
      state: 'fails',
      subject: 'fescue/bell',
      figure: { id: 'resistance.between', value: null, state: 'open' },
      margin: null,
      path: ['fescue/plug.ringing'],
    })
    expect(one).toHaveProperty('mend', expect.stringContaining('C2'))
  })

  test('fails on a capacitor in series, which the master socket has already', () => {
    const answer = checkText(
      setText(
        'fescue',
        'joints: [joint-1, joint-2, joint-3, joint-4]',
        'parts: {bell: {from: joint-4}, own-capacitor: {kind: capacitor, from: C2, to: joint-4, capacitance: 1.8 µF}}',
      ),
    )
    expect(troubles(answer)).toEqual({
      'wiring.ringing-lead-to-bell': 'fails',
      'wiring.one-ringing-capacitor': 'fails',
    })
  })

  test('fails on a plug that has no contact for it', () => {
    const answer = checkText(setText('fescue', 'without: [plug.contacts.3]'))
    expect(verdictOf(answer, 'wiring.ringing-lead-to-bell')).toMatchObject({ state: 'fails', path: [] })
    expect(verdictOf(answer, 'wiring.ringing-lead-alone')).toMatchObject({
      state: 'unknown',
      reason: 'undetermined',
      says: 'No ringing lead comes to this plug, so that there is none to stray.',
    })
  })

  test('measures the bell resistor that lies between them', () => {
    const { figure, path } = verdictOf(check({ target: 'fescue' }, DEMO), 'wiring.ringing-lead-to-bell')
    // 3.3 kΩ of the sheet and two links of 10 mΩ at most on the way
    expect(figure?.value).toBeGreaterThanOrEqual(3300)
    expect(figure?.value).toBeLessThan(3301)
    expect(path).toEqual(['fescue/plug.ringing', 'fescue/C1', 'fescue/C2'])
  })

  test('shows the ringing current that follows, none without the lead', () => {
    const current = (moves: readonly string[]) => {
      const answer = moves.length === 0 ? check({ target: 'fescue' }, DEMO) : checkMoved('fescue', ...moves)
      return verdictOf(answer, 'wiring.ringing-lead-to-bell').consequences?.[0]?.figure
    }
    const right = current([])
    expect(right?.id).toBe('ringing.current')
    expect(right?.value).toBeGreaterThan(1e-3)
    expect(current(['park core: line.ringing'])?.value).toBeLessThan(1e-6)
  })

  test.each(['wiring.ringing-lead-to-bell', 'wiring.bell-return', 'wiring.one-ringing-capacitor'])(
    'says of a set without a bell that %s is undetermined',
    (id) => {
      expect(verdictOf(checkMoved('fescue', 'lift part: bell'), id)).toMatchObject({
        state: 'unknown',
        reason: 'undetermined',
        figure: null,
        limit: null,
      })
    },
  )
})

describe('the ringing lead alone', () => {
  test('fails on a ringing lead strapped to A1, which short-circuits the bell', () => {
    const answer = checkMoved('fescue', 'fit strap: A1-C1')
    expect(verdictOf(answer, 'wiring.ringing-lead-alone')).toMatchObject({ state: 'fails' })
    expect(verdictOf(answer, 'wiring.ringing-lead-alone').figure?.value).toBeLessThan(1)
    expect(verdictOf(answer, 'wiring.loop-through-set').state).toBe('holds')
  })

  test('fails on an own capacitor left in', () => {
    expect(troubles(checkText(setText('fescue', OWN_CAPACITOR)))).toEqual({
      'wiring.ringing-lead-alone': 'fails',
      'wiring.one-ringing-capacitor': 'fails',
    })
  })

  test('is the size of the impedance at the ringing frequency of the line', () => {
    const { figure } = verdictOf(checkText(setText('fescue', OWN_CAPACITOR)), 'wiring.ringing-lead-alone')
    // closed form: 3.3 kΩ in series with 1.8 µF at 25 Hz; links of 10 mΩ are far below the tolerance
    const expected = Math.hypot(3300, 1 / (2 * Math.PI * 25 * 1.8e-6))
    expect(figure?.frequency).toBe(25)
    expect(Math.abs((figure?.value ?? 0) / expected - 1)).toBeLessThan(1e-4)
  })
})

describe('the return of the bell', () => {
  test('fails on a bell returned to the b wire, and names the exchange of the cores as mend', () => {
    const answer = checkMoved('fescue', 'lift strap: C3-A1', 'fit strap: B5-C3')
    expect(verdictOf(answer, 'wiring.bell-return')).toMatchObject({
      state: 'fails',
      path: ['fescue/C3', 'fescue/B5', 'fescue/plug.b'],
    })
    expect(troubles(answer)).toEqual({
      'wiring.bell-return': 'fails',
      'wiring.loop-open-on-hook': 'fails',
      // off-normal, the hush contact leads through the bell and past the impulse contact: the pulses drown
      'wiring.quench-present': 'fails',
    })
  })

  test('fails on a pair crossed at the cord', () => {
    const answer = check({ target: 'fescue-reversed-at-cord' }, DEMO)
    expect(verdictOf(answer, 'wiring.bell-return')).toHaveProperty(
      'mend',
      expect.stringContaining('exchange'),
    )
  })

  test('fails on a bell returned to nothing', () => {
    const one = verdictOf(checkMoved('fescue', 'lift strap: C3-A1'), 'wiring.bell-return')
    expect(one).toMatchObject({ state: 'fails', figure: { state: 'open' }, path: ['fescue/C3'] })
  })

  test('holds when the pair is reversed on the exchange side of the master socket', () => {
    const { premises, shelf } = reversedPair()
    expect(troubles(check({ target: 'fescue', on: premises }, shelf))).toEqual({})
  })
})

describe('one ringing capacitor', () => {
  test('counts the capacitors that carry the current of the bell', () => {
    const count = (answer: ReturnType<typeof check>) =>
      verdictOf(answer, 'wiring.one-ringing-capacitor').figure
    expect(count(check({ target: 'fescue' }, DEMO))).toMatchObject({
      id: 'ringing.capacitors',
      value: 1,
      unit: '1',
    })
    expect(count(checkText(setText('fescue', OWN_CAPACITOR)))?.value).toBe(2)
    expect(count(checkMoved('fescue', 'park core: line.ringing'))?.value).toBe(0)
  })

  test('is unknown on a line that does not ring', () => {
    const { line, shelf } = silentLine()
    const answer = check({ target: 'fescue', on: line }, shelf)
    expect(verdictOf(answer, 'wiring.one-ringing-capacitor')).toMatchObject({
      state: 'unknown',
      reason: 'no-line',
    })
    expect(verdictOf(answer, 'wiring.ringing-lead-to-bell')).toMatchObject({
      state: 'holds',
      consequences: [],
    })
    expect(verdictOf(answer, 'wiring.ringing-lead-alone').figure?.frequency).toBe(25)
    expect(answer.figures.filter(({ id }) => id.startsWith('ringing.'))).toEqual([])
  })
})

function reversedPair() {
  return {
    premises: 'crossed',
    shelf: besides(
      'ringproof: 1\nsheet: premises\nname: crossed\nline: depot-exchange\nreversed: yes\nsockets:\n  bench: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}\nsets: {}\n',
    ),
  }
}

function silentLine() {
  return {
    line: 'silent',
    shelf: besides(
      'ringproof: 1\nsheet: line\nname: silent\nfeed: {voltage: 50 V, resistance: 400 Ω, shared: half in each wire, negative: b wire, earth: positive pole}\nspeech: {impedance: [600 Ω]}\nrecall: none\nlimits: {}\n',
    ),
  }
}

describe('bells at adapters', () => {
  const premises = (name: string, lead: string, sets: string) =>
    `ringproof: 1\nsheet: premises\nname: ${name}\nline: depot-exchange\nsockets:\n  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}\n  lead: {is: adapter, fed from: front${lead}}\nsets: {${sets}}\n`

  test('count the capacitor of their own way only, not that of another bell’s', () => {
    const sheet = premises(
      'two-ways',
      ', capacitance: 1.8 µF, resistance: 470 kΩ',
      'hall: {set: sedge, in: front}, study: {set: sedge, in: lead}',
    )
    const { verdicts } = check({ target: 'two-ways' }, besides(sheet))
    const counted = verdicts.filter(({ check: id }) => id === 'wiring.one-ringing-capacitor')
    expect(counted.map(({ state }) => state)).toEqual(['holds', 'holds'])
    expect(counted.map(({ path }) => path)).toEqual([['front/capacitor'], ['lead/capacitor']])
  })

  test('ring from the pair by their own capacitor where no ringing lead comes, and nobody tells to take it out', () => {
    const sheet = premises('bare-adapter', '', 'study: {set: sedge-as-found, in: lead}')
    const { verdicts } = check({ target: 'bare-adapter' }, besides(sheet))
    const of = (id: string) => verdicts.find((one) => one.check === id)
    expect(of('wiring.one-ringing-capacitor')).toMatchObject({
      state: 'holds',
      path: ['study/own-capacitor'],
    })
    expect(of('wiring.ringing-lead-to-bell')).toMatchObject({ state: 'holds' })
  })
})

describe('a bell whose coils oppose each other', () => {
  test('is called that, with no limit that nobody wrote', () => {
    const [one] = check({ target: 'melick-coil-turned' }, DEMO).verdicts.filter(
      ({ check: id }) => id === 'wiring.ringing-lead-to-bell',
    )
    expect(one).toMatchObject({ state: 'fails', limit: null, margin: null })
    expect(one?.says).toContain('its two coils oppose each other')
    expect(one).toHaveProperty('mend', 'exchange the two ends of one of its coils')
  })
})

describe('the way back of the bell', () => {
  test('is to the a wire still where the ringing lead has strayed onto that wire', () => {
    const answer = checkMoved('fescue', 'land core: line.ringing, onto: A1')
    expect(verdictOf(answer, 'wiring.bell-return')).toMatchObject({ state: 'holds' })
    expect(verdictOf(answer, 'wiring.ringing-lead-alone')).toMatchObject({ state: 'fails' })
  })

  test.each(['melick', 'foxtail'])('of a %s, on two wires, may lie on either of them', (set) => {
    const text = [
      'ringproof: 1\nsheet: premises\nname: hut\nline: depot-exchange\nreversed: no',
      'sockets:\n  box: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
      `sets:\n  one: {set: ${set}, in: box, reversed: yes}\n`,
    ].join('\n')
    const verdict = verdictOf(
      check({ target: '', text: { file: 'hut.yaml', text } }, DEMO),
      'wiring.bell-return',
    )
    expect(verdict.state).toBe('holds')
    expect(verdict.path.at(-1)).toBe('one/plug.a')
    expect(verdict.says).toMatch(/between the b wire and a capacitor on the a wire/)
  })

  test('fails where the bell lies on the b wire and no capacitor of its own leads to the a wire', () => {
    const answer = checkMoved(
      'melick',
      'lift part: own-capacitor',
      'land core: line.a, onto: E4',
      'land core: line.b, onto: D1',
    )
    expect(verdictOf(answer, 'wiring.bell-return')).toMatchObject({ state: 'fails' })
  })
})

test('of a socket to which no ringing lead comes it is said that none can stray', () => {
  const answer = check({ target: 'cottage-bare' }, DEMO)
  expect(verdictOf(answer, 'wiring.ringing-lead-alone')).toMatchObject({
    state: 'unknown',
    reason: 'undetermined',
    says: 'No ringing lead comes to this socket, so that there is none to stray.',
  })
})
