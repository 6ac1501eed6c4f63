import type { VNode } from 'preact'

export function IdentifyView(): VNode {
  return <p>Not built yet.</p>
}
