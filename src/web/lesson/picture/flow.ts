/** Which way currents go at one moment: the one when the ringing leaves the exchange on the wire that it is sent on. */
import { type HouseReading, type Phasor, sizeOf } from '../rig/reading.ts'

const NIL: Phasor = { re: 0, im: 0 }

/** Sum of the cores of all sets, or of those at these places, into the sets on one wire, A rms. */
export function sumInto(
  { currents }: HouseReading,
  core: 'a' | 'b' | 'ringing',
  places?: readonly string[],
): Phasor {
  let sum = NIL
  for (const [id, current] of currents) {
    const [place = '', branch] = id.split('/')
    if (branch !== `line.${core}` || (places !== undefined && !places.includes(place))) continue
    sum = { re: sum.re + current.re, im: sum.im + current.im }
  }
  return sum
}

/** 1 when a current goes the way that it is counted at the chosen moment, −1 when against it. */
export function sense(reading: HouseReading, current: Phasor): number {
  const whole = reading.currents.get('box/cable.b') ?? NIL
  const along = current.re * whole.re + current.im * whole.im
  return along < 0 ? -1 : 1
}

/** Into the sets (1) or out of them (−1) on a wire. */
export function downward(reading: HouseReading, core: 'a' | 'b' | 'ringing'): number {
  return sense(reading, sumInto(reading, core))
}

export { sizeOf }
