/** Where the focus goes when what was in its place has gone. */

/** Gives the focus to the view's heading: those who listen hear where they are. */
export function focusHeading(): void {
  const heading = document.querySelector<HTMLElement>('main h1')
  if (heading === null) return
  // a heading is reached by no key, but can be spoken to
  heading.tabIndex = -1
  heading.focus({ preventScroll: true })
}

/** The same where the focus was lost with what had it; whoever has pressed nothing yet begins at the top. */
export function saveFocus(): void {
  const isLost = document.activeElement === document.body || document.activeElement === null
  if (isLost && navigator.userActivation?.hasBeenActive !== false) focusHeading()
}
