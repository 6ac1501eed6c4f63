/** Premises in which a set is off its hook as things stand: the others are judged beside it, and it is named. */
import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, verdictOf } from '../../support/bench.ts'

const house = (condition: string, line = 'depot-exchange') =>
  besides(`ringproof: 1
sheet: premises
name: two-rooms
title: two sets on one line
line: ${line}
sockets:
  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}
sets:
  hall: {set: fescue, in: front}
  attic: {set: fescue, in: front${condition}}
`)
const judged = (condition: string, line?: string) => check({ target: 'two-rooms' }, house(condition, line))

describe('a set that is off its hook as things stand', () => {
  const lifted = judged(', condition: off-hook')

  test('engages the line: nothing rings until it is hung up', () => {
    expect(verdictOf(lifted, 'line.no-false-trip')).toMatchObject({ state: 'fails', mend: 'hang up attic' })
    expect(verdictOf(judged(''), 'line.no-false-trip').state).toBe('holds')
  })

  test('keeps the line closed while another one dials, and is named as what does', () => {
    const one = lifted.verdicts.find(
      ({ check: id, subject }) => id === 'dial.understood' && subject === 'hall',
    )
    expect(one).toMatchObject({ state: 'fails', mend: 'hang up attic, which keeps the line closed' })
  })

  test('says nothing of the wiring of the others', () => {
    const far = judged(', condition: off-hook', 'valley-exchange')
    for (const one of far.verdicts.filter(({ check: id }) => id === 'wiring.loop-through-set'))
      expect(one.state).toBe('holds')
    const current = far.verdicts.find(({ check: id, subject }) => id === 'line.current' && subject === 'hall')
    expect(current).toMatchObject({ state: 'fails', mend: 'hang up attic, which takes the rest' })
  })
})
