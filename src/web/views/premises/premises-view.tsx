import type { VNode } from 'preact'

export function PremisesView(): VNode {
  return <p>Not built yet.</p>
}
