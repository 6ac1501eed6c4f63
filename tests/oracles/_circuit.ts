import { solveCircuit } from 'ringproof'
import { type Complex, complex } from '../support/complex.ts'

/** The readings of a circuit by the short names of its nodes and branches. */
export interface Solved {
  readonly voltage: (node: string) => Complex
  readonly current: (branch: string) => Complex
}

/**
 * Solves a circuit sheet of these parts, one text `name: {…}` a part; direct without a frequency in Hz. Throws where
 * a reading that is asked for has no value.
 */
export function solved(parts: readonly string[], frequency?: number): Solved {
  const text = [
    'ringproof: 1',
    'sheet: circuit',
    'name: net',
    'parts:',
    ...parts.map((part) => `  ${part}`),
    '',
  ]
  const answer = solveCircuit(text.join('\n'), frequency === undefined ? {} : { frequency })
  const known = (value: number | Complex | null | undefined, what: string): Complex => {
    if (value === null || value === undefined) throw new Error(`no ${what}`)
    return complex(value)
  }
  return {
    voltage: (node) => known(answer.voltages[`net/${node}`], `voltage of ${node}`),
    current: (branch) => known(answer.currents[`net/${branch}`], `current in ${branch}`),
  }
}

/** A part between two ends: `two('r', 'resistor', 'p', 'q', 'resistance: 1 Ω')`. */
export function two(name: string, kind: string, from: string, to: string, rest: string): string {
  return `${name}: {kind: ${kind}, from: ${from}, to: ${to}, ${rest}}`
}

/** A resistor of so many ohms. */
export const resistor = (name: string, from: string, to: string, ohms: number): string =>
  two(name, 'resistor', from, to, `resistance: ${ohms} Ω`)
/** A capacitor of so many farads. */
export const capacitor = (name: string, from: string, to: string, farads: number): string =>
  two(name, 'capacitor', from, to, `capacitance: ${farads} F`)
/** A coil of so many henries. */
export const inductor = (name: string, from: string, to: string, henries: number): string =>
  two(name, 'inductor', from, to, `inductance: ${henries} H`)
/** 1 V or so many, direct and of that size alternating at 0°, from a node to earth. */
export const source = (name: string, node: string, volts = 1): string =>
  two(name, 'voltage-source', node, 'earth', `direct: ${volts} V, alternating: ${Math.abs(volts)} V`)
/** 1 A, direct and alternating at 0°, into a node: its voltage is the impedance there. */
export const drive = (name: string, node: string): string =>
  two(name, 'current-source', 'earth', node, 'direct: 1 A, alternating: 1 A')
