import { createDense } from 'ringproof/algebra/dense'
import { compileCircuit } from 'ringproof/netlist/compile'
import { readSheet } from 'ringproof/sheet/read'
import { solve } from 'ringproof/solver/solve'
import {
  add,
  decimal,
  divide,
  type Fraction,
  isNil,
  NIL,
  negative,
  ONE,
  solveExactly,
  subtract,
} from './fractions.ts'
import { shelfOf } from './sheets.ts'

/** A random network of resistors from 1 mΩ to 1 GΩ behind one source, by a generator of numbers from 0 to 1. */
export interface WideCircuit {
  readonly nodes: number
  readonly resistors: readonly { readonly from: number; readonly to: number; readonly ohms: string }[]
}

/** Volts from node 1 to earth. */
const SOURCE = 10

/** Draws one: a tree of resistors over 6 to 14 nodes, and about as many again anywhere. */
export function drawWide(random: () => number): WideCircuit {
  const below = (most: number): number => Math.floor(random() * most)
  const nodes = 6 + below(9)
  const ohms = (): string => {
    const decade = below(12) - 3 // 1 mΩ … 0.999 GΩ
    return `${100 + below(900)}e${decade - 2}`
  }
  const tree = Array.from({ length: nodes - 2 }, (_, k) => ({ from: k + 2, to: below(k + 2), ohms: ohms() }))
  const rest = Array.from({ length: nodes }, () => {
    const from = below(nodes)
    return { from, to: (from + 1 + below(nodes - 1)) % nodes, ohms: ohms() }
  })
  return { nodes, resistors: [...tree, ...rest] }
}

/** The sheet of it: `n0` is earth. */
function sheetOf({ resistors }: WideCircuit): string {
  const node = (k: number): string => (k === 0 ? 'earth' : `n${k}`)
  const lines = resistors.map(
    ({ from, to, ohms }, k) =>
      `  r${k}: {kind: resistor, from: ${node(from)}, to: ${node(to)}, resistance: ${ohms} Ω}`,
  )
  const source = `  e: {kind: voltage-source, from: n1, to: earth, direct: ${SOURCE} V}`
  return `ringproof: 1\nsheet: circuit\nname: wide\nparts:\n${source}\n${lines.join('\n')}\n`
}

/** Node voltages, exactly: nodal equations with node 1 held. */
function exactVoltages({ nodes, resistors }: WideCircuit): readonly Fraction[] {
  const rows = Array.from({ length: nodes - 2 }, () => Array.from({ length: nodes - 1 }, () => NIL))
  const put = (row: number, node: number, value: Fraction): void => {
    const line = rows[row - 2]
    if (line === undefined || node === 0) return
    const at = node === 1 ? nodes - 2 : node - 2
    const term = node === 1 ? negative(times(value, SOURCE)) : value
    line[at] = add(line[at] ?? NIL, term)
  }
  for (const { from, to, ohms } of resistors) {
    const conductance = divide(ONE, decimal(ohms))
    for (const [p, q] of [
      [from, to],
      [to, from],
    ] as const) {
      put(p, p, conductance)
      put(p, q, negative(conductance))
    }
  }
  return [NIL, decimal(String(SOURCE)), ...solveExactly(rows)]
}

function times(value: Fraction, by: number): Fraction {
  return divide(value, divide(ONE, decimal(String(by))))
}

/** |x − exact| / |exact|. */
function apart(x: number, exact: Fraction): number {
  const { numerator, denominator } = divide(subtract(decimal(x.toExponential(20)), exact), exact)
  const size = numerator < 0n ? -numerator : numerator
  return Number((size * 10n ** 24n) / denominator) / 1e24
}

/** The largest relative error of any voltage or current by each way of solving. */
export interface WideErrors {
  /** Every resistor a conductance, summed and factored in doubles. */
  readonly conductances: number
  /** Links, sources and resistances below 1 Ω as equations, not refined. */
  readonly equations: number
  /** As answers are computed: refined part by part. */
  readonly refined: number
}

/** Solves one circuit in all ways and compares every voltage and every current with exact fractions. */
export function wideErrors(circuit: WideCircuit): WideErrors {
  const exact = exactVoltages(circuit)
  const { sheet, problems } = readSheet({ file: 'wide.yaml', text: sheetOf(circuit) }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  const net = compileCircuit(sheet)
  const question = { analysis: 'direct' as const, condition: { line: 'idle' as const, sets: {} } }
  const ours = (plain: boolean): number => {
    const solution = solve(net, question, plain ? { plain: true } : {})
    const voltage = (k: number): number =>
      solution.voltages[2 * (net.nodeIndex.get(k === 0 ? 'earth' : `wide/n${k}`) ?? 0)] ?? 0
    const current = (k: number): number =>
      solution.currents[2 * (net.branchIndex.get(`wide/r${k}`) ?? 0)] ?? 0
    return worst(circuit, exact, voltage, current)
  }
  const stamped = byConductances(circuit)
  const through = (k: number): number => {
    const { from, to, ohms } = circuit.resistors[k] ?? { from: 0, to: 0, ohms: '1' }
    return ((stamped[from] ?? 0) - (stamped[to] ?? 0)) / Number(ohms)
  }
  return {
    conductances: worst(circuit, exact, (k) => stamped[k] ?? 0, through),
    equations: ours(true),
    refined: ours(false),
  }
}

function worst(
  { resistors }: WideCircuit,
  exact: readonly Fraction[],
  voltage: (node: number) => number,
  current: (resistor: number) => number,
): number {
  let most = 0
  exact.forEach((v, k) => {
    if (!isNil(v)) most = Math.max(most, apart(voltage(k), v))
  })
  resistors.forEach(({ from, to, ohms }, k) => {
    const i = divide(subtract(exact[from] ?? NIL, exact[to] ?? NIL), decimal(ohms))
    if (!isNil(i)) most = Math.max(most, apart(current(k), i))
  })
  return most
}

/** Node voltages from a matrix of summed conductances, node 1 held by its own row. */
function byConductances({ nodes, resistors }: WideCircuit): readonly number[] {
  const entries: { row: number; column: number; value: number }[] = [{ row: 0, column: 0, value: 1 }]
  for (const { from, to, ohms } of resistors) {
    const y = 1 / Number(ohms)
    for (const [row, column, value] of [
      [from, from, y],
      [to, to, y],
      [from, to, -y],
      [to, from, -y],
    ] as const) {
      if (row > 1 && column > 0) entries.push({ row: row - 1, column: column - 1, value })
    }
  }
  const system = createDense(
    { order: nodes - 1, rows: entries.map(({ row }) => row), columns: entries.map(({ column }) => column) },
    false,
  )
  system.clear()
  entries.forEach(({ value }, k) => {
    system.add(system.slots[k] ?? 0, value, 0)
  })
  system.factor()
  const x = new Float64Array(nodes - 1)
  x[0] = SOURCE
  system.solve(x, 1)
  return [0, ...x]
}
