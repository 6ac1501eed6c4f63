import type { VNode } from 'preact'

export function SheetView(): VNode {
  return <p>Not built yet.</p>
}
