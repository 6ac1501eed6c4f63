/** The text of everything that decides what a book holds: equal texts, equal books. */
import type { Netlist } from '../netlist/netlist.ts'
import type { BenchTest } from './bench-test.ts'
import { canonicalText } from './canonical.ts'
import type { BookInputs } from './make-book.ts'

/** Counts up whenever the meaning or the order of what is kept changes. */
const FORMAT = 2

/** Where something is written in a sheet decides nothing. */
const WITHOUT: ReadonlySet<string> = new Set([
  'origin',
  'places',
  'file',
  'graph',
  'nodeIndex',
  'branchIndex',
])

/** What decides a book besides its network, faults and tests. */
export interface Premise {
  /** Version of the program, and of its very build where the host knows it: how tests score is code, not data. */
  readonly program: string
  /** The tables that faults and tests are made from: odds, limits, the instrument. */
  readonly tables: unknown
}

/** The canonical text; a host makes a short name of it. */
export function bookKey(inputs: BookInputs, premise: Premise): string {
  const { net, place, faults, tests, transmitterSpread, severity } = inputs
  const all = {
    FORMAT,
    ...premise,
    transmitterSpread,
    severity: severity ?? 'none',
    place,
    net: netText(net),
    faults,
    tests: tests.map(defined),
  }
  return canonicalText(all, WITHOUT)
}

/** A network without its indices, which follow from the rest. */
function netText(net: Netlist): unknown {
  const { name, nodes, branches, parts, places, line, rest } = net
  return {
    name,
    nodes,
    rest,
    branches: branches.map(({ id, from, to, form, ordinal, part }) => [id, from, to, form, ordinal, part.id]),
    parts: parts.map(({ law, ...part }) => ({ ...part, law: law.kind })),
    // by their names: a set stands at its place whatever file it came from
    placed: places,
    line,
  }
}

/** What a test says of itself; how it scores is the program's. */
function defined({ plans, error: _, score: __, ...test }: BenchTest): unknown {
  return { ...test, plans: plans.map(({ value: _, phasor: __, ...plan }) => plan) }
}
