/** A symbol's strokes as marks. */
import type { Stroke } from '../../parts/kind.ts'
import { type Mark, mark } from '../mark.ts'
import { type Frame, GRID, TEXT } from './frame.ts'

/** A number as pictures write it. */
export const short = (x: number): string => String(Math.round(x * 100) / 100)

/** Strokes where a frame puts them, from the picture's corner; `mirrored` where the frame turns left into right. */
export function strokeMarks(
  strokes: readonly Stroke[],
  { spot }: Frame,
  [left, top]: readonly [x: number, y: number],
): readonly Mark[] {
  const at = (point: readonly [number, number]): readonly [number, number] => {
    const [x, y] = spot(point)
    return [x + left, y + top]
  }
  const lines: string[] = []
  const others: Mark[] = []
  for (const stroke of strokes) {
    if ('line' in stroke) {
      const points = stroke.line.map((point) => at(point).map(short).join(' '))
      lines.push(`M${points.join('L')}${stroke.closed === true ? 'Z' : ''}`)
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
  return [mark('path', { class: 'symbol', d: lines.join('') }), ...others]
}

/** An arc in steps of half a circle at most, each by its two ends as the frame turns them. */
function arcPath(
  [x, y, radius, from, to]: readonly [number, number, number, number, number],
  at: (point: readonly [number, number]) => readonly [number, number],
): string {
  const on = (degrees: number): readonly [number, number] => {
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
