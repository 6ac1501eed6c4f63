/** Why an answer was not understood, for the field in which it stands: without the code that only programs need. */
import type { Problem } from '../../../index.ts'

export function problemText({ found, expected, mend }: Problem): string {
  const help = mend === undefined ? '' : ` ${mend.slice(0, 1).toUpperCase()}${mend.slice(1)}.`
  return `Not understood: ${found}. Expected: ${expected}.${help}`
}
