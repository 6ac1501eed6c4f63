/** The number at a place of a list; 0 beyond its ends. Sums over lists of one length never ask there. */
export function valueAt(list: ArrayLike<number>, place: number): number {
  return list[place] ?? 0
}
