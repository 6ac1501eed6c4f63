import * as fc from 'fast-check'
import { type InductionCoilSpec, inductionCoil } from 'ringproof/parts/induction-coil'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../support/seed.ts'
import { accepts, alternating, DIRECT, lawOf, spec } from './_heard.ts'

const winding = (from: string, to: string, resistance: string, inductance: string) => ({
  from,
  to,
  resistance,
  inductance,
})
const one = winding('p', 'q', '25 Ω', '4 H')
const two = winding('r', 's', '37 Ω', '9 H')
const three = winding('t', 'u', '30 Ω', '1 H')
const coil = (windings: object, coupling: number | object) => ({ kind: 'induction-coil', windings, coupling })
const problems = (windings: object, coupling: number | object) =>
  inductionCoil.check?.(spec(coil(windings, coupling)) as InductionCoilSpec) ?? []

describe('an induction coil', () => {
  test('has a branch a winding, named by it, from its start', () => {
    const read = spec(coil({ a: one, b: two }, 0.5)) as InductionCoilSpec
    expect(inductionCoil.branches(read)).toEqual([
      { suffix: 'a', from: 'p', to: 'q', form: 'equation' },
      { suffix: 'b', from: 'r', to: 's', form: 'equation' },
    ])
  })

  test('couples by jωk√(L₁L₂), positive between starts, both ways alike', () => {
    // closed form with ω = 5 rad/s, k = 0.5: M = 0.5·√(4·9) = 3 H
    const { branches, mutuals } = lawOf(coil({ a: one, b: two }, 0.5), alternating(5))
    expect(branches.map((heard) => 'z' in heard && heard.z)).toEqual([
      { re: 25, im: 20 },
      { re: 37, im: 45 },
    ])
    expect(mutuals).toEqual({ '0,1': { re: 0, im: 15 }, '1,0': { re: 0, im: 15 } })
  })

  test('is two resistances for direct current', () => {
    const { branches, mutuals } = lawOf(coil({ a: one, b: two }, -0.5), DIRECT)
    expect(branches.map((heard) => 'z' in heard && heard.z)).toEqual([
      { re: 25, im: 0 },
      { re: 37, im: 0 },
    ])
    expect(Object.values(mutuals).every(({ re, im }) => Math.abs(re) === 0 && Math.abs(im) === 0)).toBe(true)
  })

  test('takes couplings by pair in either order, and none for a pair left out', () => {
    const { mutuals } = lawOf(
      coil({ a: one, b: two, c: three }, { 'b-a': 0.5, 'a-c': -0.25 }),
      alternating(1),
    )
    expect(mutuals).toEqual({
      '0,1': { re: 0, im: 3 },
      '1,0': { re: 0, im: 3 },
      '0,2': { re: 0, im: -0.5 },
      '2,0': { re: 0, im: -0.5 },
    })
  })

  test('is refused when its couplings are not those of any real coil', () => {
    expect(problems({ a: one, b: two }, 1).map(({ code }) => code)).toEqual(['coupling-not-definite'])
    expect(problems({ a: one, b: two }, -1)).toHaveLength(1)
    // three windings of one coupling k: eigenvalues 1 + 2k and 1 − k twice (closed form)
    expect(problems({ a: one, b: two, c: three }, -0.51)).toHaveLength(1)
    expect(problems({ a: one, b: two, c: three }, -0.49)).toEqual([])
    expect(problems({ a: one, b: two, c: three }, { 'a-b': 0.9, 'b-c': 0.9, 'a-c': -0.9 })).toMatchObject([
      { code: 'coupling-not-definite', at: ['coupling'] },
    ])
  })

  test('with two windings is accepted exactly up to a coupling of 0.9999', () => {
    // closed form: the least eigenvalue of a pair is 1 − |k|
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (k) => {
        fc.pre(Math.abs(Math.abs(k) - 0.9999) > 1e-9)
        expect(problems({ a: one, b: two }, k).length === 0).toBe(Math.abs(k) < 0.9999)
      }),
      { seed: SEED },
    )
  })

  test('needs two windings at least and eight at most', () => {
    expect(problems({}, 0.5)).toMatchObject([{ code: 'key-missing', found: 'no winding', at: ['windings'] }])
    expect(problems({ a: one }, 0.5)).toMatchObject([{ code: 'key-missing', found: 'one winding' }])
    const many = (n: number) => Object.fromEntries(Array.from({ length: n }, (_, k) => [`w${k}`, one]))
    expect(problems(many(8), 0.5)).toEqual([])
    expect(problems(many(9), 0.5)).toMatchObject([{ code: 'quantity-out-of-range', found: '9 windings' }])
  })

  test('names each pair that it does not have', () => {
    expect(problems({ a: one, b: two }, { 'a-b': 0.5, 'a-a': 0.1, 'a-z': 0.1 })).toMatchObject([
      { code: 'name-unknown', at: ['coupling', 'a-a'] },
      { code: 'name-unknown', at: ['coupling', 'a-z'] },
    ])
  })

  test('refuses a winding without inductance and a coupling beyond 1', () => {
    expect(accepts(coil({ a: one, b: two }, 1))).toBe(true)
    expect(accepts(coil({ a: one, b: two }, 1.01))).toBe(false)
    expect(accepts(coil({ a: one, b: { ...two, inductance: '0 H' } }, 0.5))).toBe(false)
  })
})
