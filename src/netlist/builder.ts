/** Gathers nodes and parts in order and closes them into a netlist. */
import { MultiUndirectedGraph } from 'graphology'
import type { PartLaw, PartSpec } from '../parts/kind.ts'
import { type Place, refuse } from '../problem.ts'
import type { LineState, SetCondition } from './condition.ts'
import {
  type Branch,
  EARTH,
  type NetLine,
  type Netlist,
  type NetPart,
  type NetPlace,
  type Sort,
} from './netlist.ts'

/** What a part needs besides its law and spec. */
export interface Fitting {
  readonly place: string
  readonly name: string
  readonly sort: Sort
  readonly origin?: Place | undefined
  readonly during?: readonly LineState[]
  /** The id's head where it is not the place: sockets and the exchange. */
  readonly owner?: string
  /** From an end as the spec names it to a node id. */
  readonly node: (end: string) => string
}

/** The graph of nodes and branches; its edges are called by the ids of their branches. */
export function graphOf(nodes: readonly string[], branches: readonly Branch[]): Netlist['graph'] {
  const graph = new MultiUndirectedGraph<Record<string, never>, { branch: number }>()
  for (const id of nodes) graph.addNode(id)
  for (const { id, index, from, to } of branches)
    graph.addEdgeWithKey(id, nodes[from], nodes[to], { branch: index })
  return graph
}

/** A netlist in the making. */
export class NetlistBuilder {
  readonly #nodes: string[] = [EARTH]
  readonly #index = new Map<string, number>([[EARTH, 0]])
  readonly #parts: NetPart[] = []
  readonly #branches: Branch[] = []
  readonly #branchIndex = new Map<string, number>()
  readonly places: NetPlace[] = []
  line: NetLine | undefined
  readonly rest: Record<string, SetCondition> = {}

  /** Whether a node is there already. */
  has(id: string): boolean {
    return this.#index.has(id)
  }

  /** The index of a node, made when new. */
  node(id: string): number {
    const known = this.#index.get(id)
    if (known !== undefined) return known
    const index = this.#nodes.length
    this.#nodes.push(id)
    this.#index.set(id, index)
    return index
  }

  /** The ids of nodes that exist. */
  names(...indices: number[]): string[] {
    return indices.map((index) => {
      const name = this.#nodes[index]
      if (name === undefined) throw new RangeError(`no node has the index ${index}`)
      return name
    })
  }

  /** Adds a part with all its branches; gives the first branch's index. */
  add(law: PartLaw, spec: PartSpec, fitting: Fitting): number {
    const owner = fitting.owner ?? fitting.place
    const id = `${owner}/${fitting.name}`
    const plans = law.branches(spec)
    const first = this.#branches.length
    const part: NetPart = {
      id,
      place: fitting.place,
      name: fitting.name,
      sort: fitting.sort,
      role: law.role,
      law,
      spec,
      first,
      count: plans.length,
      gate: law.gate?.(spec),
      during: fitting.during,
      origin: fitting.origin,
    }
    this.#parts.push(part)
    plans.forEach((plan, ordinal) => {
      const branch: Branch = {
        id: plan.suffix === '' ? id : `${id}.${plan.suffix}`,
        index: this.#branches.length,
        from: this.node(fitting.node(plan.from)),
        to: this.node(fitting.node(plan.to)),
        form: plan.form,
        part,
        ordinal,
      }
      if (this.#branchIndex.has(branch.id)) {
        refuse({
          code: 'key-doubled',
          found: `two branches called ${branch.id}`,
          expected: 'one name for each strap, core, contact, part and slot of a set',
          ...(fitting.origin === undefined ? {} : { place: fitting.origin }),
        })
      }
      this.#branches.push(branch)
      this.#branchIndex.set(branch.id, branch.index)
    })
    return first
  }

  /** Closes the netlist; the builder is spent. */
  close(name: string): Netlist {
    return {
      name,
      graph: graphOf(this.#nodes, this.#branches),
      nodes: this.#nodes,
      nodeIndex: this.#index,
      branches: this.#branches,
      branchIndex: this.#branchIndex,
      parts: this.#parts,
      places: this.places,
      line: this.line,
      rest: this.rest,
    }
  }
}
