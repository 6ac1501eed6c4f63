/** Plain symbols of the lesson's picture, drawn from the point where a wire enters to where it leaves. */
import { type Mark, mark } from '../../../index.ts'

/** A wire; its weight shows the current, A rms. Without current it is thin and dashed. */
export function wire(points: readonly (readonly [number, number])[], current: number): Mark {
  const d = points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${x} ${y}`).join('')
  const idle = current < LEAST
  return mark('path', {
    d,
    class: idle ? 'lesson-wire idle' : 'lesson-wire',
    'stroke-width': idle ? 1.5 : weight(current),
  })
}

/** Currents below this are drawn as none, A. */
export const LEAST = 0.0003

/** Half a millimetre of stroke to the milliampere, as far as the picture has room. */
export function weight(current: number): number {
  return Math.round(10 * Math.min(9, 1.8 + current * 280)) / 10
}

/** An arrow at a point, along `dx`, `dy`. */
export function arrow(x: number, y: number, dx: number, dy: number, current: number): Mark | undefined {
  if (current < LEAST) return undefined
  const half = 4 + weight(current) / 1.6
  const tip = `${x + dx * half} ${y + dy * half}`
  const left = `${x - dx * half - dy * half} ${y - dy * half + dx * half}`
  const right = `${x - dx * half + dy * half} ${y - dy * half - dx * half}`
  return mark('path', { d: `M${tip}L${left}L${right}z`, class: 'lesson-arrow' })
}

export function dot(x: number, y: number): Mark {
  return mark('circle', { cx: x, cy: y, r: 4.5, class: 'lesson-dot' })
}

/** An end that lies on nothing. */
export function openEnd(x: number, y: number): Mark {
  return mark('circle', { cx: x, cy: y, r: 5, class: 'lesson-open' })
}

export function resistor(x: number, y: number): Mark {
  return mark('rect', { x: x - 14, y: y - 7, width: 28, height: 14, class: 'lesson-body' })
}

export function capacitor(x: number, y: number): Mark {
  return mark(
    'g',
    {},
    mark('rect', { x: x - 5, y: y - 14, width: 10, height: 28, class: 'lesson-gap' }),
    mark('path', { d: `M${x - 5} ${y - 14}v28M${x + 5} ${y - 14}v28`, class: 'lesson-plate' }),
  )
}

/** A bell: a gong on its two ends; rings or is silent. */
export function bell(x: number, y: number, rings: boolean): Mark {
  const d = `M${x - 16} ${y + 6}a16 16 0 0 1 32 0z`
  return mark(
    'g',
    {},
    mark('rect', { x: x - 16, y: y - 3, width: 32, height: 8, class: 'lesson-gap' }),
    mark('path', { d, class: rings ? 'lesson-body rings' : 'lesson-body' }),
    ...(rings
      ? [
          mark('path', {
            d: `M${x - 10} ${y - 19}l-5 -6M${x} ${y - 21}v-7M${x + 10} ${y - 19}l5 -6`,
            class: 'lesson-sound',
          }),
        ]
      : []),
  )
}

export function words(x: number, y: number, text: string, more: string = ''): Mark {
  return mark('text', { x, y, class: `lesson-words ${more}`.trim() }, text)
}
