/** What of a whole installation a circuit picture shows part by part, and what it draws together as one box. */
import { type Branch, EARTH, type Netlist, type NetPart, type NetPlace } from '../../netlist/netlist.ts'

/** Branches that are drawn as one. */
export interface Together {
  readonly id: string
  readonly label: string
  readonly exchange: boolean
  readonly branches: readonly Branch[]
  /** Nodes where it meets what is shown, in order. */
  readonly meets: readonly number[]
}

/** A picture's extent. */
export interface Scope {
  /** Parts drawn one by one. */
  readonly parts: readonly NetPart[]
  readonly together: readonly Together[]
  /** Nodes that are shown: those that something shown hangs on. */
  readonly nodes: ReadonlySet<number>
}

/** The branches of a part. */
export function branchesOf(net: Netlist, { first, count }: NetPart): readonly Branch[] {
  return net.branches.slice(first, first + count)
}

/** Whose a part is: a socket's, the exchange's, a place's. */
function ownerOf({ id, name }: NetPart): string {
  return id.slice(0, id.length - name.length - 1)
}

/**
 * The set at a place with all its parts, its socket and what lies between that and the exchange. The exchange is one
 * box; so is whatever else hangs together: another set, another socket with its sets. Of a circuit that is no
 * installation everything is shown.
 */
export function scopeOf(net: Netlist, place: string): Scope {
  const own = net.places.find((one) => one.place === place)
  const way = own === undefined ? new Set<string>() : wayOf(net, own)
  const shown = (part: NetPart): boolean => {
    if (part.sort === 'exchange') return false
    if (own === undefined || part.place === place) return true
    return part.place === '' && way.has(ownerOf(part))
  }
  const parts = net.parts.filter(shown)
  const exchange = net.branches.filter(({ part }) => part.sort === 'exchange')
  const hidden = net.branches.filter(({ part }) => part.sort !== 'exchange' && !shown(part))
  const nodes = new Set<number>()
  for (const part of parts)
    for (const { from, to } of branchesOf(net, part)) for (const node of [from, to]) nodes.add(node)
  const line = net.line
  if (line !== undefined && exchange.length > 0) for (const node of [line.a, line.b]) nodes.add(node)
  const met = (branches: readonly Branch[]): number[] =>
    [...new Set(branches.flatMap(({ from, to }) => [from, to]))].filter(
      (node) => nodes.has(node) || net.nodes[node] === EARTH,
    )
  const central: Together[] =
    exchange.length === 0
      ? []
      : [{ id: 'exchange', label: 'exchange', exchange: true, branches: exchange, meets: met(exchange) }]
  const others = clusters(hidden, (node) => nodes.has(node) || net.nodes[node] === EARTH)
    .map((branches): Together => ({ ...named(branches), exchange: false, branches, meets: met(branches) }))
    .filter(({ meets }) => meets.length > 1)
  for (const { meets } of central) for (const node of meets) nodes.add(node)
  for (const { meets } of others) for (const node of meets) nodes.add(node)
  return { parts, together: [...central, ...others], nodes }
}

/** Sockets on the way from a set's socket to the exchange, by the fewest branches. */
function wayOf(net: Netlist, { socket }: NetPlace): ReadonlySet<string> {
  if (socket === undefined) return new Set()
  const way = new Set([socket.name])
  const came = new Map<number, Branch | undefined>([[socket.a, undefined]])
  const open = [socket.a]
  for (const node of open) {
    if (node === net.line?.a || node === net.line?.b) {
      let at = node
      for (let by = came.get(at); by !== undefined; by = came.get(at)) {
        way.add(ownerOf(by.part))
        at = by.from === at ? by.to : by.from
      }
      break
    }
    for (const branch of net.branches) {
      const { from, to, part } = branch
      if ((part.sort !== 'cable' && part.sort !== 'socket') || (from !== node && to !== node)) continue
      const other = from === node ? to : from
      if (came.has(other)) continue
      came.set(other, branch)
      open.push(other)
    }
  }
  return way
}

/** Branches that hang together by nodes that are not shown, or by what they belong to. */
function clusters(branches: readonly Branch[], shown: (node: number) => boolean): readonly Branch[][] {
  const left = new Set(branches)
  const found: Branch[][] = []
  for (const start of branches) {
    if (!left.delete(start)) continue
    const cluster = [start]
    for (const one of cluster) {
      const inner = [one.from, one.to].filter((node) => !shown(node))
      for (const other of left) {
        const joined = inner.includes(other.from) || inner.includes(other.to)
        if (!joined && ownerOf(other.part) !== ownerOf(one.part)) continue
        left.delete(other)
        cluster.push(other)
      }
    }
    found.push(cluster.sort((p, q) => p.index - q.index))
  }
  return found
}

function named(branches: readonly Branch[]): { readonly id: string; readonly label: string } {
  const places = [...new Set(branches.map(({ part }) => part.place).filter((place) => place !== ''))]
  const owners = [
    ...new Set(branches.filter(({ part }) => part.place === '').map(({ part }) => ownerOf(part))),
  ]
  const [place] = places
  const [owner] = owners
  const head = owner ?? place ?? ''
  if (owner === undefined) return { id: `elsewhere:${head}`, label: `${head}: another set` }
  const sets =
    places.length === 0 ? 'another socket' : places.length === 1 ? 'another set' : `${places.length} sets`
  return { id: `elsewhere:${head}`, label: `${head}: ${sets}` }
}
