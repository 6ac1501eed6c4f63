import { describeMove } from 'ringproof/rewire/describe-move'
import { expect, test } from 'vitest'
import { movesOf } from './_set.ts'

test.each([
  ['fit strap: A2-A3', 'fit strap A2-A3'],
  ['fit strap: A2-A3, hold: solder', 'fit strap A2-A3, soldered'],
  ['lift strap: A1-A2', 'lift strap A1-A2'],
  ['cut: B1-B2', 'cut strap B1-B2'],
  ['land core: handset.r2, onto: B2', 'land core handset.r2 on B2'],
  ['park core: line.b', 'park core line.b, insulated, on nothing'],
  [
    'fit part: load, with: {kind: resistor, from: A1, to: A2, resistance: 3.3 kΩ ± 5 %}',
    'fit part load: resistor from A1 to A2, resistance 3.3 kΩ ± 5 %',
  ],
  [
    'fit part: t, with: {kind: induction-coil, windings: {a: {from: A1, to: A2, resistance: 1 Ω, inductance: 1 H}, b: {from: B1, to: B2, resistance: 1 Ω, inductance: 1 H}}, coupling: 0.5}',
    'fit part t: induction coil',
  ],
  ['lift part: shunt', 'lift part shunt'],
  ['bridge: shunt', 'bridge part shunt'],
  ['plug unit: link, in: bay', 'plug unit link into slot bay'],
  ['pull unit: bay', 'pull the unit out of slot bay'],
])('%s is said as: %s', (line, words) => {
  expect(movesOf(line).map(describeMove)).toEqual([words])
})
