import { benchOf } from 'ringproof/meter/bench'
import { readBetween } from 'ringproof/meter/read'
import type { Branch, Netlist } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { compiled } from '../../support/compiled.ts'
import { DIGITAL, leads } from './_bench.ts'

const SAYS = 'holds off hundreds of volts'

/** The same netlist, its part of this name saying of itself what a meter cannot show. */
function withBlindness(net: Netlist, name: string): Netlist {
  const changed = (part: Netlist['parts'][number]) =>
    part.name === name ? { ...part, law: { ...part.law, meterBlind: SAYS } } : part
  const branches = net.branches.map((branch): Branch => ({ ...branch, part: changed(branch.part) }))
  return { ...net, parts: net.parts.map(changed), branches }
}

describe('what a part says that a meter cannot show of it', () => {
  const parts = [
    'tube: {kind: gas-tube, from: p, to: q, holds off: 230 V}',
    'r: {kind: resistor, from: p, to: m, resistance: 1 kΩ}',
    's: {kind: resistor, from: m, to: q, resistance: 1 kΩ}',
    'far: {kind: resistor, from: x, to: y, resistance: 1 kΩ}',
  ]
  const blind = (red: string, black: string) => {
    const on = benchOf(withBlindness(compiled(...parts), 'tube'), DIGITAL)
    return readBetween(on, leads(on, red, black), { shows: 'ohms' }).blind.filter(({ says }) => says === SAYS)
  }

  test('goes with a reading across it, although it carries nothing', () => {
    expect(blind('p', 'q')).toEqual([{ branch: 'trial/tube', says: SAYS }])
    expect(blind('q', 'p')).toHaveLength(1)
  })

  test('goes with no reading elsewhere', () => {
    expect(blind('p', 'm')).toEqual([])
    expect(blind('x', 'y')).toEqual([])
  })
})
