/** Escape puts down what is in the hand, wherever the focus is. */
import { hand, putDown } from '../state/hand.ts'

export function putDownByKey(): () => void {
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented || hand.peek() === undefined) return
    if (document.querySelector('dialog[open]') !== null) return
    putDown()
  }
  addEventListener('keydown', pressed)
  return () => removeEventListener('keydown', pressed)
}
