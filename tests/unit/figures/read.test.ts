import { check } from 'ringproof'
import type { FigurePlan } from 'ringproof/figures/figure'
import { freshSupplier, readFigure, type Supplier } from 'ringproof/figures/read'
import type { Netlist } from 'ringproof/netlist/netlist'
import { ProblemError } from 'ringproof/problem'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { compiled } from '../../support/compiled.ts'

const REST = { line: 'idle', sets: {} } as const
const DIRECT = { analysis: 'direct', condition: REST } as const

const net = compiled(
  'e: {kind: voltage-source, from: p, to: earth, direct: 10 V, alternating: 1 V}',
  'r: {kind: resistor, from: p, to: earth, resistance: 1 kΩ}',
  'far: {kind: resistor, from: s, to: t, resistance: 1 kΩ}',
  'v: {kind: bell, from: s, to: t, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}',
)

function node(of: Netlist, id: string): number {
  return of.nodeIndex.get(`trial/${id}`) ?? -1
}

function plan(over: Partial<FigurePlan>): FigurePlan {
  return {
    id: 'loop.current',
    subject: 'trial',
    condition: REST,
    unit: 'A',
    taps: [{ question: DIRECT, current: net.branchIndex.get('trial/r') ?? -1 }],
    value: (readings) => readings[0] ?? 0,
    ...over,
  }
}

describe('a figure', () => {
  test('is what its plan makes of its readings, with the residual of the solve', () => {
    const figure = readFigure(net, plan({}), freshSupplier(net))
    expect(figure).toMatchObject({ id: 'loop.current', subject: 'trial', unit: 'A', value: 0.01 })
    expect(figure.residual).toBeGreaterThanOrEqual(0)
    expect(figure).not.toHaveProperty('state')
    expect(figure).not.toHaveProperty('approximate')
  })

  test('is undetermined between two islands', () => {
    const taps = [{ question: DIRECT, voltage: [node(net, 'p'), node(net, 's')] as const }]
    expect(readFigure(net, plan({ taps, unit: 'V' }), freshSupplier(net))).toMatchObject({
      value: null,
      state: 'undetermined',
    })
  })

  test('keeps the state that its plan gives it', () => {
    const open = readFigure(net, plan({ value: () => 'open' }), freshSupplier(net))
    expect(open).toMatchObject({ value: null, state: 'open' })
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('is beyond range instead of %d', (value) => {
    const strange = readFigure(net, plan({ value: () => value }), freshSupplier(net))
    expect(strange).toMatchObject({ value: null, state: 'beyond-range' })
  })

  test('of nothing has no frequency and no residual', () => {
    const none = readFigure(net, plan({ taps: [], value: () => 7 }), freshSupplier(net))
    expect(none).toMatchObject({ value: 7, residual: 0 })
    expect(none).not.toHaveProperty('frequency')
  })
})

describe('what a figure rests on', () => {
  const reading = (of: Netlist, branch: string, question: object = DIRECT) =>
    readFigure(
      of,
      plan({
        taps: [
          { question: { ...DIRECT, ...question }, current: of.branchIndex.get(`trial/${branch}`) ?? -1 },
        ],
      }),
      freshSupplier(of),
    ).approximate

  test('is said where a stand-in lies in the same island, and left out elsewhere', () => {
    const ringing = { analysis: 'alternating', frequency: 25 }
    expect(reading(net, 'far', ringing)).toContain('bell')
    expect(reading(net, 'r', ringing)).toBeUndefined()
  })

  test('is said where a coil couples the islands, which no wire joins', () => {
    const coupled = compiled(
      'e: {kind: voltage-source, from: p, to: earth, direct: 10 V, alternating: 1 V}',
      'v: {kind: bell, from: q, to: earth, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}',
      'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
      't: {kind: induction-coil, windings: {first: {from: q, to: earth, resistance: 1 Ω, inductance: 10 mH}, second: {from: s, to: t, resistance: 1 Ω, inductance: 10 mH}}, coupling: 0.5}',
      'load: {kind: resistor, from: s, to: t, resistance: 1 kΩ}',
    )
    expect(reading(coupled, 'load', { analysis: 'alternating', frequency: 1000 })).toContain('bell')
  })

  test('of a receiver in a loop of its own counts what hangs on the line on the other side of the coil', () => {
    const receive = check({ target: 'sedge-converted' }, DEMO).figures.find(
      ({ id }) => id === 'speech.receive',
    )
    // the bell hangs on the line, across the coil; transmitter and cable are solved by their own laws
    expect(receive?.approximate).toBe('bell with its clapper held still')
  })
})

describe('a supplier', () => {
  test('solves a question once, whoever asks', () => {
    const supplier = freshSupplier(net)
    expect(supplier({ ...DIRECT })).toBe(supplier({ ...DIRECT }))
    expect(supplier({ ...DIRECT, lifted: [0] })).not.toBe(supplier(DIRECT))
    expect([...supplier(DIRECT).currents]).toEqual([...solve(net, DIRECT).currents])
  })
})

describe('a figure whose parts find no common point', () => {
  test('says so instead of a number, and takes no other figure with it', () => {
    const refused: Supplier = () => {
      throw new ProblemError([
        { code: 'no-convergence', severity: 'error', found: 'trial/v', expected: 'a point' },
      ])
    }
    expect(readFigure(net, plan({}), refused)).toMatchObject({ value: null, state: 'no-convergence' })
  })

  test('is refused for any other reason', () => {
    const refused: Supplier = () => {
      throw new ProblemError([{ code: 'contradiction', severity: 'error', found: 'two', expected: 'one' }])
    }
    expect(() => readFigure(net, plan({}), refused)).toThrow(ProblemError)
    const broken: Supplier = () => {
      throw new TypeError('ours')
    }
    expect(() => readFigure(net, plan({}), broken)).toThrow(TypeError)
  })
})
