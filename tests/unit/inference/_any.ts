/** Hypotheses and observations at random. */
import fc from 'fast-check'
import type { Hypotheses, Observable } from 'ringproof/inference/hypotheses'

const anyAnswers = fc.record({
  scale: fc.constant(0.1),
  error: fc.constant(() => 0),
  slip: fc.double({ min: 0, max: 0.4, noNaN: true }),
  effort: fc.constantFrom(1, 2, 9),
  cuts: fc.constantFrom([0.5], [0.2, 0.7], [0.1, 1, 10]),
})
const anyNumber = fc.record({
  scale: fc.constantFrom(0.1, 1, 1e-9),
  error: fc.constantFrom(
    () => 0,
    (x: number) => 0.01 * Math.abs(x) + 0.1,
    () => 5,
  ),
  slip: fc.constantFrom(0, 0.005, 0.2),
  effort: fc.constantFrom(3, 9),
})
const anyObservable: fc.Arbitrary<Observable> = fc.oneof(anyAnswers, anyNumber)

const anyValue = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -10, max: 1e6, noNaN: true }) },
  { weight: 3, arbitrary: fc.constantFrom(0, 1, 100) },
  { weight: 2, arbitrary: fc.constantFrom(Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN) },
)

/** Up to eight hypotheses and six observables. */
export const anyHypotheses: fc.Arbitrary<Hypotheses> = fc
  .tuple(fc.array(anyObservable, { minLength: 1, maxLength: 6 }), fc.integer({ min: 1, max: 8 }))
  .chain(([observables, count]) => {
    const size = observables.length * count
    return fc.record({
      observables: fc.constant(observables),
      count: fc.constant(count),
      prior: fc
        .array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: count, maxLength: count })
        .map((all) => {
          const total = all.reduce((sum, one) => sum + one, 0.1)
          return Float64Array.from(all, (one) => one / total)
        }),
      none: fc.constant(0),
      expected: fc.array(anyValue, { minLength: size, maxLength: size }).map((all) => Float64Array.from(all)),
      spread: fc
        .array(fc.constantFrom(0, 0.01, 0.3), { minLength: size, maxLength: size })
        .map((all) => Float64Array.from(all)),
    })
  })
  .map((among) => ({ ...among, none: 1 - among.prior.reduce((sum, one) => sum + one, 0) }))

/** A number, `open`, or an answer that may not exist. */
export const anyObservation: fc.Arbitrary<{ x?: number; answer?: number }> = fc.oneof(
  anyValue.map((x) => ({ x })),
  fc.integer({ min: 0, max: 4 }).map((answer) => ({ answer })),
)
