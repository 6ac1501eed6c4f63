/** A plug contact is never shown by one number alone. */
import { numbersText } from '../netlist/plug-numbers.ts'
import type { Page } from './paint.ts'

/** ` (wiring 3, contact 4)` behind the name of a plug contact, nothing behind any other. */
export function numbersBehind(id: string, page: Page): string {
  const numbers = page.plugs?.get(id)
  return numbers === undefined ? '' : ` (${numbersText(numbers)})`
}
