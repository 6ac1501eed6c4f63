import { seededRandom } from 'ringproof/algebra/random'
import { describe, expect, test } from 'vitest'
import { SEED } from '../support/seed.ts'
import { drawWide, wideErrors } from '../support/wide-range.ts'

describe('resistors from 1 mΩ to 1 GΩ in one network', () => {
  // Kirchhoff's laws in exact fractions; the claim of nine digits is our own
  test('every voltage and current of 150 random networks is good to nine digits', () => {
    const random = seededRandom(SEED)
    const errors = Array.from({ length: 150 }, () => wideErrors(drawWide(random)))
    const good = (way: keyof (typeof errors)[number]): number =>
      errors.filter((one) => one[way] <= 1e-9).length
    expect(good('refined')).toBe(150)
    // what the refinement is for: sums of conductances alone reach nine digits in few of them
    expect(good('conductances')).toBeLessThan(75)
    expect(good('equations')).toBeGreaterThan(good('conductances'))
  })
})
