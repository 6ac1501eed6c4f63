/**
 * A length of cable, exactly, by its equivalent π: two wires, or three that lie alike.
 *
 * Each wire has the series impedance Z = R + jωL and each two wires have the admittance Y = G + jωC between
 * them, all for the whole length. For wires that are alike and equally near to each other every set of currents
 * that sum to zero has the same propagation γl = θ with θ² = n·Z·Y for n wires, so that one π is exact for all of
 * them, however long the cable:
 *
 *   in each wire                    Z·sinh(θ)/θ
 *   between each two, at each end   (Y/2)·tanh(θ/2)/(θ/2)
 *
 * For a pair, n = 2: Z is half of the loop's impedance and θ = l·√((R + jωL)(G + jωC)) of the textbooks.
 * At 0 Hz, at 0 km and without losses the same code holds. Without any losses the π has poles where the cable is
 * exactly half a wave long, or an odd multiple of it; a cable that loses anything has none.
 *
 * Currents to earth, which run in all wires at once and return another way, see Z·sinh(θ)/θ of each wire, side by
 * side. That is right for direct current and for lengths far below a wave; a wire's capacitance to earth is left
 * out. So is skin effect: R and L are those of low frequencies.
 *
 * @source the equivalent π of a uniform line: any textbook of transmission lines; more wires by symmetry, derived
 */
import { type Complex, multiply, rootOf } from './complex.ts'
import { sinhc, tanhcHalf } from './hyperbolic.ts'

/** Constants of the whole length of cable, in SI units. */
export interface CableConstants {
  /** of one wire, Ω and H */
  readonly resistance: number
  readonly inductance: number
  /** between each two wires, F and S */
  readonly capacitance: number
  readonly leakance: number
}

/** The π of a cable: v = `series`·i in each wire, i = `shunt`·v at each end. */
export interface EquivalentPi {
  /** Ω of each wire; absent where the cable is so long that nothing gets through */
  readonly series: Complex | undefined
  /** S between each two wires, at each end */
  readonly shunt: Complex
}

/**
 * Above so many nepers nothing gets through: 1e-13 of a voltage, 260 dB. Each end then has the impedance of an
 * endless cable for itself.
 */
const ENDLESS = 30

/** The equivalent π of n wires at ω rad/s. */
export function equivalentPi(constants: CableConstants, wires: number, omega: number): EquivalentPi {
  const z = { re: constants.resistance, im: omega * constants.inductance }
  const y = { re: constants.leakance, im: omega * constants.capacitance }
  const w = multiply({ re: wires * z.re, im: wires * z.im }, y)
  const shunt = multiply({ re: y.re / 2, im: y.im / 2 }, tanhcHalf(w))
  return { series: rootOf(w).re > ENDLESS ? undefined : multiply(z, sinhc(w)), shunt }
}
