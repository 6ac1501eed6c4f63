/** Undo and redo by keys, wherever the focus is, but where keys write text. */
import { redo, undo } from '../state/work.ts'

const isWriting = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest(
    'input:not([type="radio"], [type="checkbox"], [type="range"]), textarea, select, [contenteditable]',
  ) !== null

export function startKeys(): void {
  addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return
    if (isWriting(event.target) || document.querySelector('dialog[open]') !== null) return
    const key = event.key.toLowerCase()
    const isUndo = key === 'z' && !event.shiftKey
    const isRedo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey)
    if (!isUndo && !isRedo) return
    event.preventDefault()
    if (isUndo) undo()
    else redo()
  })
}
