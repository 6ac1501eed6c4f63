/** One stop for the Tab key in a whole picture: the arrow keys go on from there. */
import type { Mark } from '../../../../index.ts'

/** The same tree with a single mark in the order of keys: that of the thing, or the first where it is not there. */
export function roving(whole: Mark, thing: string | undefined): Mark {
  const stop = hasStop(whole, thing) ? thing : firstStop(whole)
  return stop === undefined ? whole : turned(whole, stop, { isDone: false })
}

/** Trees without a stop in them, kept: what was drawn once and is the same stays the very same. */
const passed = new WeakMap<Mark, Mark>()

function pass(one: Mark): Mark {
  const before = passed.get(one)
  if (before !== undefined) return before
  const { tabindex } = one.attributes
  const children = one.children.map((child) => (typeof child === 'string' ? child : pass(child)))
  const isSame = tabindex === undefined && children.every((child, k) => child === one.children[k])
  const after = isSame
    ? one
    : {
        tag: one.tag,
        attributes: tabindex === undefined ? one.attributes : { ...one.attributes, tabindex: -1 },
        children,
      }
  passed.set(one, after)
  return after
}

function turned(one: Mark, stop: string, found: { isDone: boolean }): Mark {
  if (found.isDone || !hasStop(one, stop)) return pass(one)
  const { tabindex, 'data-thing': here } = one.attributes
  const isStop = tabindex !== undefined && here === stop
  if (isStop) found.isDone = true
  const children = one.children.map((child) =>
    typeof child === 'string' ? child : turned(child, stop, found),
  )
  const attributes =
    tabindex === undefined ? one.attributes : { ...one.attributes, tabindex: isStop ? 0 : -1 }
  return { tag: one.tag, attributes, children }
}

function firstStop({ attributes, children }: Mark): string | undefined {
  const { tabindex, 'data-thing': here } = attributes
  if (tabindex !== undefined && here !== undefined) return String(here)
  for (const child of children) {
    const found = typeof child === 'string' ? undefined : firstStop(child)
    if (found !== undefined) return found
  }
  return undefined
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
