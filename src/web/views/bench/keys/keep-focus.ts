/** The focus is never lost on the bench: what had it may go with a move, and then its section takes over. */

interface Last {
  readonly element: Element
  readonly thing: string | null
  /** Where it stood, from the nearest outwards: one of them is still there. */
  readonly around: readonly Element[]
}

const isNobody = (one: Element | null): boolean => one === null || one === document.body

/** Keeps the focus within, until it is ended. */
export function keepFocus(root: HTMLElement): () => void {
  let last: Last | undefined
  const noted = ({ target }: FocusEvent): void => {
    if (!(target instanceof Element)) return
    // a dialog gives the focus back by itself
    last =
      target.closest('dialog') === null
        ? { element: target, thing: target.getAttribute('data-thing'), around: aroundOf(target, root) }
        : undefined
  }
  const left = ({ target }: FocusEvent): void => {
    queueMicrotask(() => {
      // whoever goes elsewhere by themselves is let go; what is taken away has lost the focus to nobody
      if (last?.element === target && last.element.isConnected) last = undefined
    })
  }
  const changed = new MutationObserver(() => {
    if (last === undefined || last.element.isConnected || !isNobody(document.activeElement)) return
    const next = successor(last, root)
    last = undefined
    next?.focus({ preventScroll: true })
  })
  root.addEventListener('focusin', noted)
  root.addEventListener('focusout', left)
  changed.observe(root, { childList: true, subtree: true })
  return () => {
    changed.disconnect()
    root.removeEventListener('focusin', noted)
    root.removeEventListener('focusout', left)
  }
}

function aroundOf(target: Element, root: Element): readonly Element[] {
  const around: Element[] = []
  for (let one = target.closest('section'); one !== null && root.contains(one); ) {
    around.push(one)
    one = one.parentElement?.closest('section') ?? null
  }
  return around
}

type Focusable = HTMLElement | SVGElement

/** The same thing drawn anew, or else the section: a picture's frame takes the focus itself, others by their heading. */
function successor({ thing, around }: Last, root: HTMLElement): Focusable | undefined {
  const there = around.find((one) => one.isConnected)
  const same =
    thing === null
      ? undefined
      : (there ?? root).querySelector<Focusable>(`[data-thing="${CSS.escape(thing)}"][tabindex]`)
  if (same != null) return same
  if (there instanceof HTMLElement && there.tabIndex >= 0) return there
  const heading = (there ?? root).querySelector<HTMLElement>('h2, h1')
  heading?.setAttribute('tabindex', '-1')
  return heading ?? undefined
}
