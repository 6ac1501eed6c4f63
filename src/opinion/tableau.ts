/**
 * The sparse tableau: unknowns are the voltage of every node but earth and the current of every branch; rows are
 * Kirchhoff's current law at every node and the law of every branch as it stands. Nothing is eliminated by hand,
 * and no branch is ever a conductance between two nodes, as the solver has it.
 *
 * @source Hachtel, Brayton and Gustavson, The sparse tableau approach to network analysis and design (1971); MEMORY
 */
import { EARTH, type Netlist } from '../netlist/netlist.ts'
import type { Question } from '../solver/question.ts'
import type { Pair, Pairs } from './pair.ts'
import { isNil, minus, negative, plus, sizeOf, times } from './pair.ts'
import type { Shape } from './shape.ts'
import type { Wire } from './wires.ts'

/** One equation: the sum of its terms, by unknown, is `right`. */
export interface Row {
  readonly terms: ReadonlyMap<number, Pair>
  readonly right: Pair
}

/** The whole system; row k belongs to unknown k. */
export interface Tableau {
  readonly rows: readonly Row[]
  /** Unknown of each node's voltage; none for earth. */
  readonly voltageAt: ReadonlyMap<string, number>
  /** Unknown of the first wire's current; the others follow. */
  readonly firstCurrent: number
  /** A probe stands between two islands: nothing can flow in it. */
  readonly probeOpen: boolean
}

/** Writes the tableau of a question. */
export function tableauOf(
  net: Netlist,
  question: Question,
  wires: readonly Wire[],
  shape: Shape,
  pairs: Pairs,
): Tableau {
  const nodes = net.graph.nodes().filter((id) => id !== EARTH)
  const voltageAt = new Map(nodes.map((id, k) => [id, k]))
  const firstCurrent = nodes.length
  const terms = Array.from({ length: firstCurrent + wires.length }, () => new Map<number, Pair>())
  const right = terms.map(() => pairs.zero)
  const put = (row: number | undefined, column: number | undefined, value: Pair): void => {
    if (row === undefined || column === undefined || isNil(value)) return // earth has neither
    const own = terms[row]
    const before = own?.get(column)
    own?.set(column, before === undefined ? value : plus(before, value))
  }
  wires.forEach(({ from, to, law }, k) => {
    const row = firstCurrent + k
    put(voltageAt.get(from), row, pairs.one)
    put(voltageAt.get(to), row, negative(pairs.one))
    const loop = shape.loops.get(k)
    if (loop !== undefined) {
      // equal resistances would leave nothing round the loop
      for (const [wire, sense] of loop) put(row, firstCurrent + wire, pairs.of(sense))
      return
    }
    put(row, voltageAt.get(from), law.volts)
    put(row, voltageAt.get(to), negative(law.volts))
    put(row, row, negative(law.amps))
    const base = k - (net.branches[k]?.ordinal ?? 0)
    for (const [other, value] of law.others) put(row, firstCurrent + base + other, negative(value))
    right[row] = law.source
  })
  // 1 S to earth, which carries nothing: its voltage is 0
  for (const node of shape.gauges) put(voltageAt.get(node), voltageAt.get(node), pairs.one)
  const probeOpen = injectProbes(net, question, shape, pairs, (node, value) => {
    const row = voltageAt.get(node)
    if (row !== undefined) right[row] = plus(right[row] ?? pairs.zero, value)
  })
  const rows = terms.map((own, k) => scaled({ terms: own, right: right[k] ?? pairs.zero }, pairs))
  return { rows, voltageAt, firstCurrent, probeOpen }
}

function injectProbes(
  net: Netlist,
  { probes = [] }: Question,
  { island }: Shape,
  pairs: Pairs,
  inject: (node: string, value: Pair) => void,
): boolean {
  let open = false
  for (const { into, outOf, re, im = 0 } of probes) {
    const [p = '', q = ''] = [net.nodes[into], net.nodes[outOf]]
    if (island.get(p) !== island.get(q)) {
      open = true
      continue
    }
    inject(p, pairs.of(re, im))
    inject(q, negative(pairs.of(re, im)))
  }
  return open
}

/** The row times a power of ten that brings its largest coefficient near 1; no digit changes. */
function scaled({ terms, right }: Row, pairs: Pairs): Row {
  const largest = Math.max(0, ...[...terms.values()].map(sizeOf))
  if (largest === 0) return { terms, right }
  const factor = pairs.real(pairs.digits.ten(-Math.floor(Math.log10(largest))))
  return {
    terms: new Map([...terms].map(([column, value]) => [column, times(value, factor)])),
    right: times(right, factor),
  }
}

/** What a solution leaves of the right sides: b − A·x. */
export function remainderOf({ rows }: Pick<Tableau, 'rows'>, x: readonly Pair[]): Pair[] {
  return rows.map(({ terms, right }) => {
    let rest = right
    for (const [column, value] of terms) {
      const unknown = x[column]
      if (unknown !== undefined) rest = minus(rest, times(value, unknown))
    }
    return rest
  })
}
