/** On paper nothing can be opened: what fails is printed with its figures, the rest with its lines. */

const TO_OPEN = ['.bench-fault', '.verdict.fails', '.verdict.marginal', '.bench-holds']
  .map((one) => `.bench-verdicts ${one}:not([open])`)
  .join(', ')

/** Opens before a print and closes again after it, until it is ended. */
export function openForPrint(): () => void {
  let opened: readonly HTMLDetailsElement[] = []
  const before = (): void => {
    opened = [...document.querySelectorAll<HTMLDetailsElement>(TO_OPEN)]
    for (const one of opened) one.open = true
  }
  const after = (): void => {
    for (const one of opened) one.open = false
    opened = []
  }
  addEventListener('beforeprint', before)
  addEventListener('afterprint', after)
  return () => {
    removeEventListener('beforeprint', before)
    removeEventListener('afterprint', after)
  }
}
