import { type CableConstants, equivalentPi } from 'ringproof/parts/equivalent-pi'
import { add, type Complex, divide, modulus, multiply, subtract } from '../../support/complex.ts'

const ONE = { re: 1, im: 0 }

/** A chain matrix: V₁ = A·V₂ + B·I₂, I₁ = C·V₂ + D·I₂. */
export interface Chain {
  readonly a: Complex
  readonly b: Complex
  readonly c: Complex
  readonly d: Complex
}

/** Constants of a pair for its whole length from those of a kilometre of the loop. */
export function pair(r: number, l: number, c: number, g: number, kilometres: number): CableConstants {
  return {
    resistance: (r / 2) * kilometres,
    inductance: (l / 2) * kilometres,
    capacitance: c * kilometres,
    leakance: g * kilometres,
  }
}

/** The π of series impedance z with y at each end, as a chain matrix. */
export function piChain(z: Complex, y: Complex): Chain {
  const a = add(ONE, multiply(z, y))
  return { a, b: z, c: multiply(y, add(a, ONE)), d: a }
}

/** The π that the law of a pair states, as a chain matrix: the loop's impedance is that of both wires. */
export function chainOf(constants: CableConstants, frequency: number): Chain {
  const { series, shunt } = equivalentPi(constants, 2, 2 * Math.PI * frequency)
  if (series === undefined) throw new Error('nothing gets through')
  return piChain({ re: 2 * series.re, im: 2 * series.im }, shunt)
}

/** One after the other. */
export function cascade(p: Chain, q: Chain): Chain {
  const sum = (s: Complex, t: Complex, u: Complex, v: Complex) => add(multiply(s, t), multiply(u, v))
  return {
    a: sum(p.a, q.a, p.b, q.c),
    b: sum(p.a, q.b, p.b, q.d),
    c: sum(p.c, q.a, p.d, q.c),
    d: sum(p.c, q.b, p.d, q.d),
  }
}

/** The square root with a real part at or above 0. */
export function root(z: Complex): Complex {
  const size = modulus(z)
  const re = Math.sqrt((size + z.re) / 2)
  const im = Math.sqrt((size - z.re) / 2)
  return { re, im: z.im < 0 ? -im : im }
}

/** Characteristic impedance √(B/C) and propagation ln(A + √(BC)), the angle between −π and π. */
export function imageOf(chain: Chain): { zc: Complex; theta: Complex } {
  const e = add(chain.a, root(multiply(chain.b, chain.c)))
  return {
    zc: root(divide(chain.b, chain.c)),
    theta: { re: Math.log(modulus(e)), im: Math.atan2(e.im, e.re) },
  }
}

/** Input impedance of a chain behind which stands `load`; open when absent. */
export function inputOf(chain: Chain, load?: Complex): Complex {
  if (load === undefined) return divide(chain.a, chain.c)
  return divide(add(multiply(chain.a, load), chain.b), add(multiply(chain.c, load), chain.d))
}

/** A·D − B·C, 1 for a reciprocal two-port. */
export function determinant(chain: Chain): Complex {
  return subtract(multiply(chain.a, chain.d), multiply(chain.b, chain.c))
}
