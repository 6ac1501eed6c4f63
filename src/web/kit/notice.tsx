/** A word to the reader within the page, and the word that something is being worked out. */
import type { ComponentChildren, VNode } from 'preact'

export interface NoticeProps {
  /** `plain` tells, `good` went well, `wrong` went wrong, `caution` asks for care. */
  readonly sort?: 'plain' | 'good' | 'wrong' | 'caution'
  readonly title?: string
  /** Said at once to those who listen. */
  readonly urgent?: boolean
  readonly children: ComponentChildren
}

/** Each sort begins with its own word, so that none is told by colour alone. */
const WORDS = { plain: 'Note', good: 'Done', wrong: 'Went wrong', caution: 'Caution' } as const

export function Notice({ sort = 'plain', title, urgent, children }: NoticeProps): VNode {
  return (
    <div class={`notice ${sort}`} role={urgent === true ? 'alert' : undefined}>
      <p class="notice-title">{title ?? WORDS[sort]}</p>
      <div class="notice-text">{children}</div>
    </div>
  )
}

export interface BusyProps {
  /** What is going on, and how far it is. */
  readonly tells?: string | undefined
}

export function Busy({ tells }: BusyProps): VNode {
  return (
    <p class="busy" role="status">
      <span class="busy-mark" aria-hidden="true" />
      {tells ?? 'Working it out…'}
    </p>
  )
}
