/** Currents of the picture, and which way they go at one moment: when the ringing leaves the exchange on its wire. */
import type { HouseSet } from '../rig/house.ts'
import { type HouseReading, type Phasor, sizeOf } from '../rig/reading.ts'

export const NIL: Phasor = { re: 0, im: 0 }

export const plus = (one: Phasor, other: Phasor): Phasor => ({ re: one.re + other.re, im: one.im + other.im })
export const minus = ({ re, im }: Phasor): Phasor => ({ re: -re, im: -im })

/** The current of a branch, as it is counted there; none where nothing is solved. */
export function currentOf(reading: HouseReading | undefined, branch: string): Phasor {
  return reading?.currents.get(branch) ?? NIL
}

/** What a wire of the house carries down into these sets. A set turned over at its plug has its a core on the b wire. */
export function below(
  core: 'a' | 'b' | 'ringing',
  sets: readonly HouseSet[],
  reading: HouseReading | undefined,
): Phasor {
  const other = core === 'a' ? 'b' : core === 'b' ? 'a' : 'ringing'
  return sets
    .map(({ place, turned }) => currentOf(reading, `${place}/line.${turned === true ? other : core}`))
    .reduce(plus, NIL)
}

/** 1 when a current goes the way that it is counted at the chosen moment, −1 when against it. */
export function sense(reading: HouseReading, current: Phasor): number {
  const whole = currentOf(reading, 'box/cable.b')
  const along = current.re * whole.re + current.im * whole.im
  return along < 0 ? -1 : 1
}

export { sizeOf }
