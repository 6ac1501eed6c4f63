/** Lanes for straps: no two straps in one lane meet. */

/** What wants a lane from one height to another. */
export interface Stretch {
  readonly id: string
  readonly from: number
  readonly to: number
}

/** Least distance between two straps in one lane. */
const APART = 10

/** A lane from 0, the nearest to the screws, for each stretch: short ones lie inside. */
export function lanesOf(stretches: readonly Stretch[]): ReadonlyMap<string, number> {
  const lanes: Stretch[][] = []
  const found = new Map<string, number>()
  const sorted = [...stretches].sort(
    (p, q) => p.to - p.from - (q.to - q.from) || p.from - q.from || (p.id < q.id ? -1 : 1),
  )
  for (const stretch of sorted) {
    let lane = lanes.findIndex((taken) => taken.every((one) => areApart(one, stretch)))
    if (lane < 0) lane = lanes.push([]) - 1
    lanes[lane]?.push(stretch)
    found.set(stretch.id, lane)
  }
  return found
}

function areApart(p: Stretch, q: Stretch): boolean {
  return p.to + APART < q.from || q.to + APART < p.from
}
