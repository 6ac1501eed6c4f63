import type { VNode } from 'preact'

export function BenchView(): VNode {
  return <p>Not built yet.</p>
}
