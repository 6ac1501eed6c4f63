/** One question asked again: the whole of its voltages and currents as a different system. */
import { EARTH, type Netlist } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import type { Solution } from '../solver/solution.ts'
import { type Digits, digitsOf } from './digits.ts'
import { solveInDigits } from './in-digits.ts'
import { REMAINDER_DIGITS, type Solved, solveInDoubles } from './in-doubles.ts'
import { loadMathjs, type Mathjs } from './mathjs.ts'
import { type Pair, pairsOf } from './pair.ts'
import { type Shape, shapeOf } from './shape.ts'
import { type Tableau, tableauOf } from './tableau.ts'
import { type Wire, type Wiring, wiringOf } from './wires.ts'

/** What the second opinion came to. */
export interface Opinion {
  /** Voltage of each node against the reference of its island, by id. */
  readonly voltages: ReadonlyMap<string, Pair>
  /** Current of each branch; what the question adds stands last. */
  readonly currents: readonly Pair[]
  readonly wires: readonly Wire[]
  readonly shape: Shape
  /** What rounding in doubles alone could make of each voltage and current, V and A. */
  readonly noise: {
    readonly voltages: ReadonlyMap<string, number>
    readonly currents: readonly number[]
  }
  /** Unknowns of the tableau, complex ones counted once. */
  readonly unknowns: number
  /** Parts that entered with double values, and parts whose law is stated about our own point. */
  readonly rounded: readonly string[]
  readonly bent: readonly string[]
  /** The same in the form in which figures are read. */
  readonly solution: Solution
}

/** Gives a second opinion of a solution. @throws ProblemError `ours` where it finds no single answer */
export type Adviser = (net: Netlist, ours: Solution) => Opinion

/** Unknowns that a second opinion in many digits may have. */
export const MOST_UNKNOWNS = 200

/** Digits kept beyond those that are asked for, at first and after each doubt. */
const GUARD = 30
const MORE_GUARD = 60
const ATTEMPTS = 3

/** Loads what a second opinion needs: in doubles, or in so many digits. */
export async function loadAdviser(digits?: number): Promise<Adviser> {
  const mathjs = await loadMathjs()
  if (digits !== undefined) return (net, ours) => inDigits(mathjs, net, ours, digits)
  const kept = digitsOf(mathjs, REMAINDER_DIGITS)
  const reckoner = mathjs.doubles()
  return (net, ours) => {
    const pairs = pairsOf(kept)
    const stated = state(net, ours, kept)
    const solved = solveInDoubles(reckoner, stated.tableau, pairs, isComplex(ours))
    return solved === undefined ? refuseSingular(net) : opinionFrom(net, ours, stated, solved, kept)
  }
}

interface Stated {
  readonly wiring: Wiring
  readonly shape: Shape
  readonly tableau: Tableau
}

function state(net: Netlist, ours: Solution, digits: Digits): Stated {
  const pairs = pairsOf(digits)
  const wiring = wiringOf(net, ours.question, ours, pairs)
  const shape = shapeOf(net, wiring.wires)
  return { wiring, shape, tableau: tableauOf(net, ours.question, wiring.wires, shape, pairs) }
}

function isComplex({ question }: Solution): boolean {
  return question.analysis === 'alternating'
}

function inDigits(mathjs: Mathjs, net: Netlist, ours: Solution, asked: number): Opinion {
  refuseTooMany(net, ours, asked)
  for (let attempt = 0; ; attempt += 1) {
    const digits = digitsOf(mathjs, asked + GUARD + attempt * MORE_GUARD)
    const stated = state(net, ours, digits)
    const solved = solveInDigits(stated.tableau, digits, isComplex(ours))
    if (solved === undefined) return refuseSingular(net)
    if (solved.doubt <= 10 ** -(asked + 1)) return opinionFrom(net, ours, stated, solved, digits)
    if (attempt + 1 < ATTEMPTS) continue
    refuse({
      code: 'ours',
      found: `a second opinion of ${net.name} whose digits are in doubt`,
      expected: `${asked} digits that stand`,
      mend: 'ask for fewer digits, and please report it with the sheets',
    })
  }
}

/** The same doubt for every question of a network: nodes, branches, and what the question adds. */
function refuseTooMany(net: Netlist, { question }: Solution, asked: number): void {
  const links = (question.added?.length ?? 0) + (question.bridges?.length ?? 0)
  const unknowns = net.graph.order - 1 + net.graph.size + links
  if (unknowns <= MOST_UNKNOWNS) return
  refuse({
    code: 'request-wrong',
    found: `${unknowns} unknowns in ${net.name}, a voltage for each node but earth and a current for each branch, complex ones counted once`,
    expected: `at most ${MOST_UNKNOWNS} for a second opinion of ${asked} digits`,
    mend: 'leave `--digits` out, or ask about one set',
  })
}

function refuseSingular(net: Netlist): never {
  refuse({
    code: 'ours',
    found: `no single answer of ${net.name} by the second opinion, where the solver found one`,
    expected: 'the same answer from both',
    mend: 'this is a mistake of the program: please report it with the command and its sheets',
  })
}

function opinionFrom(
  net: Netlist,
  ours: Solution,
  { wiring, shape, tableau }: Stated,
  { x, rounding }: Solved,
  digits: Digits,
): Opinion {
  const zero = pairsOf(digits).zero
  const voltages = new Map(
    net.graph.nodes().map((id) => {
      const k = id === EARTH ? undefined : tableau.voltageAt.get(id)
      return [id, (k === undefined ? undefined : x[k]) ?? zero]
    }),
  )
  const currents = x.slice(tableau.firstCurrent)
  const opinion = { voltages, currents, wires: wiring.wires, shape, unknowns: x.length }
  const { rounded, bent } = wiring
  const noise = {
    voltages: new Map([...tableau.voltageAt].map(([id, k]) => [id, rounding[k] ?? 0])),
    currents: rounding.slice(tableau.firstCurrent),
  }
  return {
    ...opinion,
    noise,
    rounded,
    bent,
    solution: asSolution(net, ours, opinion, tableau.probeOpen, digits),
  }
}

/** The opinion as a solution: voltages as value and tail, so that differences keep their digits. */
function asSolution(
  net: Netlist,
  ours: Solution,
  { voltages, currents, shape }: Pick<Opinion, 'voltages' | 'currents' | 'shape'>,
  probeOpen: boolean,
  digits: Digits,
): Solution {
  const values = new Float64Array(2 * net.nodes.length)
  const tails = new Float64Array(2 * net.nodes.length)
  const island = new Int32Array(net.nodes.length)
  const firstOf = new Map<number, number>()
  net.nodes.forEach((id, node) => {
    const own = voltages.get(id)
    if (own === undefined) throw new TypeError(`${id} has no voltage`)
    for (const [part, big] of [own.re, own.im].entries()) {
      const value = big.toNumber()
      values[2 * node + part] = value
      tails[2 * node + part] = big.minus(digits.exactly(value)).toNumber()
    }
    const among = shape.island.get(id) ?? -1
    if (!firstOf.has(among)) firstOf.set(among, node)
    island[node] = firstOf.get(among) ?? node
  })
  const amperes = Float64Array.from(currents.flatMap(({ re, im }) => [re.toNumber(), im.toNumber()]))
  return { ...ours, voltages: values, voltageTails: tails, currents: amperes, island, probeOpen }
}
