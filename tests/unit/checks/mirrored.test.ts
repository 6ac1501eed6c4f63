/** A plug and a socket that are both made up by the mirrored numbering fit each other. */
import { check, figures } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, wiringStates } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'

const house = (set: string, socket: string) =>
  besides(`ringproof: 1
sheet: premises
name: trial-room
title: one set in one socket
line: depot-exchange
sockets:
  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ${socket}}
sets:
  desk: {set: ${set}, in: front}
`)

describe('plug and socket mirrored alike', () => {
  test.each(['', ', earth: yes'])('hold in every check of the wiring%s, as a right pair does', (earth) => {
    const mirrored = check({ target: 'trial-room' }, house('fescue-mirrored-plug', `${earth}, mirrored: yes`))
    const right = check({ target: 'trial-room' }, house('fescue', earth))
    expect(wiringStates(mirrored)).toEqual(wiringStates(right))
    expect(mirrored.faults).toEqual([])
    expect(mirrored.counts.fails).toBe(0)
  })

  test('have the same ringing load', () => {
    const load = (set: string, socket: string) =>
      figures({ target: 'trial-room', only: 'ringing.load.four-kilohm-unit' }, house(set, socket)).figures[0]
        ?.value ?? 0
    assertClose(
      load('fescue-mirrored-plug', ', mirrored: yes'),
      load('fescue', ''),
      { relative: 1e-9 },
      'load',
    )
  })
})
