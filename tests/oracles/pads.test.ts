import { describe, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { degrees, divide, modulus } from '../support/complex.ts'
import { resistor, solved, source } from './_circuit.ts'

/** Losses in dB, from next to nothing to as much as any trunk has. */
const LOSSES = [0.1, 0.5, 1, 2, 3, 6, 10, 15, 20, 26, 40, 60, 80]
const IMPEDANCES = [50, 135, 600, 900]
/** Exact figures: n·eps·cond; a pad of 80 dB has a condition of some 1e4. */
const EXACT = { relative: 1e-11 }

interface Pad {
  /** parts from `in` to `out` */
  readonly parts: (z: number, k: number) => readonly string[]
  readonly says: string
}

// Matched attenuators of the textbooks, k the ratio of voltages; grade DERIVED.
const PADS: Readonly<Record<string, Pad>> = {
  T: {
    says: 'arms Z(k − 1)/(k + 1), shunt 2Zk/(k² − 1)',
    parts: (z, k) => [
      resistor('a', 'in', 'm', (z * (k - 1)) / (k + 1)),
      resistor('b', 'm', 'out', (z * (k - 1)) / (k + 1)),
      resistor('s', 'm', 'earth', (2 * z * k) / (k * k - 1)),
    ],
  },
  pi: {
    says: 'shunts Z(k + 1)/(k − 1), arm Z(k² − 1)/2k',
    parts: (z, k) => [
      resistor('a', 'in', 'earth', (z * (k + 1)) / (k - 1)),
      resistor('b', 'out', 'earth', (z * (k + 1)) / (k - 1)),
      resistor('s', 'in', 'out', (z * (k * k - 1)) / (2 * k)),
    ],
  },
  'bridged T': {
    says: 'arms Z, bridge Z(k − 1), shunt Z/(k − 1)',
    parts: (z, k) => [
      resistor('a', 'in', 'm', z),
      resistor('b', 'm', 'out', z),
      resistor('s', 'm', 'earth', z / (k - 1)),
      resistor('t', 'in', 'out', z * (k - 1)),
    ],
  },
}

describe.each(Object.entries(PADS))('a %s of resistors', (_name, { parts, says }) => {
  test.each(LOSSES)(`with ${says} is matched and loses %d dB`, (loss) => {
    const k = 10 ** (loss / 20)
    for (const z of IMPEDANCES) {
      for (const frequency of [undefined, 1000]) {
        const net = solved(
          [
            source('e', 'p', 2),
            resistor('rs', 'p', 'in', z),
            ...parts(z, k),
            resistor('rl', 'out', 'earth', z),
          ],
          frequency,
        )
        assertClose(divide(net.voltage('in'), net.current('rs')), z, EXACT, `${z} Ω: input`)
        assertClose(net.voltage('in'), 1, EXACT, `${z} Ω: half of the source`)
        assertClose(divide(net.voltage('in'), net.voltage('out')), k, EXACT, `${z} Ω: ratio`)
      }
    }
  })
})

describe('a lattice of resistors', () => {
  test.each(LOSSES)('with arms Z(k − 1)/(k + 1) and Z(k + 1)/(k − 1) is matched and loses %d dB', (loss) => {
    const k = 10 ** (loss / 20)
    const [near, far] = [(600 * (k - 1)) / (k + 1), (600 * (k + 1)) / (k - 1)]
    const net = solved([
      source('e', 'p', 2),
      resistor('rs', 'p', 'in', 600),
      resistor('a', 'in', 'x', near),
      resistor('b', 'earth', 'y', near),
      resistor('c', 'in', 'y', far),
      resistor('d', 'earth', 'x', far),
      resistor('rl', 'x', 'y', 600),
    ])
    assertClose(net.voltage('in'), 1, EXACT, 'input')
    assertClose(net.current('rl'), 1 / (600 * k), EXACT, 'current in the load')
  })
})

describe('a pad of least loss', () => {
  test.each([
    [600, 150],
    [600, 599],
    [75, 50],
    [10_000, 600],
  ])('joins %d Ω and %d Ω with √Z1(Z1 − Z2) and Z2√(Z1/(Z1 − Z2)), matched both ways', (first, second) => {
    const arm = Math.sqrt(first * (first - second))
    const shunt = second * Math.sqrt(first / (first - second))
    const power = (Math.sqrt(first / second) + Math.sqrt(first / second - 1)) ** 2
    const forth = solved([
      source('e', 'p', 2),
      resistor('rs', 'p', 'in', first),
      resistor('a', 'in', 'out', arm),
      resistor('s', 'out', 'earth', shunt),
      resistor('rl', 'out', 'earth', second),
    ])
    const back = solved([
      source('e', 'p', 2),
      resistor('rs', 'p', 'out', second),
      resistor('a', 'in', 'out', arm),
      resistor('s', 'out', 'earth', shunt),
      resistor('rl', 'in', 'earth', first),
    ])
    assertClose(forth.voltage('in'), 1, EXACT, 'input')
    assertClose(back.voltage('out'), 1, EXACT, 'output')
    assertClose(1 / first / (modulus(forth.voltage('out')) ** 2 / second), power, EXACT, 'loss forth')
    assertClose(1 / second / (modulus(back.voltage('in')) ** 2 / first), power, EXACT, 'loss back')
    assertClose(degrees(forth.voltage('out')), 0, { relative: 0, absolute: 1e-12 }, 'angle')
  })
})

test('pads in a row lose the sum of their losses', () => {
  const k = (loss: number) => 10 ** (loss / 20)
  const section = (at: number, loss: number): readonly string[] => [
    resistor(`a${at}`, `n${at}`, `m${at}`, (600 * (k(loss) - 1)) / (k(loss) + 1)),
    resistor(`b${at}`, `m${at}`, `n${at + 1}`, (600 * (k(loss) - 1)) / (k(loss) + 1)),
    resistor(`s${at}`, `m${at}`, 'earth', (1200 * k(loss)) / (k(loss) ** 2 - 1)),
  ]
  const row = [1, 3, 0.5, 10, 6].flatMap((loss, at) => section(at, loss))
  const net = solved([
    source('e', 'p', 2),
    resistor('rs', 'p', 'n0', 600),
    ...row,
    resistor('rl', 'n5', 'earth', 600),
  ])
  assertClose(divide(net.voltage('n0'), net.voltage('n5')), k(20.5), EXACT, 'ratio')
})
