/** The two numberings of plugs and sockets, which mirror each other: one number alone means two contacts. */

/** One contact by both its numbers. */
export interface ContactNumbers {
  /** By the wiring terminals of the socket. */
  readonly wiring: number
  /** By the contacts of plug and socket. */
  readonly contact: number
}

/** What each wiring terminal is for; 1 and 6 are spare. */
export interface NumberedWire extends ContactNumbers {
  readonly wire: 'a wire' | 'b wire' | 'ringing lead' | 'earth' | 'spare'
}

/** Contacts of plug and socket: numbers run from 1 to this in both numberings. */
const CONTACTS = 6

/** Both numbers of a contact, from the wiring one: k there is 7 − k here. */
export function bothNumbers(wiring: number): ContactNumbers {
  return { wiring, contact: CONTACTS + 1 - wiring }
}

const NAMES: Readonly<Record<number, NumberedWire['wire']>> = {
  2: 'b wire',
  3: 'ringing lead',
  4: 'earth',
  5: 'a wire',
}

/**
 * Every contact in the order of the wiring numbering.
 * @source plugs and sockets of BS 6312: contact and wiring numbering and their mirror, at second hand (SEEN-S)
 */
export const NUMBERED_WIRES: readonly NumberedWire[] = Object.freeze(
  Array.from({ length: CONTACTS }, (_, k) => ({ wire: NAMES[k + 1] ?? 'spare', ...bothNumbers(k + 1) })),
)

/** Both numbers in words: `wiring 3, contact 4`. */
export function numbersText({ wiring, contact }: ContactNumbers): string {
  return `wiring ${wiring}, contact ${contact}`
}
