import { check, type Figure, ProblemError } from 'ringproof'
import { compareFigures, compareVerdicts } from 'ringproof/opinion/compare-figures'
import { digitsOf } from 'ringproof/opinion/digits'
import { ElementEar } from 'ringproof/opinion/element-ear'
import { eliminate } from 'ringproof/opinion/eliminate'
import { LawEar } from 'ringproof/opinion/law-ear'
import { loadMathjs } from 'ringproof/opinion/mathjs'
import { pairsOf, sizeOf } from 'ringproof/opinion/pair'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const digits = digitsOf(await loadMathjs(), 30)
const pairs = pairsOf(digits)

const figure = (over: Partial<Figure> = {}): Figure => ({
  id: 'loop.current',
  subject: 'kiosk',
  condition: { line: 'idle', sets: {} },
  value: 0.04,
  unit: 'A',
  residual: 0,
  ...over,
})

const found = (act: () => unknown): string => {
  try {
    act()
  } catch (error) {
    if (error instanceof ProblemError) return `${error.problems[0]?.code}: ${error.problems[0]?.found}`
    throw error
  }
  return 'nothing'
}

describe('figures of both opinions', () => {
  test('are told by the worst of each id', () => {
    const ours = [figure(), figure({ subject: 'hall', value: 0.02 }), figure({ value: null, state: 'open' })]
    const second = [figure({ value: 0.041 }), figure({ subject: 'hall', value: 0.02 }), ours[2] ?? figure()]
    expect(compareFigures(ours, second)).toMatchObject([
      { id: 'loop.current', subject: 'kiosk', second: 0.041 },
    ])
  })

  test('are refused where one has a number and the other has none', () => {
    const open = figure({ value: null, state: 'open' })
    expect(found(() => compareFigures([figure()], [open]))).toBe(
      'ours: loop.current of kiosk: 0.04 by the solver and open by the second opinion',
    )
    expect(found(() => compareFigures([open], []))).toContain('and nothing by the second opinion')
  })
})

test('a verdict that the second opinion does not share is refused', () => {
  const answer = check({ target: 'fescue' }, DEMO)
  const [first, ...rest] = answer.verdicts
  if (first?.state !== 'holds') throw new Error('the first check of a sound set holds')
  const { remark: _, ...same } = first
  const other = { ...answer, verdicts: [{ ...same, state: 'fails' as const, mend: 'nothing' }, ...rest] }
  expect(compareVerdicts(answer, answer).length).toBeGreaterThan(0)
  expect(found(() => compareVerdicts(answer, other))).toMatch(
    /^ours: .* that holds by the solver and fails by the second opinion$/,
  )
})

describe('elimination', () => {
  const row = (right: number, ...terms: readonly number[]) => ({
    terms: new Map(terms.map((value, k) => [k, digits.of(value)])),
    right: digits.of(right),
  })

  test('needs no pivot on the diagonal', () => {
    const solved = eliminate([row(3, 0, 1), row(5, 2, 1)], digits)
    expect(solved?.x.map((value) => value.toNumber())).toEqual([1, 3])
    expect(solved?.doubt).toBe(0)
  })

  test('has no answer for rows that say the same twice', () => {
    expect(eliminate([row(1, 1, 2), row(2, 2, 4)], digits)).toBeUndefined()
  })
})

describe('laws are heard', () => {
  test('as plain elements: series, beside, coupled, and open where there is no end of ohms', () => {
    const ear = new ElementEar(pairs, digits.of(10))
    ear.series(0, 3, 2, 5)
    ear.coupled(0, 1, 0.5, 2, 8)
    ear.series(1, Number.POSITIVE_INFINITY, 0)
    ear.beside(2, Number.POSITIVE_INFINITY, 0.1, 4)
    ear.beside(3, 2, 0)
    const sizes = [...ear.laws.values()].map(({ volts, amps, source }) => [volts, amps, source].map(sizeOf))
    // v − (3 + j20)·i − j20·i′ = 5; i = 0; j·v − i = −4; v − 2·i = 0
    expect(sizes).toEqual([
      [1, Math.hypot(3, 20), 5],
      [0, 1, 0],
      [1, 1, 4],
      [1, 2, 0],
    ])
    expect(sizeOf(ear.laws.get(0)?.others.get(1) ?? pairs.zero)).toBe(20)
    expect(ear.rounded).toBe(false)
    ear.series(0, 1, 0, 1, 1)
    expect(ear.rounded).toBe(true)
  })

  test('as doubles, couplings in whatever order they come', () => {
    const ear = new LawEar(pairs)
    ear.mutual(0, 1, 0, 7)
    ear.equation(0, 1, 2, 3)
    const law = ear.laws.get(0)
    expect([law?.volts, law?.amps, law?.others.get(1)].map((one) => sizeOf(one ?? pairs.zero))).toEqual([
      1,
      Math.hypot(2, 3),
      7,
    ])
  })

  test('with a tangent too flat to matter as the current that it carries', () => {
    const ear = new LawEar(pairs, () => 100)
    ear.admittance(0, 1e-18, 0, 2e-16)
    const law = ear.laws.get(0)
    expect(law?.volts.re.isZero()).toBe(true)
    expect(law?.source.re.toNumber()).toBe(-(2e-16 + 1e-18 * 100))
  })
})
