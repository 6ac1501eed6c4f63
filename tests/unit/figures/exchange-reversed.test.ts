import { exchangeLegs } from 'ringproof/figures/exchange-legs'
import { exchangeReversed } from 'ringproof/figures/exchange-reversed'
import type { Tap } from 'ringproof/figures/figure'
import { directCurrent } from 'ringproof/figures/loop'
import { freshSupplier } from 'ringproof/figures/read'
import { ringingCurrent } from 'ringproof/figures/ringing'
import { soundersOf } from 'ringproof/figures/ringing-share'
import { currentIn, voltageBetween } from 'ringproof/solver/solution'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { house, lineText, MASTER, plainSet, standing } from './_stand.ts'

const IDLE = { line: 'idle', sets: { desk: { hook: 'off-hook', dial: 'rest', key: 'up' } } } as const
const RINGING = { line: 'ringing', sets: {} } as const

/** Premises with the pair reversed where it comes in, or not. */
function premises(reversed: boolean, feed?: string) {
  const line = lineText(feed === undefined ? {} : { feed })
  const asked = house(line, [MASTER], ['desk: {set: plain, in: front}'], plainSet(600))
  const text = asked.text?.text.replace('sockets:', `reversed: ${reversed ? 'yes' : 'no'}\nsockets:`) ?? ''
  return standing({ ...asked, text: { file: 'trial-house.yaml', text } })
}

describe('the pair reversed on the exchange’s side', () => {
  const plain = premises(false)

  test('exchanges what the two legs of feed and ringing supply hold, and nothing else', () => {
    const { instead = [] } = exchangeReversed(plain.net, plain.line)
    const legs = [
      ...exchangeLegs(plain.net, plain.line, 'idle'),
      ...exchangeLegs(plain.net, plain.line, 'ringing'),
    ]
    expect(instead).toHaveLength(4)
    expect(instead.map(({ part }) => plain.net.parts[part]?.id).sort()).toEqual(
      legs.map(({ part }) => part.id).sort(),
    )
    for (const { part, spec } of instead) {
      const { from, to } = spec as unknown as { from: string; to: string }
      expect([from, to]).toEqual([
        plain.net.nodes[plain.net.branches[plain.net.parts[part]?.first ?? -1]?.from ?? -1],
        'earth',
      ])
    }
  })

  // the oracle compiles the house with `reversed: yes`, which crosses the pair where it comes in
  test.each([
    ['half in each wire', undefined],
    ['all in the a wire', '{voltage: 50 V, resistance: 400 Ω, shared: all in a wire, negative: b wire}'],
    ['limited', '{voltage: 48 V, resistance: 200 Ω, current limit: 20 mA, negative: b wire}'],
    [
      'with the other pole earthed',
      '{voltage: 50 V, resistance: 400 Ω, earth: negative pole, negative: a wire}',
    ],
  ])('leaves at the set what a reversed house leaves there, feed %s', (_, feed) => {
    const here = premises(false, feed)
    const there = premises(true, feed)
    const supplier = freshSupplier(here.net)
    const oracle = freshSupplier(there.net)
    const changes = exchangeReversed(here.net, here.line)
    const { socket } = here.place
    const other = there.place.socket
    if (socket === undefined || other === undefined) throw new Error('no socket')
    const asked = [
      { analysis: 'direct', condition: IDLE },
      { analysis: 'direct', condition: RINGING },
      { analysis: 'alternating', condition: RINGING, frequency: 25 },
    ] as const
    for (const one of asked) {
      const found = voltageBetween(supplier({ ...one, ...changes }), socket.a, socket.b)
      const expected = voltageBetween(oracle(one), other.a, other.b)
      if (found === undefined || expected === undefined) throw new Error('undetermined')
      assertClose(
        found,
        expected,
        { relative: 1e-9, absolute: 1e-12 },
        `${one.analysis} ${one.condition.line}`,
      )
      const before = voltageBetween(supplier(one), socket.a, socket.b)
      expect(Math.hypot((before?.re ?? 0) - found.re, (before?.im ?? 0) - found.im)).toBeGreaterThan(1)
    }
  })

  test('turns the direct current round and rings a bell as loudly as before', () => {
    const [bell] = soundersOf(plain.net)
    const load = plain.net.branches[plain.net.branchIndex.get('desk/load') ?? -1]
    if (bell === undefined || load === undefined) throw new Error('no bell')
    const changes = exchangeReversed(plain.net, plain.line)
    const supplier = freshSupplier(plain.net)
    const read = ([tap]: readonly Tap[]) =>
      tap !== undefined && 'current' in tap ? currentIn(supplier(tap.question), tap.current) : undefined
    const direct = (with_: object) =>
      read(directCurrent('transmitter.current', load, IDLE, with_).taps)?.re ?? 0
    assertClose(direct(changes), -direct({}), { relative: 1e-12 }, 'direct current')
    const ringing = (with_: object) => {
      const current = read(ringingCurrent(bell, RINGING, 25, [1], with_).taps)
      return Math.hypot(current?.re ?? 0, current?.im ?? 0)
    }
    assertClose(ringing(changes), ringing({}), { relative: 1e-9 }, 'ringing current')
  })

  test('changes nothing about a line that has no ringing supply but its feed', () => {
    const quiet = standing(
      house(lineText({ ringing: '' }), [MASTER], ['desk: {set: plain, in: front}'], plainSet(600)),
    )
    expect(exchangeReversed(quiet.net, quiet.line).instead).toHaveLength(2)
  })
})
