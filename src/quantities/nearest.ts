/** The name that somebody most likely meant. */

const LONGEST = 48

/**
 * The nearest of the candidates by edit distance, a swap of neighbours counting as one edit; case counts less
 * than any letter. Undefined when none is near: at most one edit in four letters, two in seven, three in more.
 * Of equally near ones the first.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > LONGEST) return undefined
  const sought = word.toLowerCase()
  let least = word.length <= 4 ? 1 : word.length <= 7 ? 2 : 3
  let best: string | undefined
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) > least || candidate === word) continue
    const distance = editDistance(sought, candidate.toLowerCase())
    if (distance < least || (distance === least && best === undefined)) {
      least = distance
      best = candidate
    }
  }
  return best
}

/** Least number of insertions, deletions, replacements and swaps of neighbours, no letter edited twice. */
export function editDistance(a: string, b: string): number {
  let before: number[] = []
  let above = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let distance = Math.min(cell(above, j) + 1, cell(row, j - 1) + 1, cell(above, j - 1) + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        distance = Math.min(distance, cell(before, j - 2) + 1)
      }
      row.push(distance)
    }
    before = above
    above = row
  }
  return cell(above, b.length)
}

function cell(row: readonly number[], at: number): number {
  return row[at] ?? Number.POSITIVE_INFINITY
}
