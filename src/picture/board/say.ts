/** What each thing of a terminal picture is, in words: everything that the picture shows. */
import { formatQuantity } from '../../quantities/format.ts'
import type { Flow } from '../circuit/circuit.ts'
import type { BoardCore, BoardPart, BoardSlot, BoardStrap, CoreColour } from './board.ts'

const HELD = { screw: 'held by screws', solder: 'soldered', board: 'part of the board' } as const

/** `turquoise TQ`; the word alone where there is no code. */
export function colourText({ word, code }: CoreColour): string {
  return code === undefined ? word : `${word} ${code}`
}

/** `core handset r2, turquoise TQ, on B3, moved from B2`. */
export function sayCore({ cord, core, colour, lands, was, endsIn }: BoardCore): string {
  return [
    `core ${cord} ${core}`,
    ...(colour === undefined ? [] : [colourText(colour)]),
    lands === undefined ? 'parked, on nothing' : `on ${lands}`,
    `to the ${endsIn}`,
    ...(was === undefined ? [] : [`moved, it was ${was === 'parked' ? 'parked' : `on ${was}`}`]),
  ].join(', ')
}

/** `strap B3 to B4, soldered: only a cut takes it away`. */
export function sayStrap({ from, to, hold, fixed, change }: BoardStrap): string {
  return [`strap ${from} to ${to}`, fixed ?? HELD[hold], ...(change === undefined ? [] : [change])].join(', ')
}

/** `bell-resistor, resistor, 3.3 kΩ, C1 to C2`. */
export function sayPart(part: BoardPart): string {
  const { name, says, values, fixed, change, bridged } = part
  return [
    name,
    ...(says === name ? [] : [says]),
    ...(values === '' ? [] : [values]),
    waysOf(part),
    ...(bridged ? ['bridged'] : []),
    ...(fixed === undefined ? [] : [fixed]),
    ...(change === undefined ? [] : [change]),
  ].join(', ')
}

/** `C1 to C2`; of several branches `a A4 to A5, b A5 to A6`. */
export function waysOf({ ends }: BoardPart): string {
  return ends
    .filter((_, k) => k % 2 === 0)
    .map(({ branch, on, other }) => `${branch === undefined ? '' : `${branch} `}${on} to ${other}`)
    .join(', ')
}

/** `slot regulator, unit vetch fitted, p1 on A3, p2 on A4`. */
export function saySlot({ name, fitted, needsUnit, sockets, change }: BoardSlot): string {
  return [
    `slot ${name}`,
    fitted === undefined ? (needsUnit ? 'empty, needs a unit' : 'empty') : `unit ${fitted} fitted`,
    ...sockets.map(({ pin, terminal }) => `${pin} on ${terminal}`),
    ...(change === undefined ? [] : [change]),
  ].join(', ')
}

/** `carries 32.1 mA, from A1 to A2`; nothing of what carries nothing. */
export function sayFlow(flow: Flow | undefined, first: string, second: string): readonly string[] {
  if (flow === undefined || flow.weight === 0) return []
  const way = flow.sense > 0 ? `from ${first} to ${second}` : `from ${second} to ${first}`
  const size = `carries ${formatQuantity(flow.size, 'A', 3)}`
  return [flow.sense === 0 || first === '' ? size : `${size} ${way}`]
}
