import { type SolveAnswer, solveCircuit } from 'ringproof'
import { type Branch, branchesOf } from './branches.ts'
import type { Circuit } from './circuit.ts'
import { circuitSheet } from './circuit-sheet.ts'
import { assertClose, type Tolerance } from './close.ts'
import { add, type Complex, complex, conjugate, modulus, multiply, subtract, type Value } from './complex.ts'

/** 1e-9 of the figure itself, the accuracy that the design promises, plus 1e-12 of the largest figure of its sort. */
export const LAW = 1e-9
export const FLOOR = 1e-12
/** Volts, amperes or volt-amperes below which a dead circuit's rounding of nothing is nothing. */
export const NOTHING = 1e-30

/** Solves a circuit through its sheet text, at a frequency in Hz or at direct current (null). */
export function solve(circuit: Circuit, frequency: number | null): SolveAnswer {
  return solveCircuit(circuitSheet(circuit), frequency === null ? {} : { frequency })
}

/** The voltage of a node against earth; throws when the answer has no number for it. */
export function voltageAt(circuit: Circuit, answer: SolveAnswer, node: string): Complex {
  return known(
    answer.voltages[node === 'earth' ? 'earth' : `${circuit.name}/${node}`],
    `voltage of ${node}`,
    node,
  )
}

/** The current of a branch by its id; throws when the answer has no number for it. */
export function currentIn(answer: SolveAnswer, id: string): Complex {
  return known(answer.currents[id], `current in ${id}`)
}

function known(value: Value | null | undefined, what: string, node?: string): Complex {
  if (value === undefined && node === 'earth') return { re: 0, im: 0 }
  if (value === null || value === undefined) throw new Error(`the answer has no ${what}: ${value}`)
  return complex(value)
}

/** The tolerance for readings of one sort (all voltages, or all currents) of one answer. */
export function toleranceOf(readings: Readonly<Record<string, Value | null>>): Tolerance {
  const sizes = Object.values(readings).map((value) => (value === null ? 0 : modulus(complex(value))))
  return { relative: LAW, absolute: FLOOR * Math.max(...sizes) + NOTHING }
}

/** Both answers give the same numbers, to rounding, under a translation of ids. */
export function assertSameNumbers(
  actual: SolveAnswer,
  expected: SolveAnswer,
  translate: (id: string) => string = (id) => id,
): void {
  for (const sort of ['voltages', 'currents'] as const) {
    const tolerance = toleranceOf(expected[sort])
    for (const [id, value] of Object.entries(expected[sort])) {
      const found = actual[sort][translate(id)]
      if (value === null) {
        if (found !== null)
          throw new Error(`${id}: found ${JSON.stringify(found)} where nothing is determined`)
      } else assertClose(found, value, tolerance, `${sort} of ${id}`)
    }
  }
}

/** Kirchhoff's current law at every node and each part's own law, with voltages and currents of one answer. */
export function assertKirchhoff(circuit: Circuit, answer: SolveAnswer, frequency: number | null): void {
  const branches = branchesOf(circuit, frequency)
  const volts = toleranceOf(answer.voltages).absolute ?? 0
  const amps = toleranceOf(answer.currents).absolute ?? 0
  const sums = new Map<string, { sum: Complex; size: number }>()
  for (const branch of branches) {
    const current = currentIn(answer, branch.id)
    for (const [node, flow] of [
      [branch.from, current],
      [branch.to, subtract({ re: 0, im: 0 }, current)],
    ] as const) {
      const { sum, size } = sums.get(node) ?? { sum: { re: 0, im: 0 }, size: 0 }
      sums.set(node, { sum: add(sum, flow), size: size + modulus(flow) })
    }
    assertBranchLaw(circuit, branches, branch, answer, volts, amps)
  }
  for (const [node, { sum, size }] of sums) {
    assertClose(sum, 0, { relative: 0, absolute: LAW * size + amps }, `sum of currents out of ${node}`)
  }
}

function assertBranchLaw(
  circuit: Circuit,
  branches: readonly Branch[],
  branch: Branch,
  answer: SolveAnswer,
  volts: number,
  amps: number,
): void {
  const fall = subtract(voltageAt(circuit, answer, branch.from), voltageAt(circuit, answer, branch.to))
  const terms = [multiply(branch.volts, fall)]
  let floor = modulus(branch.volts) * volts
  for (const [at, coefficient] of branch.amps) {
    terms.push(multiply(coefficient, currentIn(answer, branches[at]?.id ?? '')))
    floor += modulus(coefficient) * amps
  }
  const sum = terms.reduce(add)
  const size = terms.reduce((total, term) => total + modulus(term), 0)
  assertClose(sum, branch.source, { relative: 0, absolute: LAW * size + floor }, `law of ${branch.id}`)
}

/**
 * What the sources deliver, the other parts take, real and reactive: Tellegen's theorem with the
 * power of each part taken from its own law, so that a wrong law shows as well as a wrong sum.
 */
export function assertPowerBalance(circuit: Circuit, answer: SolveAnswer, frequency: number | null): void {
  const branches = branchesOf(circuit, frequency)
  const powers = branches.map((branch) => {
    const fall = subtract(voltageAt(circuit, answer, branch.from), voltageAt(circuit, answer, branch.to))
    const current = currentIn(answer, branch.id)
    return multiply(
      lawfulVoltage(branch, branches, answer, fall),
      conjugate(lawfulCurrent(branch, fall, current)),
    )
  })
  const size = powers.reduce((total, power) => total + modulus(power), 0)
  assertClose(powers.reduce(add), 0, { relative: 0, absolute: LAW * size + NOTHING }, 'sum of complex powers')
}

/** The voltage that the branch law makes of the currents, where the law can be read that way. */
function lawfulVoltage(
  branch: Branch,
  branches: readonly Branch[],
  answer: SolveAnswer,
  fall: Complex,
): Complex {
  if (branch.volts.re !== 1 || branch.volts.im !== 0) return fall
  const drop = branch.amps.map(([at, z]) => multiply(z, currentIn(answer, branches[at]?.id ?? '')))
  return drop.reduce(subtract, branch.source)
}

/** The current that the branch law makes of the voltage, where the law can be read that way. */
function lawfulCurrent(branch: Branch, fall: Complex, current: Complex): Complex {
  if (branch.amps.length !== 1 || branch.amps[0]?.[1].re !== 1) return current
  return subtract(branch.source, multiply(branch.volts, fall))
}

/** The transfer impedance: voltage from `plus` to `minus` per ampere driven in at `into` and out at `outOf`. */
export function transferImpedance(
  circuit: Circuit,
  frequency: number | null,
  drive: { readonly into: string; readonly outOf: string },
  read: { readonly plus: string; readonly minus: string },
): Complex {
  const ampere = { text: '1 A', value: 1 }
  const probe = {
    kind: 'current-source' as const,
    name: 'probe',
    from: drive.outOf,
    to: drive.into,
    direct: ampere,
    alternating: { size: ampere, degrees: 0 },
  }
  const answer = solve({ ...circuit, parts: [...circuit.parts, probe] }, frequency)
  return subtract(voltageAt(circuit, answer, read.plus), voltageAt(circuit, answer, read.minus))
}
