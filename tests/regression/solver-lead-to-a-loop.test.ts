import { solveCircuit } from 'ringproof'
import { expect, test } from 'vitest'

/** Found in unit tests of the solver: the strap `xa` was called shared, though its 1 A is determined by Kirchhoff's current law. */
const SHEET = `ringproof: 1
sheet: circuit
name: net
parts:
  j:    {kind: current-source, from: earth, to: x, direct: 1 A}
  xa:   {kind: strap, from: x, to: a, resistance: 0 Ω}
  s1:   {kind: strap, from: a, to: c, resistance: 0 Ω}
  s2:   {kind: strap, from: a, to: c, resistance: 0 Ω}
  load: {kind: resistor, from: c, to: earth, resistance: 5 Ω}
`

test('a link that leads to a loop of links without resistance is not called shared', () => {
  expect(solveCircuit(SHEET).shared).toEqual(['net/s1', 'net/s2'])
})
