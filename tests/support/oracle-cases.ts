import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** How well the source's figures are known; the meaning of the words is in tests/oracles/README.md. */
export type Grade = 'SEEN-P' | 'SEEN-S' | 'DERIVED' | 'MEMORY'

/**
 * A published figure. A number or a fraction `"40/3"` is exact; any other text is a figure as the source prints
 * it, whose last digit tells how well it is known.
 */
export type Figure = number | string

/** What is expected of a reading: a plain figure, a phasor, or its modulus and (or) angle in degrees. */
export type Expected =
  | Figure
  | { readonly re: Figure; readonly im: Figure }
  | { readonly modulus?: Figure; readonly degrees?: Figure }

/**
 * How a derived figure is made of the answer. Nodes and branches are named without their sheet.
 * `voltage` is of a node against earth or between two nodes; `ratio` divides, `power` is V · I*.
 */
export type Formula =
  | { readonly voltage: string | readonly [string, string] }
  | { readonly current: string }
  | { readonly ratio: readonly [Formula, Formula] }
  | { readonly power: readonly [Formula, Formula] }
  | { readonly negative: Formula }
  | { readonly 'real part': Formula }
  | { readonly decibels: Formula }

/** One oracle: `<name>.yaml` is the circuit, `<name>.json` this record of what is published about it. */
export interface OracleCase {
  readonly name: string
  readonly title: string
  readonly source: string
  readonly grade: Grade
  readonly given: { readonly frequency?: number }
  readonly expected: {
    readonly voltages?: Readonly<Record<string, Expected>>
    readonly currents?: Readonly<Record<string, Expected>>
    readonly derived?: Readonly<Record<string, { readonly of: Formula; readonly is: Expected }>>
  }
  /** For exact figures relative and absolute; for printed ones in units of the last printed digit. */
  readonly tolerance: {
    readonly relative?: number
    readonly absolute?: number
    readonly 'last digit'?: number
  }
  readonly 'why this tolerance': string
  /** The circuit sheet: its path and its text. */
  readonly file: string
  readonly sheet: string
}

/** All cases of tests/oracles in the order of their names. */
export function oracleCases(): OracleCase[] {
  const folder = fileURLToPath(new URL('../oracles/', import.meta.url))
  const names = readdirSync(folder).filter((file) => file.endsWith('.json'))
  return names.sort().map((file) => {
    const name = file.slice(0, -'.json'.length)
    const sheet = `${folder}${name}.yaml`
    const record = JSON.parse(readFileSync(folder + file, 'utf8')) as Omit<
      OracleCase,
      'name' | 'file' | 'sheet'
    >
    return { ...record, name, file: sheet, sheet: readFileSync(sheet, 'utf8') }
  })
}
