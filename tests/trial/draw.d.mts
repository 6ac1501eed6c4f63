/** The draws that the laws speak of. */
export function dice(seed: number): {
  random(): number
  between(least: number, most: number): number
  normal(): number
  below(n: number): number
  logBetween(least: number, most: number): number
}
