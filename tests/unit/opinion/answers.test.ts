import { ProblemError } from 'ringproof'
import type { Supply } from 'ringproof/answer/supply'
import { freshSupplier } from 'ringproof/figures/read'
import type { Netlist } from 'ringproof/netlist/netlist'
import { checkTwice, figuresTwice, solveTwice } from 'ringproof/opinion/answers'
import { AGREED } from 'ringproof/opinion/compare'
import type { Solution } from 'ringproof/solver/solution'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { shelfOf } from '../../support/sheets.ts'

/** A solver that spoils its solutions. */
const spoilt =
  (spoil: (solution: Solution, net: Netlist) => Partial<Solution>): Supply =>
  (net) => {
    const sound = freshSupplier(net)
    return (question) => {
      const solution = sound(question)
      return { ...solution, ...spoil(solution, net) }
    }
  }

/** The same values with one of them a share larger. */
function raised(values: Float64Array, index: number | undefined, share: number): Float64Array {
  const spoilt = Float64Array.from(values)
  const k = 2 * (index ?? Number.NaN)
  spoilt[k] = (values[k] ?? 0) * (1 + share)
  return spoilt
}

const problemsOf = async (answer: Promise<unknown>) => {
  const error = await answer.then(
    () => undefined,
    (one: unknown) => one,
  )
  if (!(error instanceof ProblemError)) throw new Error(`no problem but ${String(error)}`)
  return error.problems
}

const TALKING = { target: 'fescue', condition: 'off-hook' }

describe('a second opinion of a solved set', () => {
  test('agrees, and says how many were compared and what it took from the solver', async () => {
    const answer = await solveTwice(TALKING, DEMO)
    const opinion = answer['second opinion']
    expect(opinion).toMatchObject({ digits: null, questions: 1 })
    expect(opinion?.compared).toBe(Object.keys(answer.voltages).length + Object.keys(answer.currents).length)
    // the tableau counts every node but earth, which is among the voltages
    expect(opinion?.unknowns).toBe((opinion?.compared ?? 0) - 1)
    expect(opinion?.largest?.relative).toBeLessThanOrEqual(AGREED)
    expect(opinion).not.toHaveProperty('voltages')
  })

  test('catches a current that is a millionth wrong, and names its branch', async () => {
    const supply = spoilt(({ currents }, net) => ({
      currents: raised(currents, net.branchIndex.get('fescue/transmitter'), 1e-6),
    }))
    const [problem] = await problemsOf(solveTwice(TALKING, DEMO, { supply }))
    expect(problem).toMatchObject({ code: 'ours', severity: 'error' })
    expect(problem?.found).toMatch(/^the current of fescue\/transmitter .* A apart/)
  })

  test('catches a voltage that is a hundred-millionth wrong, and names its node', async () => {
    const supply = spoilt(({ voltages }, net) => ({
      voltages: raised(voltages, net.nodeIndex.get('exchange/b'), 1e-8),
    }))
    const [problem] = await problemsOf(solveTwice(TALKING, DEMO, { supply }))
    expect(problem?.found).toMatch(/^the voltage of exchange\/b .* V apart/)
  })

  test('lets rounding pass', async () => {
    const supply = spoilt(({ currents }, net) => ({
      currents: raised(currents, net.branchIndex.get('fescue/transmitter'), 1e-12),
    }))
    const answer = await solveTwice(TALKING, DEMO, { supply })
    expect(answer['second opinion']?.largest?.at).toBe('fescue/transmitter')
  })

  test('catches a number that is none', async () => {
    const supply = spoilt(({ voltages }, net) => ({
      voltages: raised(voltages, net.nodeIndex.get('exchange/b'), Number.NaN),
    }))
    const [problem] = await problemsOf(solveTwice(TALKING, DEMO, { supply }))
    expect(problem?.code).toBe('ours')
    expect(problem?.found).not.toMatch(/NaN|Infinity/)
  })

  test('catches islands that are joined otherwise', async () => {
    const supply = spoilt(({ island }, net) => ({
      island: island.map((own, node) => (node === net.nodeIndex.get('fescue/A1') ? node : own)),
    }))
    const [problem] = await problemsOf(solveTwice(TALKING, DEMO, { supply }))
    expect(problem?.found).toContain('joined otherwise')
  })

  test('catches a working point that is a thousandth off its law', async () => {
    const supply = spoilt(({ point }, net) => {
      if (point === undefined) throw new Error('nothing bends')
      const voltage = Float64Array.from(point.voltage)
      const at = net.branchIndex.get('fescue/regulator.clamp') ?? Number.NaN
      voltage[at] = (voltage[at] ?? 0) * 1.001
      return { point: { ...point, voltage } }
    })
    const [problem] = await problemsOf(solveTwice(TALKING, DEMO, { supply }))
    expect(problem?.code).toBe('ours')
  })

  test('catches a solution of another frequency', async () => {
    const supply: Supply = (net) => {
      const sound = freshSupplier(net)
      return (question) => ({ ...sound({ ...question, frequency: 1001 }), question })
    }
    const request = { ...TALKING, condition: 'off-hook/speech', frequency: 1000 }
    const [problem] = await problemsOf(solveTwice(request, DEMO, { supply }))
    expect(problem?.code).toBe('ours')
  })
})

describe('a second opinion in digits', () => {
  test('has a text of so many digits for each voltage and current, and names what enters as doubles', async () => {
    const answer = await solveTwice(TALKING, DEMO, { digits: 40 })
    const opinion = answer['second opinion']
    expect(Object.keys(opinion?.voltages ?? {})).toEqual(Object.keys(answer.voltages))
    expect(Object.keys(opinion?.currents ?? {})).toEqual(Object.keys(answer.currents))
    const text = opinion?.currents?.['fescue/transmitter']
    expect(String(text).replace(/^-?0\.0*|\./, '')).toMatch(/^\d{40}$/)
    expect(Number(text)).toBe(answer.currents['fescue/transmitter'])
    expect(opinion?.['as doubles']).toContain('fescue/transmitter')
    expect(opinion?.['about our point']).toContain('fescue/transmitter')
    expect(opinion?.['as doubles']).not.toContain('fescue/coil')
  })

  test('is refused above 200 unknowns, and says how they are counted', async () => {
    const lines = Array.from({ length: 101 }, (_, k) => {
      return `  r${k}: {kind: resistor, from: n${k}, to: ${k === 100 ? 'earth' : `n${k + 1}`}, resistance: 1 Ω}`
    })
    const text = (drop: number): string =>
      `ringproof: 1\nsheet: circuit\nname: net\nparts:\n${lines.slice(drop).join('\n')}\n  e: {kind: voltage-source, from: n${drop}, to: earth, direct: 1 V}\n`
    const of = (drop: number, digits?: number) =>
      solveTwice({ target: '', text: { file: 'net.yaml', text: text(drop) } }, shelfOf([]), {
        ...(digits === undefined ? {} : { digits }),
      })
    const [problem] = await problemsOf(of(0, 16))
    expect(problem).toMatchObject({ code: 'request-wrong', severity: 'error' })
    expect(problem?.found).toContain(
      '203 unknowns in net, a voltage for each node but earth and a current for each branch',
    )
    // 99 resistors: 99 nodes and 100 branches
    expect((await of(2, 16))['second opinion']?.unknowns).toBe(199)
    expect((await of(0))['second opinion']?.unknowns).toBe(203)
  })
})

describe('a second opinion of figures and checks', () => {
  test('asks every question behind the figures, and gives the worst of each id', async () => {
    const answer = await figuresTwice({ target: 'fescue' }, DEMO)
    const opinion = answer['second opinion']
    expect(opinion?.questions).toBeGreaterThan(3)
    const numbers = answer.figures.filter(({ value }) => value !== null)
    expect(opinion?.figures?.map(({ id }) => id).sort()).toEqual([
      ...new Set(numbers.map(({ id }) => id).sort()),
    ])
    for (const { relative } of opinion?.figures ?? []) expect(relative).toBeLessThanOrEqual(AGREED)
  })

  test('asks only what the figures wanted rest on', async () => {
    const answer = await figuresTwice({ target: 'fescue', only: 'ringing.current' }, DEMO, { digits: 20 })
    expect(answer.figures.map(({ id }) => id)).toEqual(['ringing.current'])
    expect(answer['second opinion']).toMatchObject({ questions: 1, digits: 20 })
  })

  test('asks what verdicts and their mends rest on', async () => {
    const answer = await checkTwice({ target: 'sedge-converted-as-fescue' }, DEMO)
    const opinion = answer['second opinion']
    expect(answer.outcome).toBe('fails')
    expect(opinion?.largest?.relative).toBeLessThanOrEqual(AGREED)
    const ids = opinion?.figures?.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['resistance.between', 'speech.receive']))
  })

  test('catches a check that rests on a wrong solution', async () => {
    const supply = spoilt(({ currents, question }, net) =>
      question.analysis === 'alternating'
        ? { currents: raised(currents, net.branchIndex.get('fescue/bell'), 1e-7) }
        : {},
    )
    const [problem] = await problemsOf(checkTwice({ target: 'fescue' }, DEMO, { supply }))
    expect(problem?.found).toContain('the current of fescue/bell')
  })
})

test('progress is told before mathjs is loaded and for every question', async () => {
  const told: string[] = []
  await solveTwice(TALKING, DEMO, { progress: (says) => told.push(says) })
  expect(told).toEqual(['loading mathjs', 'second opinion of question 1 of 1'])
})
