import type { Circuit, Coil, TwoEnded } from './circuit.ts'
import { type Complex, polar } from './complex.ts'

const NIL: Complex = { re: 0, im: 0 }
const ONE: Complex = { re: 1, im: 0 }

/**
 * One branch and its law, volts·v + Σ amps·i = source, where v falls from `from` to `to`
 * and i runs that way inside the part. Written from the definitions of the parts alone.
 */
export interface Branch {
  /** The id that the answer uses. */
  readonly id: string
  readonly from: string
  readonly to: string
  readonly volts: Complex
  /** Coefficients of branch currents by position in the list of branches. */
  readonly amps: readonly (readonly [branch: number, coefficient: Complex])[]
  readonly source: Complex
  readonly isSource: boolean
}

/** All branches of a circuit at a frequency in Hz, or at direct current when it is null. */
export function branchesOf(circuit: Circuit, frequency: number | null): Branch[] {
  const branches: Branch[] = []
  const omega = frequency === null ? null : 2 * Math.PI * frequency
  for (const part of circuit.parts) {
    if (part.kind === 'induction-coil')
      branches.push(...coilBranches(circuit.name, part, omega, branches.length))
    else branches.push(twoEndedBranch(circuit.name, part, omega, branches.length))
  }
  return branches
}

function twoEndedBranch(circuit: string, part: TwoEnded, omega: number | null, at: number): Branch {
  const ends = { id: `${circuit}/${part.name}`, from: part.from, to: part.to, isSource: false }
  const impedance = (re: number, im: number): Branch => {
    return { ...ends, volts: ONE, amps: [[at, { re: -re, im: -im }]], source: NIL }
  }
  switch (part.kind) {
    case 'resistor':
      return impedance(part.resistance.value, 0)
    case 'strap':
      return impedance(part.resistance?.value ?? 0.01, 0)
    case 'inductor':
      return impedance(part.resistance?.value ?? 0, (omega ?? 0) * part.inductance.value)
    case 'capacitor': {
      const leak = part.leakage ? 1 / part.leakage.value : 0
      const volts = { re: -leak, im: -(omega ?? 0) * part.capacitance.value }
      return { ...ends, volts, amps: [[at, ONE]], source: NIL }
    }
    default: {
      const { size, degrees } = part.alternating
      const source = omega === null ? { re: part.direct.value, im: 0 } : polar(size.value, degrees)
      const drivesVolts = part.kind === 'voltage-source'
      return {
        ...ends,
        isSource: true,
        volts: drivesVolts ? ONE : NIL,
        amps: drivesVolts ? [] : [[at, ONE]],
        source,
      }
    }
  }
}

function coilBranches(circuit: string, coil: Coil, omega: number | null, first: number): Branch[] {
  return coil.windings.map((own, row) => {
    const amps = coil.windings.flatMap((other, column): [number, Complex][] => {
      if (row === column) {
        return [[first + column, { re: -own.resistance.value, im: -(omega ?? 0) * own.inductance.value }]]
      }
      if (omega === null) return []
      const mutual =
        couplingBetween(coil, row, column) * Math.sqrt(own.inductance.value * other.inductance.value)
      return [[first + column, { re: 0, im: -omega * mutual }]]
    })
    const id = `${circuit}/${coil.name}.${own.name}`
    return { id, from: own.from, to: own.to, isSource: false, volts: ONE, amps, source: NIL }
  })
}

function couplingBetween(coil: Coil, row: number, column: number): number {
  if (typeof coil.coupling === 'number') return coil.coupling
  const a = coil.windings[row]?.name
  const b = coil.windings[column]?.name
  const coupling = coil.coupling[`${a}-${b}`] ?? coil.coupling[`${b}-${a}`]
  if (coupling === undefined) throw new Error(`no coupling between ${a} and ${b} of ${coil.name}`)
  return coupling
}
