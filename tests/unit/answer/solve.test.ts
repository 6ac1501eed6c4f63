import { ProblemError, type SolveAnswer, solve, solveCircuit } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, DEMO, rewireText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'

const DIVIDER = `ringproof: 1
sheet: circuit
name: divider
source: invented
grade: MEMORY
parts:
  e: {kind: voltage-source, from: p, to: earth, direct: 12 V, alternating: 10 V}
  r1: {kind: resistor, from: p, to: q, resistance: 1 kΩ}
  r2: {kind: resistor, from: q, to: earth, resistance: 2 kΩ}
  s: {kind: contact, from: q, to: earth, closed when: off-hook}
  far: {kind: resistor, from: x, to: y, resistance: 1 Ω}
`
const TUNED = DIVIDER.replace('name: divider', 'name: tuned\nfrequency: 1 kHz')

function codeOf(ask: () => unknown): string | undefined {
  try {
    ask()
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0]?.code
    throw error
  }
  return undefined
}

describe('a circuit', () => {
  test('is solved for every node and branch, by hand 8 V and 4 mA', () => {
    const answer = solveCircuit(DIVIDER)
    expect(answer).toMatchObject({
      ringproof: 'solve/1',
      outcome: 'answered',
      analysis: 'direct',
      frequency: null,
      units: { voltages: 'V', currents: 'A' },
      source: 'invented',
      grade: 'MEMORY',
      shared: [],
    })
    // the open contact leaks through 1 GΩ
    assertClose(answer.voltages['divider/q'], 8, { relative: 1e-5 }, 'q')
    assertClose(answer.currents['divider/r1'], 4e-3, { relative: 1e-5 }, 'r1')
    expect(answer).not.toHaveProperty('approximate')
  })

  test('has no voltages where an island floats, and says why', () => {
    const { voltages, states, islands } = solveCircuit(DIVIDER)
    expect(voltages['divider/x']).toBeNull()
    expect(states).toEqual({ 'divider/x': 'undetermined', 'divider/y': 'undetermined' })
    expect(islands).toEqual([
      ['earth', 'divider/p', 'divider/q'],
      ['divider/x', 'divider/y'],
    ])
  })

  test('is solved in a condition, which closes its contacts', () => {
    const { voltages } = solveCircuit(DIVIDER, { condition: 'off-hook' })
    expect(Math.abs(voltages['divider/q'] as number)).toBeLessThan(1e-3)
  })

  test('is solved at its own frequency by name, or at another that is asked for', () => {
    const shelf = besides(TUNED)
    expect(solve({ target: 'tuned' }, shelf).frequency).toBe(1000)
    const other = solve({ target: 'circuit/tuned', frequency: 50, condition: 'on-hook' }, shelf)
    expect(other.frequency).toBe(50)
    expect(other.request).toEqual({ solve: 'tuned', frequency: 50, condition: 'on-hook' })
    assertClose(other.voltages['tuned/q'] as never, { re: 20 / 3, im: 0 }, { relative: 1e-5 }, 'q')
  })

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e10])(
    'is refused at the frequency %d',
    (frequency) => {
      expect(codeOf(() => solveCircuit(DIVIDER, { frequency }))).toBe('request-wrong')
    },
  )

  test('is refused in an unknown condition', () => {
    expect(codeOf(() => solveCircuit(DIVIDER, { condition: 'hanging' }))).toBe('request-wrong')
  })

  test('that is none is refused with the problems of the sheet', () => {
    expect(
      codeOf(() => solveCircuit('ringproof: 1\nsheet: circuit\nname: x\nparts: {r: {kind: resistr}}\n')),
    ).toBe('part-kind-unknown')
  })

  test('is taken as a text', () => {
    const answer = solve({ target: '', text: { file: 'divider.yaml', text: DIVIDER } }, DEMO)
    expect(answer.voltages).toEqual(solveCircuit(DIVIDER).voltages)
  })
})

describe('a set where it stands', () => {
  const sum = ({ currents }: SolveAnswer, ...branches: readonly string[]) =>
    branches.reduce((total, branch) => total + (currents[branch] as number), 0)

  test('is solved with its line, and Kirchhoff holds at its terminals', () => {
    const answer = solve({ target: 'fescue', condition: 'off-hook' }, DEMO)
    expect(answer.condition).toMatchObject({ hook: 'off-hook', dial: 'rest', key: 'up', line: 'idle' })
    expect(answer.approximate).toBeUndefined()
    // into A4 through the unit, out of it through winding a
    const into = sum(answer, 'fescue/regulator.series')
    expect(Math.abs(into - sum(answer, 'fescue/coil.a', 'fescue/regulator.clamp'))).toBeLessThan(1e-9)
    expect(Math.abs(into)).toBeGreaterThan(0.01)
  })

  test('is on-hook where no condition is given, and draws next to nothing', () => {
    const { currents } = solve({ target: 'fescue' }, DEMO)
    expect(Math.abs(currents['fescue/coil.a'] as number)).toBeLessThan(1e-6)
  })

  test('is solved after a rewire, also one that is a text', () => {
    const named = solve({ target: 'fescue-unit-left-out', condition: 'off-hook' }, DEMO)
    const text = rewireText('fescue', 'pull unit: regulator')
    const written = solve({ target: '', text, condition: 'off-hook' }, DEMO)
    expect(named.currents).toEqual(written.currents)
    expect(named.currents).not.toHaveProperty('fescue/regulator.series')
  })

  test('is refused at a frequency or in a condition that is none', () => {
    expect(codeOf(() => solve({ target: 'fescue', frequency: 0 }, DEMO))).toBe('request-wrong')
    expect(codeOf(() => solve({ target: 'fescue', condition: 'off-hook/on-hook' }, DEMO))).toBe(
      'request-wrong',
    )
    expect(codeOf(() => solve({ target: 'fescu' }, DEMO))).toBe('name-unknown')
    expect(codeOf(() => solve({ target: 'depot-exchange' }, DEMO))).toBe('request-wrong')
  })
})
