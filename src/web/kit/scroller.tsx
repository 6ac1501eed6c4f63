/** What may be wider than the page scrolls by itself, and is reached by keys for it. */
import type { ComponentChildren, VNode } from 'preact'

export interface ScrollerProps {
  readonly says: string
  readonly children: ComponentChildren
}

export function Scroller({ says, children }: ScrollerProps): VNode {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: who has no pointer scrolls it with the arrow keys
    <section class="wide" tabIndex={0} aria-label={says}>
      {children}
    </section>
  )
}
