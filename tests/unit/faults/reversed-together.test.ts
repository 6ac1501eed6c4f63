/** Several sets reversed at their cords, and one beside sets that it hears nothing of: the words follow the figures. */
import { check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides } from '../../support/bench.ts'

const rooms = (...sets: readonly string[]) =>
  besides(`ringproof: 1
sheet: premises
name: trial-room
title: reversed sets
line: depot-exchange
sockets:
  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}
sets:
${sets.map((one) => `  ${one}\n`).join('')}`)

const reversedFaults = (...sets: readonly string[]) =>
  check({ target: 'trial-room' }, rooms(...sets)).faults.filter(({ fault }) => fault === 'reversed-at-cord')

describe('sets reversed at their own cords', () => {
  test('are turned back together, and nothing is worse for it', () => {
    const faults = reversedFaults(
      'one: {set: fescue, in: front, reversed: yes}',
      'two: {set: fescue, in: front, reversed: yes}',
    )
    expect(faults.map(({ subject }) => subject)).toEqual(['one', 'two'])
    for (const { mend, consequences } of faults) {
      expect(mend).toMatch(/reversed too/)
      for (const { figure, mended } of consequences.filter((one) => one.figure.id === 'leakage.on-hook'))
        expect(mended?.value ?? 1).toBeLessThan((figure.value ?? 0) + 1e-9)
    }
  })

  test('beside a set on two wires ring on nothing and drown nothing, and nothing of that is said', () => {
    const [one] = reversedFaults(
      'one: {set: fescue, in: front, reversed: yes}',
      'two: {set: melick, in: front}',
    )
    expect(one?.says).not.toMatch(/rings on their current|drown|bridge/)
    expect(one?.says).toContain('does not ring it')
  })

  test('beside another one ring on its current, bridge and drown', () => {
    const [one] = reversedFaults(
      'one: {set: fescue, in: front, reversed: yes}',
      'two: {set: fescue, in: front}',
    )
    expect(one?.says).toMatch(/rings on their current.*bridge.*drown/)
  })
})
