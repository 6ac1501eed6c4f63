import { check, compare, ProblemError, VERSION } from 'ringproof'
import { countsOf, outcomeOf } from 'ringproof/answer/check-answer'
import { describe, expect, test } from 'vitest'
import { besides, DEMO, rewireText, setText } from '../../support/bench.ts'

const HOUSE = `ringproof: 1
sheet: premises
name: house
line: depot-exchange
reversed: no
sockets:
  hall: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}
  loft: {is: secondary, fed from: hall, over: {type: house-three, gauge: 0.5 mm, length: 20 m}}
sets:
  desk: {set: fescue, in: hall}
  bed: {set: sedge-as-found, rewire: sedge-converted-as-fescue, in: loft}
`
const SHORT = `ringproof: 1
sheet: line
name: short
feed: {voltage: 24 V, resistance: 400 Ω, shared: half in each wire, negative: b wire, earth: positive pole}
ringing: {voltage: 40 V, frequency: 50 Hz, wave: sine, source: 400 Ω, sent to: b wire}
speech: {impedance: [600 Ω]}
recall: none
limits: {}
`
const shelf = besides(HOUSE, SHORT)

function problemOf(ask: () => unknown) {
  try {
    ask()
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0]
    throw error
  }
  throw new Error('nothing is refused')
}

describe('a check', () => {
  test('has an envelope that says which answer it is and what was asked', () => {
    const answer = check({ target: 'rewire/sedge-converted', on: 'workshop' }, DEMO)
    expect(answer).toMatchObject({
      ringproof: 'check/1',
      'made by': VERSION,
      request: { check: 'sedge-converted', on: 'workshop' },
      problems: [],
    })
    expect(check({ target: 'fescue' }, DEMO).request).toEqual({ check: 'fescue' })
  })

  test('of premises judges every set in its place and no other', () => {
    const answer = check({ target: 'house' }, shelf)
    const failing = answer.verdicts.filter(
      ({ check: id, state }) => state === 'fails' && id.startsWith('wiring.'),
    )
    expect(failing.map(({ check: id }) => id).sort()).toEqual([
      'wiring.cores-reach-parts',
      'wiring.cores-separate',
    ])
    expect(failing.flatMap(({ path }) => path).filter((id) => id.startsWith('desk/'))).toEqual([])
    const loops = answer.figures.filter(({ id }) => id === 'loop.current')
    expect(loops.map(({ subject }) => subject)).toEqual(['desk', 'bed'])
    expect(
      answer.verdicts.filter(({ check: id }) => id === 'line.current').map(({ subject }) => subject),
    ).toEqual(['desk', 'bed'])
    for (const { subject, condition } of loops) expect(Object.keys(condition.sets)).toEqual([subject])
  })

  test('stands on the line and in the premises that are named', () => {
    const at = (on?: string) => {
      const answer = check({ target: 'fescue', ...(on === undefined ? {} : { on }) }, shelf)
      return answer.figures.find(({ id }) => id === 'ringing.current')
    }
    expect(at()?.frequency).toBe(25)
    expect(at('depot-exchange')).toEqual(at())
    expect(at('workshop')).toEqual(at())
    for (const on of ['short', 'line/short']) expect(at(on)?.frequency).toBe(50)
    const house = check({ target: 'house', on: 'short' }, shelf)
    expect(house.figures.find(({ id }) => id === 'ringing.current')?.frequency).toBe(50)
    expect(at('premises/house')?.subject).toBe('fescue/bell')
  })

  test('takes premises and lines as texts', () => {
    const line = check({ target: 'fescue', onText: { file: 'short.yaml', text: SHORT } }, DEMO)
    expect(line.request).toEqual({ check: 'fescue', on: 'short.yaml' })
    expect(line.figures.find(({ id }) => id === 'ringing.current')?.frequency).toBe(50)
    const house = check({ target: 'fescue', onText: { file: 'house.yaml', text: HOUSE } }, DEMO)
    expect(house.verdicts.some(({ state }) => state === 'fails')).toBe(false)
  })

  test('of a circuit is refused, by name and by text', () => {
    expect(problemOf(() => check({ target: 'two-meshes' }, DEMO))?.code).toBe('request-wrong')
    const text = DEMO.find('circuit', 'two-meshes')
    if (text === undefined) throw new Error('no circuit')
    expect(problemOf(() => check({ target: '', text }, DEMO))?.code).toBe('request-wrong')
    const unit = DEMO.find('unit', 'vetch')
    if (unit === undefined) throw new Error('no unit')
    expect(problemOf(() => check({ target: '', text: unit }, DEMO))).toMatchObject({ code: 'request-wrong' })
  })

  test('of an unknown name gives the nearest', () => {
    for (const target of ['fescu', 'set/fescu']) {
      const problem = problemOf(() => check({ target }, DEMO))
      expect(problem?.code).toBe('name-unknown')
      expect(problem?.mend).toContain('`fescue`')
    }
    expect(problemOf(() => check({ target: 'qqqqqqqqqqqq' }, DEMO))?.mend).toContain('ringproof list')
    expect(problemOf(() => check({ target: 'fescue', on: 'workshp' }, DEMO))?.mend).toContain('workshop')
  })

  test('of a rewire that is refused gives every refusal at its place', () => {
    try {
      check({ target: '', text: rewireText('fescue', 'lift strap: A2-A3', 'lift part: nothing') }, DEMO)
      expect.unreachable()
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      expect(error.problems.map(({ code, place }) => [code, place?.line])).toEqual([
        ['move-refused', 6],
        ['move-refused', 7],
      ])
    }
  })

  test('of a rewire whose set is not in reach says so', () => {
    const text = rewireText('fescue')
    const lost = {
      ...text,
      text: text.text.replace('set: fescue', 'set: fescu').replace('moves:', 'moves: []'),
    }
    expect(['name-unknown', 'base-missing']).toContain(
      problemOf(() => check({ target: '', text: lost }, DEMO))?.code,
    )
  })
})

describe('a comparison', () => {
  test('of a rewire with its set lists the moves and what they change', () => {
    const answer = compare({ found: 'sedge-converted' }, DEMO)
    expect(answer.ringproof).toBe('compare/1')
    expect(answer.found.name).toBe('sedge-as-found')
    expect(answer.proposed.name).toBe('sedge-converted')
    expect(answer.moves).toHaveLength(5)
    expect(answer.changed.checks).toEqual(
      expect.arrayContaining(['wiring.cores-reach-parts', 'wiring.no-part-left-out']),
    )
    expect(answer.changed.figures).toEqual(
      expect.arrayContaining(['ringing.current', 'ringing.voltage', 'speech.receive']),
    )
    expect(answer.changed.figures).not.toContain('loop.current')
  })

  test('judges the proposed side', () => {
    const worse = compare({ found: 'sedge-converted', proposed: 'sedge-converted-as-fescue' }, DEMO)
    expect(worse.outcome).toBe('fails')
    expect(worse.counts).toEqual(countsOf(worse.proposed))
    expect(compare({ found: 'sedge-converted-as-fescue', proposed: 'sedge-converted' }, DEMO).outcome).toBe(
      'unknown',
    )
  })

  test('of a set with itself changes nothing', () => {
    expect(compare({ found: 'fescue', proposed: 'fescue' }, DEMO).changed).toEqual({
      checks: [],
      figures: [],
      because: [],
    })
  })

  test('sees a figure that is on one side only', () => {
    const { changed } = compare(
      { found: 'fescue', proposedText: setText('fescue', 'without: [parts.bell]') },
      DEMO,
    )
    expect(changed.figures).toEqual(expect.arrayContaining(['ringing.current', 'bell.direct-current']))
  })

  test('sees a figure that loses its number', () => {
    const loose = rewireText('fescue', 'park core: line.a', 'park core: line.b')
    const { changed } = compare({ found: 'fescue', proposedText: loose }, DEMO)
    expect(changed.figures).toContain('loop.resistance')
  })

  test('takes both sides as texts, on a line of another name', () => {
    const text = rewireText('fescue', 'park core: line.ringing')
    const answer = compare({ found: '', foundText: text, on: 'short' }, shelf)
    expect(answer.request).toEqual({ found: 'fescue', proposed: 'trial', on: 'short' })
    // without ringing current nothing can be said of its capacitor
    expect(answer.changed.checks).toEqual(
      expect.arrayContaining(['wiring.ringing-lead-to-bell', 'wiring.one-ringing-capacitor']),
    )
    const onText = { file: 'short.yaml', text: SHORT }
    expect(compare({ found: '', foundText: text, onText }, DEMO).changed).toEqual(answer.changed)
  })

  test('of one set alone is refused, since nothing is proposed', () => {
    expect(problemOf(() => compare({ found: 'fescue' }, DEMO))?.code).toBe('request-wrong')
  })
})

describe('an outcome', () => {
  test.each([
    [{ holds: 3, marginal: 1, fails: 1, unknown: 1, faults: 0 }, 'fails'],
    [{ holds: 3, marginal: 1, fails: 0, unknown: 1, faults: 1 }, 'fails'],
    [{ holds: 3, marginal: 1, fails: 0, unknown: 1, faults: 0 }, 'marginal'],
    [{ holds: 3, marginal: 0, fails: 0, unknown: 1, faults: 0 }, 'unknown'],
    [{ holds: 3, marginal: 0, fails: 0, unknown: 0, faults: 0 }, 'holds'],
  ])('of %j is %s', (counts, outcome) => {
    expect(outcomeOf(counts)).toBe(outcome)
  })
})

describe('equal bells', () => {
  const bare = check({ target: 'signal-school-bare' }, DEMO)['equal bells']
  const fitted = check({ target: 'signal-school' }, DEMO)['equal bells']

  test('get with a resistor put into all of them what the same premises with resistors give', () => {
    expect(bare?.bells).toBe(5)
    expect(bare?.['in all']).toBeCloseTo(fitted?.most ?? 0, 4)
  })

  test('lose little by it in all, much in one alone, to the good of the others', () => {
    const { most = 0, 'in all': inAll = 0, 'in one': inOne } = bare ?? {}
    expect(inAll).toBeGreaterThan(0.9 * most)
    expect(inOne?.itself).toBeLessThan(0.7 * most)
    expect(inOne?.others).toBeGreaterThan(most)
  })

  test('are none where bells are unequal, where there is one, and for one set among others', () => {
    for (const target of ['goods-office', 'water-tower'])
      expect(check({ target }, DEMO)).not.toHaveProperty('equal bells')
    expect(check({ target: 'fescue', on: 'signal-school-bare' }, DEMO)).not.toHaveProperty('equal bells')
  })
})

test('notes of the premises, of the sets and of their rewires stand with what stands there', () => {
  const { notes = [] } = check({ target: 'gatehouse' }, DEMO).stands ?? {}
  const names = notes.map(({ sheet, name }) => `${sheet}/${name}`)
  expect(names).toEqual(expect.arrayContaining(['premises/gatehouse', 'rewire/fescue-to-two-wires']))
  expect(new Set(names).size).toBe(names.length)
})
