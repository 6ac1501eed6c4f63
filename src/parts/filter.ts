import { opens, shorts } from './fault-modes.ts'
import { type InLineSpec, inLineBranches, inLineModes, inLineOutline } from './in-line.ts'
import type { PartLaw } from './kind.ts'
import { line, turns } from './symbols.ts'

/**
 * A broadband filter between a socket and its set: a coil in each wire, v = (R + jωL)·i, and a capacitor across the
 * pair on the set's side, i = jωC·v. Speech, ringing and direct current pass; what the filter costs them is solved.
 */
export interface FilterSpec extends InLineSpec {
  readonly kind: 'filter'
  /** Ω and H of the coil in each wire */
  readonly resistance: number
  readonly inductance: number
  /** F across the pair */
  readonly capacitance: number
}

export const filter: PartLaw<FilterSpec> = {
  kind: 'filter',
  says: 'A broadband filter: a coil in each wire and a capacitor across the pair.',
  branches: (spec) => inLineBranches(spec, 'capacitor'),
  law(spec, at, gate, sink) {
    const omega = at.analysis === 'direct' ? 0 : at.omega
    for (const wire of [0, 1]) {
      if (gate === 'open') sink.equation(wire, 0, 1, 0)
      else sink.equation(wire, 1, spec.resistance, omega * spec.inductance)
    }
    sink.admittance(2, 0, gate === 'open' ? 0 : omega * spec.capacitance)
  },
  elements(spec, _at, gate, sink) {
    for (const wire of [0, 1]) {
      if (gate === 'open') sink.open(wire)
      else sink.series(wire, spec.resistance, spec.inductance)
    }
    if (gate === 'open') sink.open(2)
    else sink.beside(2, Number.POSITIVE_INFINITY, spec.capacitance)
  },
  modes: () => [
    ...inLineModes(),
    shorts({
      of: { branch: 0, name: 'coil-a' },
      weight: 2,
      says: 'has a shorted coil',
      sign: 'speech and ringing as before, the pair out of balance',
    }),
    opens({
      of: { branch: 2, name: 'capacitor' },
      weight: 3,
      says: 'has lost its capacitor',
      sign: 'broadband noise comes through to the receiver',
    }),
  ],
  outline: (spec) =>
    inLineOutline(spec, [
      ...[1, 3].flatMap((y) => [...turns(1, y), line([3, y], [5, y])]),
      line([4, 1], [4, 1.85]),
      line([3.6, 1.85], [4.4, 1.85]),
      line([3.6, 2.15], [4.4, 2.15]),
      line([4, 2.15], [4, 3]),
    ]),
}
