import { changed } from 'ringproof/solver/variants/change'
import { furthest, VariantTable } from 'ringproof/solver/variants/variant-table'
import { describe, expect, test } from 'vitest'
import { compiled } from '../support/compiled.ts'

/** Found by the soak: seeds 1795621064 (circuit 89) and 1795621265 (63), and ten alike in 300,000 pairs. */
describe('a source lifted, and a resistance put where its current went', () => {
  const REST = { line: 'idle', sets: {} } as const

  test.each([
    [
      'a link of 0 Ω',
      [
        't1: {kind: strap, from: earth, to: n1, resistance: 0 Ω}',
        't3: {kind: resistor, from: n3, to: n1, resistance: 387 Ω}',
        'x1: {kind: current-source, from: earth, to: n1, direct: 1.9 A, alternating: 2.6 A at -30°}',
        'x2: {kind: inductor, from: n3, to: earth, inductance: 1.03 H, resistance: 105 Ω}',
      ],
      75.4912632165096,
    ],
    [
      'a resistor',
      [
        't1: {kind: resistor, from: n1, to: earth, resistance: 7.07 Ω}',
        't3: {kind: resistor, from: n1, to: n3, resistance: 88.1 kΩ}',
        'x1: {kind: current-source, from: earth, to: n1, direct: 1.9 A, alternating: 9.95 A}',
        'x2: {kind: inductor, from: n3, to: earth, inductance: 1.03 H, resistance: 105 Ω}',
      ],
      856976.9626734819,
    ],
  ])('leaves nothing, not the rounding of what cancels: %s', (_, parts, ohms) => {
    const net = compiled(...parts)
    const at = (name: string) => net.branchIndex.get(`trial/${name}`) ?? -1
    const question = { analysis: 'alternating', frequency: 10.5, condition: REST } as const
    const readings = [
      ...net.nodes.slice(1).map((__, k) => ({ voltage: [k + 1, 0] as const })),
      ...net.branches.map(({ index }) => ({ current: index })),
    ]
    const changes = [{ lifted: at('x1') }, { within: { branch: at('t1'), ohms } }]
    const table = new VariantTable(net, question, readings, changes)
    const out = new Float64Array(2 * readings.length)
    table.two(0, 1, out)
    const fresh = new VariantTable(net, changed(question, changes), readings, []).base
    expect(furthest(readings, out, fresh, table.base)).toBeLessThan(1e-9)
  })
})
