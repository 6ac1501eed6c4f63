import type { VNode } from 'preact'

export function SpeechView(): VNode {
  return <p>Not built yet.</p>
}
