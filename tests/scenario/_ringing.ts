import { type CheckAnswer, figures } from 'ringproof'
import type { SheetText } from 'ringproof/sheet/shelf'
import { DEMO, verdictsOf } from '../support/bench.ts'
import { add, type Complex, divide, modulus } from '../support/complex.ts'

/** 75 V at 25 Hz, later 50 V, behind 400 Ω and without cable: what is left to say is the house. */
export const IDEAL: SheetText = {
  file: 'ideal.yaml',
  text: [
    'ringproof: 1',
    'sheet: line',
    'name: ideal',
    'feed: {voltage: 50 V, resistance: 400 Ω, negative: b wire, earth: positive pole}',
    'ringing: {voltage: 75 V, frequency: 25 Hz, wave: sine, source: 400 Ω, sent to: b wire, over battery: 50 V}',
    'speech: {impedance: [600 Ω]}',
    '',
  ].join('\n'),
}
const SOURCE: Complex = { re: 400, im: 0 }
/** A master socket: 1.8 µF, and 470 kΩ beside the bells. */
const CAPACITOR: Complex = { re: 0, im: -1 / (2 * Math.PI * 25 * 1.8e-6) }
const RESISTOR: Complex = { re: 470e3, im: 0 }

/** A bell at 25 Hz by its resistance, what is in series, and its inductance. */
export const bellOf = (resistance: number, series: number, inductance: number): Complex => ({
  re: resistance + series,
  im: 2 * Math.PI * 25 * inductance,
})
/** A fescue's bell behind its 3.3 kΩ, by its sheet. */
export const FESCUE: Complex = bellOf(1000, 3300, 12)

const real = (re: number): Complex => ({ re, im: 0 })
/** Side by side. */
export const beside = (...all: readonly Complex[]): Complex =>
  divide(real(1), all.map((z) => divide(real(1), z)).reduce(add))

/** mA rms in each bell between ringing lead and a wire, on the ideal line. */
export function shares(bells: readonly Complex[]): readonly number[] {
  return turned(bells, undefined).right
}

/** mA rms in bells that are right, and in one that is reversed at its cord and lies across the capacitor. */
export function turned(
  bells: readonly Complex[],
  reversed: Complex | undefined,
): { readonly right: readonly number[]; readonly reversed: number } {
  const below = beside(RESISTOR, ...bells)
  const above = reversed === undefined ? CAPACITOR : beside(CAPACITOR, reversed)
  const total = 75e3 / modulus(add(SOURCE, add(above, below)))
  const across = (z: Complex, bell: Complex): number => (total * modulus(z)) / modulus(bell)
  return {
    right: bells.map((bell) => across(below, bell)),
    reversed: reversed === undefined ? 0 : across(above, reversed),
  }
}

/** mA in every bell of premises by its place: rms while it rings, or direct on-hook. */
export function bellsOf(
  target: string,
  on: string | SheetText = IDEAL,
  only: 'ringing.current' | 'bell.direct-current' = 'ringing.current',
): Readonly<Record<string, number>> {
  const where = typeof on === 'string' ? { target, on } : { target, onText: on }
  const found = figures({ ...where, only }, DEMO).figures
  return Object.fromEntries(
    found.map(({ subject, value }) => [
      subject.split('/')[0] ?? subject,
      1e3 * Math.abs(value ?? Number.NaN),
    ]),
  )
}

/** Places whose verdict of a check is this. */
export function places(answer: CheckAnswer, id: string, state: RegExp): readonly string[] {
  return verdictsOf(answer, id)
    .filter((one) => state.test(one.state))
    .map(({ subject }) => subject.split('/')[0] ?? subject)
}
/** Places whose bell rings by a check, with everything plugged in when none is said. */
export const rings = (answer: CheckAnswer, id = 'bell.rings-with-all'): readonly string[] =>
  places(answer, id, /^(holds|marginal)$/)
/** Places whose bell does not. */
export const silent = (answer: CheckAnswer, id = 'bell.rings-with-all'): readonly string[] =>
  places(answer, id, /^fails$/)
