/** Numbers cut into cells of about the observation's own resolution, so that outcomes can be counted. */

/** A distinct expectation of a number: many hypotheses share one. */
export interface Peak {
  readonly u: number
  readonly sigma: number
}

/** Edges lie one standard deviation apart, this many to either side of a peak. */
const SIDES = 3
/** Edges closer than this to one before, in standard deviations of the narrower peak, tell nothing more. */
const CLOSE = 0.5
/** More cells than this cost more time than they tell. */
const MOST_CELLS = 128

/**
 * Rising edges of the cells: fine where a narrow peak stands, coarse where only a wide one does. With too many, every
 * second edge goes, which can only lower what an observation seems to tell.
 */
export function cellEdges(peaks: readonly Peak[]): number[] {
  const edges: Peak[] = []
  for (const { u, sigma } of peaks)
    for (let side = -SIDES; side <= SIDES; side++) edges.push({ u: u + side * sigma, sigma })
  edges.sort((a, b) => a.u - b.u)
  let kept: number[] = []
  let last: Peak | undefined
  for (const edge of edges) {
    if (last !== undefined && edge.u - last.u < CLOSE * Math.min(edge.sigma, last.sigma)) continue
    kept.push(edge.u)
    last = edge
  }
  while (kept.length > MOST_CELLS) kept = kept.filter((_, k) => k % 2 === 0)
  return kept
}
