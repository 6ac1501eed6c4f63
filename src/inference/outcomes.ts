/** What may come out of an observation, and how probable each hypothesis makes it. */
import { broadBelow, broadOf, OPEN_SHARE } from './broad.ts'
import { cellEdges, type Peak } from './cells.ts'
import type { Hypotheses } from './hypotheses.ts'
import { answerProbabilities } from './likelihood.ts'
import { normalBelowRoughly } from './normal.ts'
import { expectedOf } from './scale.ts'

/**
 * Outcomes of an observable for some hypotheses. Hypotheses that expect the same share a row: `row[i]` is that of the
 * i-th one asked for, the last row is that of `none`. Each row sums to 1.
 */
export interface Outcomes {
  readonly rows: readonly Float64Array[]
  readonly row: Int32Array
  /** A number that is a slip tells nothing, and is left out of the rows: this share of the information is lost. */
  readonly lost: number
}

/** The outcomes of an observable: its answers, or cells of numbers and `open`. */
export function outcomesOf(among: Hypotheses, observable: number, asked: Int32Array): Outcomes {
  const seen = among.observables[observable]
  const cuts = seen?.cuts
  const row = new Int32Array(asked.length)
  // rows for: open, anything, then each distinct number
  const known = new Map<number, number[]>()
  const peaks: (Peak | 'open' | 'anything')[] = []
  const place = new Map<string, number>()
  for (let i = 0; i < asked.length; i++) {
    const expected = expectedOf(among, asked[i] ?? 0, observable)
    if (expected.says === 'number') row[i] = placeOfNumber(known, peaks, expected)
    else {
      const at = place.get(expected.says) ?? peaks.push(expected.says) - 1
      place.set(expected.says, at)
      row[i] = at
    }
  }
  if (seen !== undefined && cuts !== undefined) {
    const rows = peaks.map((peak) =>
      Float64Array.from(
        answerProbabilities(
          seen,
          typeof peak === 'string' ? { says: peak, u: 0, sigma: 0 } : { says: 'number', ...peak },
        ),
      ),
    )
    const even = new Float64Array(cuts.length + 1).fill(1 / (cuts.length + 1))
    return { rows: [...rows, even], row, lost: 0 }
  }
  const numbers = peaks.filter((peak) => typeof peak !== 'string')
  const edges = cellEdges(numbers)
  const broad = broadOf(among, observable)
  const anything = cellsOf(edges, (u) => broadBelow(broad, u), 1 - OPEN_SHARE)
  const rows = peaks.map((peak) =>
    peak === 'open'
      ? cellsOf(edges, () => 0, 0)
      : peak === 'anything'
        ? anything
        : cellsOf(edges, (u) => normalBelowRoughly((u - peak.u) / peak.sigma), 1),
  )
  return { rows: [...rows, anything], row, lost: seen?.slip ?? 0 }
}

/** Numbers that differ by less than this share of a standard deviation are one row. */
const SAME = 0.01

function placeOfNumber(
  known: Map<number, number[]>,
  peaks: (Peak | 'open' | 'anything')[],
  { u, sigma }: Peak,
): number {
  const key = Math.round(u * 1e6)
  for (const at of known.get(key) ?? []) {
    const peak = peaks[at]
    if (peak === undefined || typeof peak === 'string') continue
    if (Math.abs(peak.u - u) <= SAME * sigma && Math.abs(peak.sigma - sigma) <= SAME * sigma) return at
  }
  const at = peaks.push({ u, sigma }) - 1
  known.set(key, [...(known.get(key) ?? []), at])
  return at
}

/** Probabilities of the cells below, between and above the edges, and at last of `open`. */
function cellsOf(edges: readonly number[], below: (u: number) => number, all: number): Float64Array {
  const cells = new Float64Array(edges.length + 2)
  let before = 0
  edges.forEach((edge, k) => {
    const now = Math.max(before, below(edge))
    cells[k] = now - before
    before = now
  })
  cells[edges.length] = Math.max(0, all - before)
  cells[edges.length + 1] = 1 - all
  return cells
}
