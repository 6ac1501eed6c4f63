import fc from 'fast-check'
import { unit } from 'mathjs'
import { type Dimension, readQuantity } from 'ringproof/quantities/quantity'
import { describe, expect, it } from 'vitest'
import { SEED } from '../support/seed.ts'

/** Units and prefixes that both read in the same spelling, all sane with up to six digits before the point. */
const common: readonly (readonly [Dimension, string, readonly string[]])[] = [
  ['resistance', 'ohm', ['n', 'u', 'm', '', 'k', 'M', 'G']],
  ['capacitance', 'F', ['p', 'n', 'u']],
  ['inductance', 'H', ['n', 'u', 'm']],
  ['voltage', 'V', ['n', 'u', 'm']],
  ['current', 'A', ['p', 'n', 'u', 'm']],
  ['frequency', 'Hz', ['m', '', 'k']],
  ['conductance', 'S', ['n', 'u', 'm', '']],
  ['power', 'W', ['n', 'u', 'm']],
  ['length', 'm', ['u', 'm', 'c', '']],
  ['time', 's', ['n', 'u', 'm', '']],
]

/** Size of one unit in the last place of a positive normal double. */
function lastPlace(value: number): number {
  return 2 ** (Math.floor(Math.log2(value)) - 52)
}

function valueIn(text: string, dimension: Dimension): number {
  const result = readQuantity(text, dimension)
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.fault)}`)
  return result.quantity.value
}

describe('a general library of units', () => {
  it('makes the same value of the same text, but for the rounding of its multiplications', () => {
    const written = fc.constantFrom(...common).chain(([dimension, symbol, prefixes]) =>
      fc
        .tuple(fc.constantFrom(...prefixes), fc.integer({ min: 1, max: 999_999 }), fc.nat(5))
        .map(([prefix, digits, places]) => ({
          dimension,
          symbol,
          text: `${(digits / 10 ** places).toFixed(places)} ${prefix}${symbol}`,
        })),
    )
    let same = 0
    fc.assert(
      fc.property(written, ({ dimension, symbol, text }) => {
        const ours = valueIn(text, dimension)
        const theirs = unit(text).toNumber(symbol)
        // they round the number, the prefix and the product, ours is the nearest double (proved in tests/unit/quantities):
        // three halves of a last place, doubled where a power of two lies between
        expect(Math.abs(ours - theirs) / lastPlace(ours), text).toBeLessThanOrEqual(2)
        if (ours === theirs) same++
      }),
      { seed: SEED, numRuns: 3000 },
    )
    expect(same).toBeGreaterThan(1500)
  })

  it('agrees on degrees', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3600 }), (tenths) => {
        const text = `${tenths / 10} deg`
        const ours = valueIn(text, 'angle')
        const theirs = unit(text).toNumber('rad')
        expect(Math.abs(ours - theirs) / lastPlace(ours), text).toBeLessThanOrEqual(1)
      }),
      { seed: SEED, numRuns: 1000 },
    )
  })
})
