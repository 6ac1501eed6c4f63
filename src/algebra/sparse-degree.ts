/**
 * Minimum degree on the quotient graph. A graph of variables (unknowns not yet eliminated) and elements (cliques that
 * eliminated ones left behind): a variable's list names its elements first and then its variables, and is never longer
 * than at the start; an element's list names its variables.
 * @source Amestoy, Davis and Duff, SIAM J. Matrix Anal. Appl. 17 (1996), from memory: approximate degrees, mass
 * elimination, indistinguishable variables, absorption of elements
 */

/** Marks start anew above this, long before they overflow. */
const mostMark = 0x3fffffff

interface Quotient {
  readonly n: number
  /** all lists; doubled when the elements need more */
  list: Int32Array
  end: number
  /** start, length and leading elements of each list */
  readonly at: Int32Array
  readonly length: Int32Array
  readonly elements: Int32Array
  /** unknowns in a variable: 0 where it is gone, negative while it belongs to the new element */
  readonly size: Int32Array
  /** bound of a variable's degree, weight of an element */
  readonly degree: Int32Array
  /** 0: an element that is gone; from `mark` on: `mark` + weight outside of the new element */
  readonly marks: Int32Array
  mark: number
  /** variables by degree, in chains both ways */
  readonly head: Int32Array
  readonly next: Int32Array
  readonly previous: Int32Array
  least: number
  /** unknowns that are eliminated together, in chains from their first to `tail` */
  readonly member: Int32Array
  readonly tail: Int32Array
  /** the element that took one in; -1 at a root */
  readonly parent: Int32Array
  done: number
}

/**
 * An elimination order of little fill: `order[k]` is eliminated k-th. Elements follow their children at once
 * (postorder), so that what belongs together stands together.
 *
 * @param starts n + 1 starts of the lists of neighbours
 * @param neighbours of each unknown, without itself and without doubles, in both directions
 */
export function minimumDegree(n: number, starts: Int32Array, neighbours: Int32Array): Int32Array {
  const graph = quotientOf(n, starts, neighbours)
  const buckets = new Int32Array(n).fill(-1)
  const chain = new Int32Array(n)
  const pivots = new Int32Array(n)
  let count = 0
  while (graph.done < n) {
    const me = eliminate(graph, buckets, chain)
    pivots[count++] = me
  }
  return postorder(graph, pivots.subarray(0, count))
}

function quotientOf(n: number, starts: Int32Array, neighbours: Int32Array): Quotient {
  const graph: Quotient = {
    n,
    list: neighbours,
    end: neighbours.length,
    at: starts.slice(0, n),
    length: new Int32Array(n),
    elements: new Int32Array(n),
    size: new Int32Array(n).fill(1),
    degree: new Int32Array(n),
    marks: new Int32Array(n).fill(1),
    mark: 2,
    head: new Int32Array(n).fill(-1),
    next: new Int32Array(n).fill(-1),
    previous: new Int32Array(n).fill(-1),
    least: 0,
    member: new Int32Array(n).fill(-1),
    tail: new Int32Array(n),
    parent: new Int32Array(n).fill(-1),
    done: 0,
  }
  // made anew at once: V8 takes a field for constant until it changes, and then throws away what it compiled
  graph.list = new Int32Array(neighbours.length + n + 1)
  graph.list.set(neighbours)
  for (let i = n - 1; i >= 0; i--) {
    graph.length[i] = starts[i + 1]! - starts[i]!
    graph.degree[i] = graph.length[i]!
    graph.tail[i] = i
    enlist(graph, i)
  }
  return graph
}

function enlist(graph: Quotient, i: number): void {
  const { head, next, previous, degree } = graph
  const d = degree[i]!
  const first = head[d]!
  next[i] = first
  previous[i] = -1
  if (first !== -1) previous[first] = i
  head[d] = i
  if (d < graph.least) graph.least = d
}

function delist({ head, next, previous, degree }: Quotient, i: number): void {
  const before = previous[i]!
  const after = next[i]!
  if (after !== -1) previous[after] = before
  if (before !== -1) next[before] = after
  else head[degree[i]!] = after
}

/** Members of `other` follow those of `into`. */
function join({ member, tail }: Quotient, into: number, other: number): void {
  member[tail[into]!] = other
  tail[into] = tail[other]!
}

/** Turns a variable of least degree into an element; returns it. */
function eliminate(graph: Quotient, buckets: Int32Array, chain: Int32Array): number {
  const { head, size, length, at, marks } = graph
  while (head[graph.least] === -1) graph.least++
  const me = head[graph.least]!
  delist(graph, me)
  graph.done += size[me]!
  size[me] = 0
  const start = gather(graph, me)
  const end = graph.end
  weighOutside(graph, start, end)
  const weight = renewDegrees(graph, me, start, end, buckets, chain)
  graph.mark += graph.n + 1
  if (graph.mark > mostMark) {
    for (let e = 0; e < graph.n; e++) if (marks[e] !== 0) marks[e] = 1
    graph.mark = 2
  }
  mergeAlike(graph, start, end, buckets, chain)
  at[me] = start
  settle(graph, me, start, end, weight)
  length[me] = graph.end - start
  marks[me] = length[me] === 0 ? 0 : 1
  return me
}

/**
 * Writes the variables of the new element at the end of the lists, their sizes negated; returns its start.
 * No element beside `me` is gone: whoever took it in has cleared the lists of all its variables.
 */
function gather(graph: Quotient, me: number): number {
  const { at, length, elements, size, marks, parent } = graph
  let most = length[me]!
  for (let t = at[me]!; t < at[me]! + elements[me]!; t++) most += length[graph.list[t]!]!
  if (graph.end + most > graph.list.length) {
    const longer = new Int32Array(2 * graph.list.length + most)
    longer.set(graph.list.subarray(0, graph.end))
    graph.list = longer
  }
  const list = graph.list
  const start = graph.end
  let end = start
  const own = at[me]!
  const leading = own + elements[me]!
  for (let t = own; t <= leading; t++) {
    const e = t < leading ? list[t]! : -1 // the variables of me itself come last
    const from = t < leading ? at[e]! : leading
    const to = t < leading ? from + length[e]! : own + length[me]!
    for (let s = from; s < to; s++) {
      const i = list[s]!
      if (size[i]! <= 0) continue
      size[i] = -size[i]!
      list[end++] = i
      delist(graph, i)
    }
    if (t < leading) {
      marks[e] = 0
      parent[e] = me
    }
  }
  graph.end = end
  return start
}

/** marks[e] - mark = weight of element e outside of the new one, for all elements beside its variables. */
function weighOutside(graph: Quotient, start: number, end: number): void {
  const { list, at, elements, size, degree, marks, mark } = graph
  for (let s = start; s < end; s++) {
    const i = list[s]!
    const weight = -size[i]!
    for (let t = at[i]!; t < at[i]! + elements[i]!; t++) {
      const e = list[t]!
      if (marks[e]! >= mark) marks[e] = marks[e]! - weight
      else if (marks[e] !== 0) marks[e] = degree[e]! + mark - weight
    }
  }
}

/** Clears the lists of the new element's variables, bounds their degrees, files them by a sum of their lists. */
function renewDegrees(
  graph: Quotient,
  me: number,
  start: number,
  end: number,
  buckets: Int32Array,
  chain: Int32Array,
): number {
  const { n, list, at, length, elements, size, degree, marks, mark, parent } = graph
  let weight = 0
  for (let s = start; s < end; s++) {
    const i = list[s]!
    const first = at[i]!
    const leading = first + elements[i]!
    const last = first + length[i]!
    let to = first
    let outside = 0
    let sum = me
    for (let t = first; t < leading; t++) {
      const e = list[t]!
      if (marks[e] === 0) continue
      const rest = marks[e]! - mark
      if (rest > 0) {
        outside += rest
        sum += e
        list[to++] = e
      } else {
        marks[e] = 0 // nothing of it is outside: the new element takes it in
        parent[e] = me
      }
    }
    const border = to
    for (let t = leading; t < last; t++) {
      const j = list[t]!
      if (size[j]! <= 0) continue
      outside += size[j]!
      sum += j
      list[to++] = j
    }
    if (outside === 0) {
      graph.done -= size[i]! // mass elimination: it has no neighbour beside the new element
      size[i] = 0
      join(graph, me, i)
      continue
    }
    list[to] = list[border]! // there is room: me itself, or an element that it took in, has left the list
    list[border] = me
    elements[i] = border - first + 1
    length[i] = to - first + 1
    weight -= size[i]!
    if (outside < degree[i]!) degree[i] = outside
    const bucket = sum % n
    chain[i] = buckets[bucket]!
    buckets[bucket] = i
    // the place of a variable's bucket is kept where its degree chain is, which it has left
    graph.previous[i] = bucket
  }
  return weight
}

/** Joins variables of the new element whose lists are the same. */
function mergeAlike(
  graph: Quotient,
  start: number,
  end: number,
  buckets: Int32Array,
  chain: Int32Array,
): void {
  const { list, at, length, elements, size, marks, previous } = graph
  for (let s = start; s < end; s++) {
    const here = list[s]!
    if (size[here] === 0) continue
    const bucket = previous[here]!
    let i = buckets[bucket]!
    buckets[bucket] = -1
    for (; i !== -1 && chain[i] !== -1; i = chain[i]!) {
      const mark = graph.mark++
      const count = length[i]!
      const leading = elements[i]!
      for (let t = at[i]!; t < at[i]! + count; t++) marks[list[t]!] = mark
      let before = i
      for (let j = chain[i]!; j !== -1; j = chain[j]!) {
        let same = length[j] === count && elements[j] === leading
        for (let t = at[j]!; same && t < at[j]! + count; t++) same = marks[list[t]!] === mark
        if (same) {
          size[i] = size[i]! + size[j]!
          size[j] = 0
          join(graph, i, j)
          chain[before] = chain[j]!
        } else before = j
      }
    }
  }
}

/** Puts the variables that are left back among the degrees, and into the list of the new element. */
function settle(graph: Quotient, me: number, start: number, end: number, weight: number): void {
  const { n, list, size, degree } = graph
  let to = start
  for (let s = start; s < end; s++) {
    const i = list[s]!
    if (size[i] === 0) continue
    const own = -size[i]!
    size[i] = own
    degree[i] = Math.max(0, Math.min(degree[i]! + weight - own, n - graph.done - own))
    enlist(graph, i)
    list[to++] = i
  }
  degree[me] = weight
  graph.end = to
}

/** Elements by postorder of who took in whom, each with its members. */
function postorder({ n, parent, member }: Quotient, pivots: Int32Array): Int32Array {
  const child = new Int32Array(n).fill(-1)
  const sibling = new Int32Array(n).fill(-1)
  const roots: number[] = []
  for (let k = pivots.length - 1; k >= 0; k--) {
    const e = pivots[k]!
    const above = parent[e]!
    if (above === -1) roots.push(e)
    else {
      sibling[e] = child[above]!
      child[above] = e
    }
  }
  const order = new Int32Array(n)
  const stack = new Int32Array(pivots.length)
  let count = 0
  for (let r = roots.length - 1; r >= 0; r--) {
    let depth = 0
    stack[0] = roots[r]!
    while (depth >= 0) {
      const e = stack[depth]!
      const below = child[e]!
      if (below !== -1) {
        child[e] = sibling[below]!
        stack[++depth] = below
        continue
      }
      for (let i = e; i !== -1; i = member[i]!) order[count++] = i
      depth--
    }
  }
  return order
}
