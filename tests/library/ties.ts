import type { Branch } from '../support/branches.ts'

/** Branches that tie each island to `earth`, and the nodes whose voltage is therefore a mere convention. */
export interface Ties {
  readonly branches: readonly Branch[]
  readonly floating: ReadonlySet<string>
}

/**
 * A tie of 0 V from one node of every island to `earth`: it closes no loop, so it carries nothing. Islands are
 * joined by every branch whose own law holds a voltage; a current source and an open capacitor join nothing.
 */
export function tiesOf(branches: readonly Branch[]): Ties {
  const group = new Map<string, Set<string>>()
  const of = (node: string): Set<string> => {
    const found = group.get(node) ?? new Set([node])
    group.set(node, found)
    return found
  }
  for (const { from, to, volts } of branches) {
    const [one, other] = [of(from), of(to)]
    if (one === other || (volts.re === 0 && volts.im === 0)) continue
    for (const node of other) group.set(node, one.add(node))
  }
  const islands = [...new Set(group.values())].filter((nodes) => !nodes.has('earth'))
  return {
    branches: islands.map((nodes, at) => tie([...nodes][0] ?? '', at)),
    floating: new Set(islands.flatMap((nodes) => [...nodes])),
  }
}

function tie(node: string, at: number): Branch {
  const one = { re: 1, im: 0 }
  return {
    id: `tie ${at}`,
    from: node,
    to: 'earth',
    isSource: false,
    volts: one,
    amps: [],
    source: { re: 0, im: 0 },
  }
}
