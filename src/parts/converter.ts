import { resists } from './fault-modes.ts'
import { type InLineSpec, inLineBranches, inLineModes, inLineOutline } from './in-line.ts'
import type { PartLaw } from './kind.ts'

/**
 * An in-line pulse-to-tone converter between a socket and its set: it hears the set's dial pulses and sends tones
 * in their place, so that no pulse passes. To the line it is a resistance in series, half of it in each wire, and
 * a load across the pair on the set's side, for direct and alternating current alike. One that does not pass
 * ringing is open while the line rings (its part takes part in the other states alone).
 */
export interface ConverterSpec extends InLineSpec {
  readonly kind: 'converter'
  /** Ω, both wires together */
  readonly resistance: number
  /** Ω across the pair; none when absent */
  readonly load?: number
}

export const converter: PartLaw<ConverterSpec> = {
  kind: 'converter',
  says: 'An in-line converter from dial pulses to tones.',
  branches: (spec) => inLineBranches(spec, 'load'),
  law(spec, _at, gate, sink) {
    const load = gate === 'open' || spec.load === undefined ? 0 : 1 / spec.load
    for (const wire of [0, 1]) {
      if (gate === 'open') sink.equation(wire, 0, 1, 0)
      else sink.equation(wire, 1, spec.resistance / 2, 0)
    }
    sink.admittance(2, load, 0)
  },
  elements(spec, _at, gate, sink) {
    for (const wire of [0, 1]) {
      if (gate === 'open') sink.open(wire)
      else sink.series(wire, spec.resistance / 2, 0)
    }
    if (gate === 'open' || spec.load === undefined) sink.open(2)
    else sink.beside(2, spec.load, 0)
  },
  modes: () => [
    ...inLineModes(),
    resists('drops-too-much', 300, {
      of: { branch: 0, name: 'a' },
      weight: 10,
      says: 'drops too much of the loop voltage',
      sign: 'the set is faint behind it and in order without it',
    }),
  ],
  outline: (spec) => inLineOutline(spec, [{ letters: 'T', at: [3, 2] }]),
}
