import { DIMENSIONS, type Dimension } from './units.ts'

/** Why a text is not the quantity that was due. */
export type QuantityFaultCode =
  | 'unit-missing'
  | 'unit-wrong'
  | 'quantity-unreadable'
  | 'quantity-out-of-range'

/** One refused quantity, as data; the fields are those of a problem, so that a reader only adds the place. */
export interface QuantityFault {
  readonly code: QuantityFaultCode
  /** the text as written, in backticks, cut and cleaned for display */
  readonly found: string
  /** a noun phrase: `a resistance such as 3.3 kΩ` */
  readonly expected: string
  /** an imperative: write `3.3 kΩ` */
  readonly mend?: string
  /** offset of the trouble inside the text, in UTF-16 units */
  readonly at?: number
}

/** A refusal by any reader of this folder. */
export interface Refused {
  readonly ok: false
  readonly fault: QuantityFault
}

const shown = 32

/** The text as a message may show it: in backticks, trimmed, at most 32 characters, nothing invisible that could steer a terminal. */
export function quote(text: string): string {
  if (text.trim() === '') return 'nothing'
  // 4 units a shown character leave room for blanks to be trimmed; the rest of a huge text is never touched
  const start = text.trimStart().slice(0, 4 * shown)
  const clean = Array.from(start.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, '·').trimEnd())
  const cut = clean.length > shown || start.length < text.trim().length
  return `\`${cut ? `${clean.slice(0, shown - 1).join('')}…` : clean.join('')}\``
}

/** `a resistance such as 3.3 kΩ` */
export function wanted(dimension: Dimension): string {
  const row = DIMENSIONS[dimension]
  return `${row.says} such as ${row.example}`
}

/** Makes a refusal; `mend` and `at` are left out where unknown. */
export function refuse(
  code: QuantityFaultCode,
  text: string,
  expected: string,
  mend: string | undefined,
  at: number | undefined,
): Refused {
  return {
    ok: false,
    fault: {
      code,
      found: quote(text),
      expected,
      ...(mend === undefined ? {} : { mend }),
      ...(at === undefined ? {} : { at }),
    },
  }
}
