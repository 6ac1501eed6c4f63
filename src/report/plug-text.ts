/** Contacts of plugs and sockets by number: both numberings, always together. */
import type { Stands } from '../answer/stands.ts'
import { type ContactNumbers, NUMBERED_WIRES, numbersText } from '../netlist/plug-numbers.ts'
import type { Page } from './paint.ts'
import { shortId } from './place-names.ts'
import { table } from './table.ts'
import { hanging } from './wrap.ts'

/** The contacts of every set that stands somewhere, by core's end and by link. */
export function plugNumbers(stands: Stands | undefined): NonNullable<Page['plugs']> {
  const sets = stands?.sets ?? []
  return new Map(
    sets.flatMap(({ place, plug }) =>
      plug.flatMap(({ node, wiring, contact }) =>
        // the link between plug and socket is named by the wiring number
        [node, `${place}/plug.${wiring}`].map((id) => [id, { wiring, contact }] as const),
      ),
    ),
  )
}

/** One line for a cord that ends in a plug: `a: wiring 5, contact 2; b: …`; nothing where no number is known. */
export function plugLine(cores: readonly string[], place: string, page: Page): string[] {
  const known = cores.flatMap((id) => {
    const numbers = page.plugs?.get(id)
    return numbers === undefined
      ? []
      : [`${shortId(id, place).replace(/^plug\./, '')}: ${numbersText(numbers)}`]
  })
  return known.length === 0 ? [] : hanging('  plug  ', known.join('; '), page.width)
}

/** Why neither number is ever given alone. */
export const AMBIGUOUS: string =
  'One number alone is ambiguous: k in one numbering is 7 − k in the other. The pair hides it, but 3 is the ringing lead by one and the earth by the other.'

/** Wires of a socket with both numbers of each, and why one alone says nothing. */
export function numberingTable(page: Page): string[] {
  const spares = NUMBERED_WIRES.filter(({ wire }) => wire === 'spare')
  const wires = NUMBERED_WIRES.filter(({ wire }) => wire !== 'spare')
  const heads = [
    { heading: 'wire' },
    ...wires.map(({ wire }) => ({ heading: wire, align: 'right' as const })),
    { heading: 'spare', align: 'right' as const },
  ]
  const row = (title: string, key: keyof ContactNumbers): string[] => [
    title,
    ...wires.map((one) => String(one[key])),
    spares.map((one) => one[key]).join(', '),
  ]
  return [
    page.paint.bold('Plugs and sockets by number'),
    ...table(heads, [row('wiring terminal', 'wiring'), row('contact', 'contact')], page),
    ...hanging('  ', AMBIGUOUS, page.width),
  ]
}
