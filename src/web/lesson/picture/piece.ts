/** A piece of wire of the picture with the current that it carries: what is drawn, and what must add up where pieces meet. */
import type { Mark } from '../../../index.ts'
import type { HouseReading, Phasor } from '../rig/reading.ts'
import { sense, sizeOf } from './flow.ts'
import { arrow, wire } from './symbols.ts'

export type Point = readonly [x: number, y: number]

export interface Piece {
  /** From where its current is counted to where. */
  readonly points: readonly Point[]
  readonly current: Phasor
  /** Where its arrow stands; it lies on a straight stretch between the last two points. */
  readonly tip?: Point
}

/** A wire as heavy as its current, and its arrow. */
export function pieceMarks(
  { points, current, tip }: Piece,
  reading: HouseReading | undefined,
): readonly Mark[] {
  const size = sizeOf(current)
  const [from, to] = points.slice(-2)
  if (tip === undefined || reading === undefined || from === undefined || to === undefined)
    return [wire(points, size)]
  const way = sense(reading, current)
  const head = arrow(...tip, way * Math.sign(to[0] - from[0]), way * Math.sign(to[1] - from[1]), size)
  return [wire(points, size), ...(head === undefined ? [] : [head])]
}
