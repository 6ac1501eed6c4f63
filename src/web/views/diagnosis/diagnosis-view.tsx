import type { VNode } from 'preact'

export function DiagnosisView(): VNode {
  return <p>Not built yet.</p>
}
