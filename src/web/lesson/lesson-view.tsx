import type { VNode } from 'preact'

export function LessonView(): VNode {
  return <p>Not built yet.</p>
}
