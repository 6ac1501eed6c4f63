import * as fc from 'fast-check'
import { solveTwice } from 'ringproof/opinion/answers'
import { describe, expect, test } from 'vitest'
import {
  add,
  decimal,
  divide,
  type Fraction,
  isNil,
  multiply,
  NIL,
  negative,
  ONE,
  solveExactly,
  subtract,
} from '../../support/fractions.ts'
import { decimalQuantity } from '../../support/quantity-text.ts'
import { SEED } from '../../support/seed.ts'
import { shelfOf } from '../../support/sheets.ts'

/** A resistor or a source between two nodes of a random network. */
interface Leg {
  readonly from: number
  readonly to: number
  readonly digits: number
  readonly decade: number
}

const leg = fc.record({
  from: fc.nat(5),
  to: fc.nat(5),
  digits: fc.integer({ min: 100, max: 999 }),
  decade: fc.integer({ min: -3, max: 8 }),
})

/** Networks of six nodes, earth among them: a chain of resistors so that all hang together, and others anywhere. */
const networks = fc.record({
  chain: fc.array(leg, { minLength: 5, maxLength: 5 }),
  others: fc.array(leg, { minLength: 2, maxLength: 8 }),
  volts: fc.integer({ min: 100, max: 999 }),
})

const node = (k: number): string => (k === 0 ? 'earth' : `n${k}`)

function legsOf({ chain, others }: { chain: readonly Leg[]; others: readonly Leg[] }): Leg[] {
  return [
    ...chain.map((one, k) => ({ ...one, from: k, to: k + 1 })),
    ...others.map((one) => (one.from === one.to ? { ...one, to: (one.to + 1) % 6 } : one)),
  ]
}

/** Kirchhoff's laws in fractions: the potentials, then the source's current. The source stands from n5 to earth. */
function exactly(legs: readonly Leg[], volts: Fraction): { voltages: Fraction[]; currents: Fraction[] } {
  const rows = Array.from({ length: 6 }, () => Array.from({ length: 7 }, () => NIL))
  const put = (row: number, column: number, value: Fraction): void => {
    const own = rows[row]
    if (own !== undefined) own[column] = add(own[column] ?? NIL, value)
  }
  const conductance = (one: Leg): Fraction => divide(ONE, decimal(`${one.digits}e${one.decade - 2}`))
  for (const one of legs) {
    const g = conductance(one)
    for (const [p, q] of [
      [one.from, one.to],
      [one.to, one.from],
    ] as const) {
      if (p === 0) continue
      put(p - 1, p - 1, g)
      if (q !== 0) put(p - 1, q - 1, negative(g))
    }
  }
  put(4, 5, ONE)
  put(5, 4, ONE)
  put(5, 6, volts)
  const solved = solveExactly(rows)
  const at = (k: number): Fraction => (k === 0 ? NIL : (solved[k - 1] ?? NIL))
  return {
    voltages: solved.slice(0, 5),
    currents: [...legs.map((one) => multiply(conductance(one), subtract(at(one.from), at(one.to)))), at(6)],
  }
}

/** |found − wanted| ≤ 10^−38 |wanted|, in fractions. */
function expectDigits(found: unknown, wanted: Fraction, what: string): void {
  if (isNil(wanted)) {
    expect(found, what).toBe('0')
    return
  }
  const share = divide(subtract(decimal(String(found)), wanted), wanted)
  const size = share.numerator < 0n ? -share.numerator : share.numerator
  expect(size * 10n ** 38n <= share.denominator, `${what}: ${found}`).toBe(true)
}

describe('a second opinion in forty digits', () => {
  // exact fractions: Kirchhoff's laws solved without any rounding
  test('has the voltages and currents of random resistive networks to 38 of them', async () => {
    const drawn = fc.sample(networks, { seed: SEED, numRuns: 12 })
    for (const network of drawn) {
      const legs = legsOf(network)
      const volts = decimalQuantity(network.volts, -1, 'V')
      const lines = legs.map(({ from, to, digits, decade }, k) => {
        const { text } = decimalQuantity(digits, decade - 2, 'Ω')
        return `  r${k}: {kind: resistor, from: ${node(from)}, to: ${node(to)}, resistance: ${text}}`
      })
      const text = `ringproof: 1\nsheet: circuit\nname: net\nparts:\n${lines.join('\n')}\n  e: {kind: voltage-source, from: n5, to: earth, direct: ${volts.text}}\n`
      const answer = await solveTwice({ target: '', text: { file: 'net.yaml', text } }, shelfOf([]), {
        digits: 40,
      })
      const { voltages = {}, currents = {} } = answer['second opinion'] ?? {}
      const wanted = exactly(legs, decimal(`${network.volts}e-1`))
      for (const [k, value] of wanted.voltages.entries())
        expectDigits(voltages[`net/n${k + 1}`], value, `n${k + 1}`)
      wanted.currents.forEach((value, k) => {
        const id = k < legs.length ? `net/r${k}` : 'net/e'
        expectDigits(currents[id], value, id)
      })
    }
  })

  test('is what a shorter one is the beginning of', async () => {
    const text =
      'ringproof: 1\nsheet: circuit\nname: net\nparts:\n  e: {kind: voltage-source, from: p, to: earth, direct: 1 V}\n  r: {kind: resistor, from: p, to: q, resistance: 1 Ω}\n  s: {kind: resistor, from: q, to: earth, resistance: 2 Ω}\n'
    const of = async (digits: number) => {
      const answer = await solveTwice({ target: '', text: { file: 'net.yaml', text } }, shelfOf([]), {
        digits,
      })
      return answer['second opinion']?.voltages?.['net/q']
    }
    expect(await of(16)).toBe('0.6666666666666667')
    expect(await of(100)).toBe(`0.${'6'.repeat(99)}7`)
  })
})
