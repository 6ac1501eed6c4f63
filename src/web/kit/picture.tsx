/** A picture's tree of plain marks as elements of the page: what stays the same is left alone. */
import { h, type VNode } from 'preact'
import type { Mark } from '../../index.ts'

export function Picture({ mark }: { readonly mark: Mark }): VNode {
  return drawn(mark)
}

function drawn({ tag, attributes, children }: Mark): VNode {
  const { 'data-thing': thing } = attributes
  return h(
    tag,
    { ...attributes, ...(thing === undefined ? {} : { key: `${tag} ${attributes.class ?? ''} ${thing}` }) },
    children.map((child) => (typeof child === 'string' ? child : drawn(child))),
  )
}
