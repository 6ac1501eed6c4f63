/** Where things lie in the picture. Three wires run down: a wire, third wire, b wire; the sets hang below each other. */
export type { HouseReading } from '../rig/reading.ts'

export const WIDTH = 424
/** The three wires. */
export const A = 40
export const T = 150
export const B = 260
/** Where the exchange stands. */
export const EXCHANGE = 34
/** The resistor of the master socket lies just below this. */
export const MASTER_HEAD = 132
export const ROW = 84
/** So far above its bell lies what else a set has between the wires. */
export const TAP = 32

/** The height of a set's bell; counted from 0. */
export function rowY(at: number): number {
  return MASTER_HEAD + 130 + at * ROW
}
