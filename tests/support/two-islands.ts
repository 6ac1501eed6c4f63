import * as fc from 'fast-check'
import { type Circuit, nodesOf } from './circuit.ts'
import { capacitances, circuits, inductances, resistances } from './circuits.ts'
import { afloat } from './rewrite.ts'

/**
 * Two random circuits, the second without `earth`, that meet in a coil with a winding in each and, in every
 * second draw, in one capacitor. The coil never joins them; the capacitor does for alternating current alone.
 */
export const twoIslands: fc.Arbitrary<Circuit> = fc
  .record({
    first: circuits(),
    second: circuits(),
    at: fc.array(fc.nat(999), { minLength: 6, maxLength: 6 }),
    resistance: resistances,
    inductance: inductances,
    capacitance: fc.option(capacitances, { freq: 1 }),
  })
  .map(({ first, second, at, resistance, inductance, capacitance }) => {
    const floating = afloat(second, 'm-')
    const here = ['earth', ...nodesOf(first)]
    const there = nodesOf(floating)
    const pick = (nodes: readonly string[], index: number): string => nodes[index % nodes.length] ?? ''
    const pair = (nodes: readonly string[], index: number, step: number) => ({
      from: pick(nodes, index),
      to: pick(nodes, index + 1 + (step % (nodes.length - 1))),
    })
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = at
    const winding = { resistance, inductance }
    const coil = {
      kind: 'induction-coil' as const,
      name: 'between',
      windings: [
        { name: 'here', ...pair(here, a, b), ...winding },
        { name: 'there', ...pair(there, c, d), ...winding },
      ],
      coupling: 0.9,
    }
    const parts = [...first.parts, ...floating.parts, coil]
    if (capacitance === null) return { ...first, parts }
    const bridge = {
      kind: 'capacitor' as const,
      name: 'bridge',
      from: pick(here, e),
      to: pick(there, f),
      capacitance,
    }
    return { ...first, parts: [...parts, bridge] }
  })
