import { follow, ProblemError } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, DEMO } from '../../support/bench.ts'

type Request = Parameters<typeof follow>[0]
const nodesOf = (request: Request) => follow(request, DEMO).steps.map(({ node }) => node)

function codeOf(request: Request): { code: string | undefined; mend: string | undefined } {
  try {
    follow(request, DEMO)
  } catch (error) {
    if (error instanceof ProblemError) return { code: error.problems[0]?.code, mend: error.problems[0]?.mend }
    throw error
  }
  throw new Error('nothing is refused')
}

describe('the loop of a fescue off-hook', () => {
  const { steps, analysis, frequency, approximate } = follow({ target: 'fescue' }, DEMO)

  test('runs from the a wire at the exchange through the set to its b wire', () => {
    expect(steps.map(({ node }) => node)).toEqual([
      'exchange/a',
      'bench/a',
      ...['plug.a', 'A1', 'A2', 'A3', 'A4', 'A5', 'handset.t1', 'handset.t2', 'B4', 'B5', 'plug.b'].map(
        (node) => `fescue/${node}`,
      ),
      'bench/b',
      'exchange/b',
    ])
    expect({ analysis, frequency }).toEqual({ analysis: 'direct', frequency: null })
  })

  test('carries one current all along, as Kirchhoff says, but for what leaks', () => {
    const currents = steps.slice(0, -1).map(({ current = Number.NaN }) => current)
    const [first = 0] = currents
    expect(first).toBeGreaterThan(0.01)
    // the clamp of the unit, (V/60 V)⁴ A, takes a little of it past the rest
    for (const current of currents) expect(Math.abs(current - first)).toBeLessThan(1e-3)
  })

  test('names the branch, its sort and its line in the sheet, and none behind the last node', () => {
    const hook = steps.find(({ node }) => node === 'fescue/A1')
    expect(hook).toMatchObject({ branch: 'fescue/hook', sort: 'contact' })
    expect(hook?.origin).toMatch(/fescue\.yaml:\d+$/)
    expect(steps.at(-1)).toEqual({ node: 'exchange/b' })
    expect(approximate).toBeUndefined() // every part of the loop is solved by its own law
  })
})

describe('a current that is followed', () => {
  test('goes through the master socket’s capacitor and the bell while the line rings, at its frequency', () => {
    const answer = follow({ target: 'fescue', condition: 'on-hook/ringing' }, DEMO)
    expect(answer.frequency).toBe(25)
    const nodes = answer.steps.map(({ node }) => node)
    expect(nodes).toEqual(expect.arrayContaining(['bench/ringing', 'fescue/C1', 'fescue/C2', 'fescue/C3']))
    expect(answer.steps.map(({ branch }) => branch)).toEqual(
      expect.arrayContaining(['bench/capacitor', 'fescue/bell-resistor', 'fescue/bell']),
    )
    expect(nodes).not.toContain('fescue/A2')
  })

  test('runs between two ends that are named in full or without their place', () => {
    const full = nodesOf({ target: 'fescue', from: 'fescue/A1', to: 'fescue/B5' })
    expect(full).toEqual(nodesOf({ target: 'fescue', from: 'A1', to: 'B5' }))
    expect([full[0], full.at(-1)]).toEqual(['fescue/A1', 'fescue/B5'])
  })

  test('that does not flow stops where it starts', () => {
    expect(nodesOf({ target: 'fescue', condition: 'off-hook', from: 'fescue/C4', to: 'fescue/B5' })).toEqual([
      'fescue/C4',
    ])
  })

  test('in a circuit runs along its first source, at the circuit’s own frequency', () => {
    const circuit = `ringproof: 1
sheet: circuit
name: ladder
frequency: 50 Hz
parts:
  e: {kind: voltage-source, from: p, to: earth, direct: 0 V, alternating: 10 V}
  r1: {kind: resistor, from: p, to: q, resistance: 1 Ω}
  r2: {kind: resistor, from: q, to: earth, resistance: 1 Ω}
  r3: {kind: resistor, from: q, to: earth, resistance: 9 Ω}
`
    const answer = follow({ target: 'ladder' }, besides(circuit))
    expect(answer.frequency).toBe(50)
    expect(answer).not.toHaveProperty('approximate')
    expect(answer.steps.map(({ branch }) => branch)).toEqual(['ladder/r1', 'ladder/r2', undefined])
    // by hand: 1 Ω in series with 0.9 Ω; nine tenths of the current in r2
    const [one = 0, two = 0] = answer.steps.map(({ current }) => current)
    expect(Math.abs(one - 10 / 1.9)).toBeLessThan(1e-9)
    expect(Math.abs(two - 9 / 1.9)).toBeLessThan(1e-9)
  })
})

describe('a request to follow', () => {
  test('an unknown node is refused with the nearest name', () => {
    const { code, mend } = codeOf({ target: 'fescue', from: 'fescue/A11' })
    expect(code).toBe('request-wrong')
    expect(mend).toMatch(/fescue\/A1/)
  })

  test.each([
    ['one end twice', { target: 'fescue', from: 'A1', to: 'A1' }],
    ['an unknown condition', { target: 'fescue', condition: 'off-hok' }],
    ['the frequency 0', { target: 'fescue', frequency: 0 }],
    ['a frequency that is no number', { target: 'fescue', frequency: Number.NaN }],
    ['a strange node', { target: 'fescue', to: 'qqqqqqqqqqqqqqqq' }],
  ] as const)('with %s is refused', (_says, request) => {
    expect(codeOf(request).code).toBe('request-wrong')
  })

  test('along no source at all is refused', () => {
    const text = {
      file: 'bare.yaml',
      text: 'ringproof: 1\nsheet: circuit\nname: bare\nparts:\n  r: {kind: resistor, from: p, to: earth, resistance: 1 Ω}\n',
    }
    expect(codeOf({ target: '', text }).code).toBe('request-wrong')
  })
})

describe('where a current divides', () => {
  const { steps } = follow({ target: 'goods-office', condition: 'clerk=off-hook,porter-1=off-hook' }, DEMO)

  test('the rest is named with its size, and the two make up what came', () => {
    const divides = steps.find(({ node }) => node === 'office/a')
    expect(divides?.rest?.map(({ branch }) => branch)).toEqual(['bay-1/cable.a'])
    const before = steps.find(({ node }) => node === 'exchange/a')?.current ?? 0
    // Kirchhoff, but for what leaks
    expect((divides?.current ?? 0) + (divides?.rest?.[0]?.current ?? 0)).toBeCloseTo(before, 5)
  })

  test('nothing is said where the current goes on whole', () => {
    expect(steps.find(({ node }) => node === 'clerk/N2')).not.toHaveProperty('rest')
    for (const step of follow({ target: 'fescue' }, DEMO).steps) expect(step).not.toHaveProperty('rest')
  })
})
