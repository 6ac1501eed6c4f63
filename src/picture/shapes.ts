/** Elements that pictures are made of. Coordinates are absolute: pictures have no transforms. */
import { type Mark, mark } from './mark.ts'

type Point = readonly [x: number, y: number]

/** A text with its left end, middle or right end at a point of its base line. */
export function textAt(
  [x, y]: Point,
  size: number,
  words: string,
  look: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Mark {
  return mark(
    'text',
    {
      class: look,
      x: round(x),
      y: round(y),
      'font-size': size,
      ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
    },
    words,
  )
}

/** A rectangle. */
export function boxAt(
  { x, y, width, height }: Box,
  look: string,
  more: Readonly<Record<string, string | number>> = {},
): Mark {
  return mark('rect', {
    class: look,
    x: round(x),
    y: round(y),
    width: round(width),
    height: round(height),
    ...more,
  })
}

/** A rectangle without its look. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Straight lines from point to point. */
export function lineThrough(
  points: readonly Point[],
  look: string,
  more: Readonly<Record<string, string | number>> = {},
): Mark {
  return mark('polyline', { class: look, points: written(points), ...more })
}

/** A closed shape. */
export function shapeOf(points: readonly Point[], look: string): Mark {
  return mark('polygon', { class: look, points: written(points) })
}

/** A circle. */
export function circleAt([x, y]: Point, r: number, look: string): Mark {
  return mark('circle', { class: look, cx: round(x), cy: round(y), r })
}

/** An arrow’s head whose tip is at a point; `half` is half of its breadth and its length. */
export function arrowHead(tip: Point, toward: 'left' | 'right' | 'up' | 'down', half: number): Mark {
  const [x, y] = tip
  const back = half * 1.6
  const points: Readonly<Record<typeof toward, readonly Point[]>> = {
    left: [tip, [x + back, y - half], [x + back, y + half]],
    right: [tip, [x - back, y - half], [x - back, y + half]],
    up: [tip, [x - half, y + back], [x + half, y + back]],
    down: [tip, [x - half, y - back], [x + half, y - back]],
  }
  return shapeOf(points[toward], 'arrow')
}

/** A small cross: what is not there any more, or was refused. */
export function crossAt([x, y]: Point, half: number, look: string): Mark {
  return mark('path', {
    class: look,
    d: `M${round(x - half)} ${round(y - half)}l${2 * half} ${2 * half}m0 ${-2 * half}l${-2 * half} ${2 * half}`,
  })
}

/** A plus sign: here something can go. */
export function plusAt([x, y]: Point, half: number, look: string): Mark {
  return mark('path', {
    class: look,
    d: `M${round(x - half)} ${round(y)}h${2 * half}M${round(x)} ${round(y - half)}v${2 * half}`,
  })
}

/** What cannot be moved: a bar with a bow over it, the corner of both at a point. */
export function lockAt([x, y]: Point): Mark {
  return mark('path', {
    class: 'lock',
    d: `M${round(x)} ${round(y)}h12v8h-12zM${round(x + 3)} ${round(y)}v-3a3 3 0 0 1 6 0v3`,
  })
}

/** Two decimals are finer than any screen. */
export function round(value: number): number {
  return Math.round(value * 100) / 100
}

function written(points: readonly Point[]): string {
  return points.map(([x, y]) => `${round(x)},${round(y)}`).join(' ')
}
