/** A question that must be answered first: the browser's own dialog, focus kept in it and given back. */
import type { ComponentChildren, VNode } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'

export interface DialogProps {
  readonly title: string
  /** Escape, or the button to close. The one who shows it takes it away. */
  readonly onClose: () => void
  /** Words of the button that closes; `Close` when absent. */
  readonly closeSays?: string
  readonly wide?: boolean
  readonly children: ComponentChildren
}

/** Open as long as it is shown. */
export function Dialog({ title, onClose, closeSays = 'Close', wide, children }: DialogProps): VNode {
  const id = useId()
  const box = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const before = document.activeElement
    const dialog = box.current
    dialog?.showModal()
    return () => {
      dialog?.close()
      // whoever was left for the dialog may have gone meanwhile: then the view's heading takes over
      const back = before instanceof HTMLElement && before.isConnected ? before : document.querySelector('h1')
      if (back instanceof HTMLElement) back.focus()
    }
  }, [])
  return (
    <dialog
      ref={box}
      class={wide === true ? 'dialog wide-dialog' : 'dialog'}
      aria-labelledby={id}
      onCancel={(event) => {
        // kept open until its owner takes it away
        event.preventDefault()
        onClose()
      }}
      onClose={(event) => {
        // the browser may close it by itself after a second Escape
        if (event.currentTarget.isConnected && event.target === event.currentTarget) onClose()
      }}
    >
      <h2 id={id}>{title}</h2>
      {children}
      <p class="buttons">
        <button type="button" class="button" onClick={onClose}>
          {closeSays}
        </button>
      </p>
    </dialog>
  )
}
