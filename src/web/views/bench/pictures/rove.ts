/** One stop for the Tab key in a whole picture: the arrow keys go on from there. */
import type { Mark } from '../../../../index.ts'

/** The same tree with a single mark in the order of keys: that of the thing, or the first where it is not there. */
export function roving(whole: Mark, thing: string | undefined): Mark {
  const stop = hasStop(whole, thing) ? thing : undefined
  let first = stop === undefined
  const turn = (one: Mark): Mark => {
    const { tabindex, 'data-thing': here } = one.attributes
    const isStop = tabindex !== undefined && (here === stop || first)
    if (isStop) first = false
    const children = one.children.map((child) => (typeof child === 'string' ? child : turn(child)))
    return {
      tag: one.tag,
      attributes: tabindex === undefined ? one.attributes : { ...one.attributes, tabindex: isStop ? 0 : -1 },
      children,
    }
  }
  return turn(whole)
}

function hasStop({ attributes, children }: Mark, thing: string | undefined): boolean {
  if (thing === undefined) return false
  if (attributes['data-thing'] === thing && attributes.tabindex !== undefined) return true
  return children.some((child) => typeof child !== 'string' && hasStop(child, thing))
}

/** Where a thing stands on the screen. */
export interface Spot {
  readonly x: number
  readonly y: number
}

/** Index of the nearest spot in a direction: sideways distance counts double. Undefined where nothing lies there. */
export function nextSpot(
  from: Spot,
  spots: readonly Spot[],
  way: 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown',
): number | undefined {
  const across = way === 'ArrowLeft' || way === 'ArrowRight'
  const sign = way === 'ArrowLeft' || way === 'ArrowUp' ? -1 : 1
  let best: number | undefined
  let least = Number.POSITIVE_INFINITY
  for (const [k, { x, y }] of spots.entries()) {
    const along = sign * (across ? x - from.x : y - from.y)
    const aside = Math.abs(across ? y - from.y : x - from.x)
    if (along < 1) continue
    const length = along + 2 * aside
    if (length < least) {
      least = length
      best = k
    }
  }
  return best
}
