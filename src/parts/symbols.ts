/** Strokes of symbols as IEC 60617 draws them, from memory, on a unit grid; y points down. */
import type { Outline, Stroke } from './kind.ts'

/** A point on the grid. */
export type Spot = readonly [x: number, y: number]

/** A line from point to point. */
export function line(...points: readonly Spot[]): Stroke {
  return { line: points }
}

/** A closed shape. */
export function shape(...points: readonly Spot[]): Stroke {
  return { line: points, closed: true }
}

/** A circle. */
export function circle(x: number, y: number, radius: number): Stroke {
  return { arc: [x, y, radius, 0, 360] }
}

/** A resistor's rectangle about the middle of a lying symbol. */
export const BOX: Stroke = shape([1, 0.6], [3, 0.6], [3, 1.4], [1, 1.4])

/** The turns of a winding between x and x + 2: four half circles above the line. */
export function turns(x: number, y: number): readonly Stroke[] {
  return [0.25, 0.75, 1.25, 1.75].map((at) => ({ arc: [x + at, y, 0.25, 180, 360] }))
}

/** The ends of a symbol with the spots where they meet it; an end that it has twice is drawn as one. */
function pinned(ends: readonly (readonly [name: string, spot: Spot])[]): Pick<Outline, 'pins' | 'strokes'> {
  const pins: Record<string, Spot> = {}
  const strokes: Stroke[] = []
  for (const [name, spot] of ends) {
    const first = Object.hasOwn(pins, name) ? pins[name] : undefined
    if (first === undefined) pins[name] = spot
    else {
      const between = (first[1] + spot[1]) / 2
      strokes.push(line(first, [first[0], between], [spot[0], between], spot), { dot: first })
    }
  }
  return { pins, strokes }
}

/** A symbol from its ends and strokes. */
export function outlineOf(
  width: number,
  height: number,
  ends: readonly (readonly [name: string, spot: Spot])[],
  strokes: readonly Stroke[],
): Outline {
  const { pins, strokes: joins } = pinned(ends)
  return { width, height, pins, strokes: [...strokes, ...joins] }
}

/**
 * A lying symbol of two ends, 4 wide and 2 high: leads run to x = `left` and from x = `right`.
 */
export function lying(
  { from, to }: { readonly from: string; readonly to: string },
  strokes: readonly Stroke[],
  left: number = 1,
  right: number = 3,
): Outline {
  const ends = [
    [from, [0, 1]],
    [to, [4, 1]],
  ] as const
  return outlineOf(4, 2, ends, [line([0, 1], [left, 1]), ...strokes, line([right, 1], [4, 1])])
}
