import type { VNode } from 'preact'

export function FilesView(): VNode {
  return <p>Not built yet.</p>
}
