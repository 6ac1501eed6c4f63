/** A picture's tree of plain marks as elements of the page: what stays the same is left alone. */
import { h, type VNode } from 'preact'
import type { Mark } from '../../index.ts'

export function Picture({ mark }: { readonly mark: Mark }): VNode {
  return drawn(mark)
}

/** What was made of a mark: the same mark at the same key is the same element, which the view library then leaves alone. */
const made = new WeakMap<Mark, { readonly key: string | undefined; readonly node: VNode }>()

function drawn(one: Mark, key?: string): VNode {
  const before = made.get(one)
  if (before !== undefined && before.key === key) return before.node
  const { tag, attributes, children } = one
  const seen = new Map<string, number>()
  const node = h(
    tag,
    { ...attributes, ...(key === undefined ? {} : { key }) },
    children.map((child) => (typeof child === 'string' ? child : drawn(child, keyOf(child, seen)))),
  )
  made.set(one, { key, node })
  return node
}

/** A thing keeps its element, and with it the focus, whatever becomes of its states: no class is in the key. */
function keyOf({ tag, attributes }: Mark, seen: Map<string, number>): string | undefined {
  const { 'data-thing': thing } = attributes
  if (thing === undefined) return undefined
  const name = `${tag} ${thing}`
  const count = seen.get(name) ?? 0
  seen.set(name, count + 1)
  return `${name} ${count}`
}
