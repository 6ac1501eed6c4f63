/** A symbol's strokes as marks. */
import type { Outline } from '../../parts/kind.ts'
import { type Mark, mark } from '../mark.ts'
import { type Frame, GRID, TEXT } from './frame.ts'

/** A number as pictures write it. */
export const short = (x: number): string => String(Math.round(x * 100) / 100)

type Point = readonly [x: number, y: number]

/**
 * Strokes where a frame puts them, from the picture's corner. What leads from a pin to the symbol proper is drawn as
 * the wire that it goes on from.
 * @param weight the class of what flows in at a pin
 */
export function strokeMarks(
  { strokes, pins }: Outline,
  { spot }: Frame,
  [left, top]: Point,
  weight: (pin: string) => string,
): readonly Mark[] {
  const at = (point: Point): Point => {
    const [x, y] = spot(point)
    return [x + left, y + top]
  }
  const path = (points: readonly Point[]): string =>
    `M${points.map((point) => at(point).map(short).join(' ')).join('L')}`
  const lines: string[] = []
  const legs: Mark[] = []
  const others: Mark[] = []
  for (const stroke of strokes) {
    if ('line' in stroke && stroke.closed === true) lines.push(`${path(stroke.line)}Z`)
    else if ('line' in stroke) {
      const { points, found } = withoutLegs(stroke.line, pins)
      for (const { pin, leg } of found) legs.push(mark('path', { class: `leg${weight(pin)}`, d: path(leg) }))
      if (points.length > 1) lines.push(path(points))
    } else if ('arc' in stroke) lines.push(arcPath(stroke.arc, at))
    else if ('dot' in stroke) {
      const [x, y] = at(stroke.dot)
      others.push(mark('circle', { class: 'dot', cx: short(x), cy: short(y), r: 1.8 }))
    } else {
      const [x, y] = at(stroke.at)
      others.push(
        mark('text', { class: 'letters', x: short(x), y: short(y), 'font-size': TEXT }, stroke.letters),
      )
    }
  }
  return [...legs, mark('path', { class: 'symbol', d: lines.join('') }), ...others]
}

/** A line without what leads to it from pins at its ends. */
function withoutLegs(
  line: readonly Point[],
  pins: Outline['pins'],
): {
  readonly points: readonly Point[]
  readonly found: readonly { readonly pin: string; readonly leg: readonly Point[] }[]
} {
  const pinAt = (point: Point | undefined): string | undefined =>
    Object.keys(pins).find((name) => pins[name]?.[0] === point?.[0] && pins[name]?.[1] === point?.[1])
  const [first, last] = [pinAt(line[0]), pinAt(line.at(-1))]
  const start = first === undefined ? 0 : 1
  const end = line.length - (last === undefined || (start === 1 && line.length === 2) ? 0 : 1)
  return {
    points: line.slice(start, end),
    found: [
      ...(first === undefined ? [] : [{ pin: first, leg: line.slice(0, 2) }]),
      ...(last === undefined || (start === 1 && line.length === 2)
        ? []
        : [{ pin: last, leg: line.slice(-2) }]),
    ],
  }
}

/** An arc in steps of half a circle at most, each by its two ends as the frame turns them. */
function arcPath(
  [x, y, radius, from, to]: readonly [number, number, number, number, number],
  at: (point: Point) => Point,
): string {
  const on = (degrees: number): Point => {
    const radians = (degrees * Math.PI) / 180
    return at([x + radius * Math.cos(radians), y + radius * Math.sin(radians)])
  }
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / 180))
  const angle = (to - from) / steps
  const [a, b, c] = [on(from), on(from + angle / 2), on(from + angle)]
  // which way round it goes, seen after all turning
  const sweep = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) > 0 ? 1 : 0
  const r = short(radius * GRID)
  const arcs = Array.from({ length: steps }, (_, k) => {
    const end = on(from + angle * (k + 1))
    return `A${r} ${r} 0 0 ${sweep} ${end.map(short).join(' ')}`
  })
  return `M${a.map(short).join(' ')}${arcs.join('')}`
}
