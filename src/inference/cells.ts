/** Numbers cut into cells of about the observation's own resolution, so that outcomes can be counted. */

/** A distinct expectation of a number: many hypotheses share one. */
export interface Peak {
  readonly u: number
  readonly sigma: number
}

/** Edges lie one standard deviation apart, this many to either side of a peak. */
const SIDES = 3
/** More cells than this cost more time than they tell. */
const MOST_CELLS = 160

/**
 * Rising edges of the cells: fine where a narrow peak stands, coarse where only a wide one does. With too many, every
 * second edge goes, which can only lower what an observation seems to tell.
 */
export function cellEdges(peaks: readonly Peak[]): number[] {
  const edges: number[] = []
  const taken: { readonly least: number; readonly most: number }[] = []
  for (const { u, sigma } of [...peaks].sort((a, b) => a.sigma - b.sigma)) {
    for (let side = -SIDES; side <= SIDES; side++) {
      const edge = u + side * sigma
      if (!taken.some(({ least, most }) => edge > least && edge < most)) edges.push(edge)
    }
    join(taken, u - SIDES * sigma, u + SIDES * sigma)
  }
  let kept = edges.sort((a, b) => a - b)
  while (kept.length > MOST_CELLS) kept = kept.filter((_, k) => k % 2 === 0)
  return kept
}

/** Adds a stretch to stretches that do not meet. */
function join(taken: { least: number; most: number }[], least: number, most: number): void {
  let [from, to] = [least, most]
  for (let k = taken.length - 1; k >= 0; k--) {
    const one = taken[k]
    if (one === undefined || one.most < from || one.least > to) continue
    from = Math.min(from, one.least)
    to = Math.max(to, one.most)
    taken.splice(k, 1)
  }
  taken.push({ least: from, most: to })
}
