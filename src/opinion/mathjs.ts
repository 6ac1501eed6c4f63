/**
 * mathjs, loaded when a second opinion is asked for and not before: its import costs more than all the rest.
 * What is taken of it is written down here, so that nothing else depends on its types.
 */
import type { Big } from './big.ts'

/** A double, or a complex number of two. */
export type Numeral = number | { readonly re: number; readonly im: number }

/** Sparse linear algebra in doubles. */
export interface Doubles {
  complex(re: number, im: number): Numeral
  sparse(): {
    resize(size: readonly number[]): void
    set(at: readonly number[], value: Numeral): void
  }
  /** Factors with an order of columns; null where the matrix is singular. */
  slu(matrix: unknown, order: number, threshold: number): object | null
  lusolve(factors: object, right: readonly (readonly Numeral[])[]): { valueOf(): Numeral[][] }
}

/** Decimal numbers. */
export interface Decimals {
  readonly pi: Big
  bignumber(text: string): Big
}

/** The library as it is used here. */
export interface Mathjs {
  decimals(digits: number): Decimals
  doubles(): Doubles
}

/** Loads mathjs. */
export async function loadMathjs(): Promise<Mathjs> {
  const {
    create,
    bignumberDependencies,
    complexDependencies,
    lusolveDependencies,
    piDependencies,
    sluDependencies,
    sparseDependencies,
  } = await import('mathjs')
  const sparse = { ...complexDependencies, ...lusolveDependencies, ...sluDependencies, ...sparseDependencies }
  return {
    decimals: (digits) =>
      create(
        { ...bignumberDependencies, ...piDependencies },
        { number: 'BigNumber', precision: digits },
      ) as unknown as Decimals,
    // as it comes it takes anything below 1e-15 for nil and drops it from sparse solutions; here nil is nil
    doubles: () => create(sparse, { absTol: 0, relTol: Number.MIN_VALUE }) as unknown as Doubles,
  }
}
