import { assertClose, farApart } from './close.ts'
import {
  type Complex,
  complex,
  conjugate,
  degrees,
  divide,
  modulus,
  multiply,
  subtract,
  type Value,
} from './complex.ts'
import type { Expected, Figure, Formula, OracleCase } from './oracle-cases.ts'

/** As much of an answer, from the library or parsed from the command line, as a case looks at. */
export interface Readings {
  readonly voltages: Readonly<Record<string, Value | null>>
  readonly currents: Readonly<Record<string, Value | null>>
}

/** One published figure of a case as a check that throws when the answer disagrees. */
export interface OracleCheck {
  readonly what: string
  readonly run: (answer: Readings) => void
}

/** All checks of a case, one a published figure. */
export function oracleChecks(oracle: OracleCase): OracleCheck[] {
  const { voltages = {}, currents = {}, derived = {} } = oracle.expected
  const formulas: [string, Formula, Expected][] = [
    ...Object.entries(voltages).map(([node, is]): [string, Formula, Expected] => [
      `V(${node})`,
      { voltage: node },
      is,
    ]),
    ...Object.entries(currents).map(([branch, is]): [string, Formula, Expected] => [
      `I(${branch})`,
      { current: branch },
      is,
    ]),
    ...Object.entries(derived).map(([what, { of, is }]): [string, Formula, Expected] => [what, of, is]),
  ]
  return formulas.map(([what, formula, expected]) => ({
    what,
    run: (answer) => compare(value(formula, oracle.name, answer), expected, oracle.tolerance, what),
  }))
}

/** The number that a formula makes of an answer. */
function value(formula: Formula, sheet: string, answer: Readings): Complex {
  const of = (inner: Formula): Complex => value(inner, sheet, answer)
  const node = (name: string): Complex => {
    return name === 'earth'
      ? { re: 0, im: 0 }
      : known(answer.voltages[`${sheet}/${name}`], `voltage of ${name}`)
  }
  if ('voltage' in formula) {
    const [plus, minus] = typeof formula.voltage === 'string' ? [formula.voltage, 'earth'] : formula.voltage
    return subtract(node(plus), node(minus))
  }
  if ('current' in formula)
    return known(answer.currents[`${sheet}/${formula.current}`], `current in ${formula.current}`)
  if ('ratio' in formula) return divide(of(formula.ratio[0]), of(formula.ratio[1]))
  if ('power' in formula) return multiply(of(formula.power[0]), conjugate(of(formula.power[1])))
  if ('negative' in formula) return subtract({ re: 0, im: 0 }, of(formula.negative))
  if ('real part' in formula) return { re: of(formula['real part']).re, im: 0 }
  return { re: 20 * Math.log10(modulus(of(formula.decibels))), im: 0 }
}

function known(reading: Value | null | undefined, what: string): Complex {
  if (reading === null || reading === undefined) throw new Error(`the answer has no ${what}: ${reading}`)
  return complex(reading)
}

function compare(
  actual: Complex,
  expected: Expected,
  tolerance: OracleCase['tolerance'],
  what: string,
): void {
  const check = (found: number, figure: Figure, part: string, scale: number) => {
    assertClose(
      found,
      figureValue(figure),
      { relative: 0, absolute: allowance(figure, tolerance, scale) },
      part,
    )
  }
  if (typeof expected !== 'object') {
    if (actual.im !== 0) {
      // A plain figure is also expected of phasors that have no imaginary part but for rounding.
      const size = modulus(actual)
      const absolute = allowance(expected, tolerance, size)
      assertClose(actual.im, 0, { relative: 0, absolute }, `imaginary part of ${what}`)
    }
    check(actual.re, expected, what, Math.abs(figureValue(expected)))
  } else if ('re' in expected) {
    const scale = Math.hypot(figureValue(expected.re), figureValue(expected.im))
    check(actual.re, expected.re, `real part of ${what}`, scale)
    check(actual.im, expected.im, `imaginary part of ${what}`, scale)
  } else {
    if (expected.modulus !== undefined) {
      check(modulus(actual), expected.modulus, `modulus of ${what}`, figureValue(expected.modulus))
    }
    // An exact angle is as good as its modulus: relative to one radian.
    if (expected.degrees !== undefined)
      check(degrees(actual), expected.degrees, `angle of ${what}`, 180 / Math.PI)
  }
}

function allowance(figure: Figure, tolerance: OracleCase['tolerance'], scale: number): number {
  const places = printedPlaces(figure)
  if (places === null) {
    if (tolerance.relative === undefined && tolerance.absolute === undefined) {
      throw new Error(`the case has the exact figure ${figure} but no tolerance for exact figures`)
    }
    return (tolerance.relative ?? 0) * scale + (tolerance.absolute ?? 0)
  }
  const share = tolerance['last digit']
  if (share === undefined)
    throw new Error(`the case has the printed figure ${figure} but no tolerance for printed figures`)
  return share * 10 ** -places
}

/** The decimal places of a printed figure, or null for an exact one. */
function printedPlaces(figure: Figure): number | null {
  if (typeof figure === 'number' || figure.includes('/')) return null
  return figure.split('.')[1]?.length ?? 0
}

/** A figure as a number; throws when its text is none. */
export function figureValue(figure: Figure): number {
  const [top, bottom = '1'] = String(figure).split('/')
  const value = Number(top) / Number(bottom)
  const complaint = farApart(value, value, { relative: 0 })
  if (complaint !== null || String(figure).trim() === '') throw new Error(`${figure} is no figure`)
  return value
}
