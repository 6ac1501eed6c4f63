/** Symbols that no part brings: contacts as they stand, plain boxes. */
import type { GateState, Outline, Stroke } from '../../parts/kind.ts'

/**
 * A contact as it stands, its arm on the far lead or off it. One that opens when it is worked has its stop behind the
 * arm, as a break contact has in IEC 60617, from memory.
 */
export function contactOutline(
  [first, second]: readonly [first: string, second: string],
  state: GateState,
  breaks: boolean,
): Outline {
  const stop: Stroke = {
    line: [
      [2.8, 1],
      [2.8, 0.5],
    ],
  }
  const closed: readonly [number, number] = breaks ? [2.95, 0.46] : [2.8, 1]
  const tip: readonly [number, number] = state === 'closed' ? closed : breaks ? [2.7, -0.1] : [2.7, 0.25]
  const strokes: readonly Stroke[] = [
    { line: [[0, 1], [1.2, 1], tip] },
    {
      line: [
        [2.8, 1],
        [4, 1],
      ],
    },
    { dot: [1.2, 1] },
    { dot: [2.8, 1] },
    ...(breaks ? [stop] : []),
  ]
  return { width: 4, height: 2, pins: { [first]: [0, 1], [second]: [4, 1] }, strokes }
}

/** A box with some pins on its left and some on its right side. */
export function boxOutline(left: readonly string[], right: readonly string[]): Outline {
  const rows = Math.max(left.length, right.length, 1)
  const height = 2 * rows
  const spots = (names: readonly string[], x: number): [string, readonly [number, number]][] =>
    names.map((name, k) => [name, [x, (height * (2 * k + 1)) / (2 * names.length)]])
  const pins = [...spots(left, 0), ...spots(right, 6)]
  const leads = pins.map(
    ([, [x, y]]): Stroke => ({
      line: [
        [x, y],
        [x === 0 ? 1 : 5, y],
      ],
    }),
  )
  const frame: Stroke = {
    line: [
      [1, 0.2],
      [5, 0.2],
      [5, height - 0.2],
      [1, height - 0.2],
    ],
    closed: true,
  }
  return { width: 6, height, pins: Object.fromEntries(pins), strokes: [frame, ...leads] }
}
