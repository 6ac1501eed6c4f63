import { follow, ProblemError, solve } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, DEMO } from '../../support/bench.ts'

const HOUSE = `ringproof: 1
sheet: premises
name: pair-of-rooms
line: depot-exchange
reversed: no
sockets:
  hall: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}
sets:
  desk: {set: fescue, in: hall}
  bed: {set: fescue, in: hall}
  nook: {set: fescue, in: hall, condition: off-hook}
`
const shelf = besides(HOUSE)
const DOWN = { hook: 'on-hook', dial: 'rest', key: 'up' }
const UP = { ...DOWN, hook: 'off-hook' }

const ask = (condition?: string) =>
  solve({ target: 'pair-of-rooms', ...(condition === undefined ? {} : { condition }) }, shelf)

function refusal(condition: string) {
  try {
    ask(condition)
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0]
    throw error
  }
  throw new Error('nothing is refused')
}

describe('the condition of premises', () => {
  test('is a map by place in the answer, every set in it', () => {
    expect(ask().condition).toEqual({ line: 'idle', sets: { desk: DOWN, bed: DOWN, nook: UP } })
    expect(follow({ target: 'pair-of-rooms' }, shelf).condition).toEqual({
      line: 'idle',
      sets: { desk: UP, bed: DOWN, nook: UP },
    })
  })

  test('is said of each place by its name', () => {
    const answer = ask('bed=off-hook/make,nook=on-hook')
    expect(answer.condition).toEqual({
      line: 'idle',
      sets: { desk: DOWN, bed: { ...UP, dial: 'make' }, nook: DOWN },
    })
    const loop = (place: string) => Math.abs(answer.currents[`${place}/line.a`] as number)
    expect(loop('bed')).toBeGreaterThan(0.01)
    expect(loop('desk')).toBeLessThan(1e-4)
    expect(loop('nook')).toBeLessThan(1e-4)
  })

  test('has one state of the line for all', () => {
    expect(ask('desk=on-hook/ringing,bed=on-hook').condition).toMatchObject({ line: 'ringing' })
    expect(refusal('desk=on-hook/ringing,bed=on-hook/speech')).toMatchObject({ code: 'request-wrong' })
  })

  test.each([
    ['a place where no set stands', 'dsk=off-hook', '`desk`'],
    ['a place twice', 'bed=off-hook,bed=on-hook', 'kitchen=off-hook'],
    ['a word that is none', 'bed=hanging', 'off-hook/speech'],
  ])('is refused with %s', (_says, condition, mend) => {
    expect(refusal(condition)?.code).toBe('request-wrong')
    expect(refusal(condition)?.mend).toContain(mend)
  })

  test('stays one flat object for a set that stands alone', () => {
    expect(solve({ target: 'fescue', condition: 'off-hook' }, DEMO).condition).toEqual({
      ...UP,
      line: 'idle',
    })
  })
})

describe('what stands where', () => {
  test('is told with both numbers of every plug contact', () => {
    const { stands } = ask()
    expect(stands).toMatchObject({ line: 'depot-exchange', premises: 'pair-of-rooms' })
    expect(stands?.sets.map(({ place, socket, rests }) => [place, socket, rests])).toEqual([
      ['desk', 'hall', 'on-hook'],
      ['bed', 'hall', 'on-hook'],
      ['nook', 'hall', 'off-hook'],
    ])
    for (const { plug } of stands?.sets ?? [])
      for (const { wiring, contact } of plug) expect(wiring + contact).toBe(7)
    expect(stands?.sets[0]?.plug).toContainEqual({ node: 'desk/plug.ringing', wiring: 3, contact: 4 })
  })

  test('is told of no circuit', () => {
    expect(solve({ target: 'two-meshes' }, DEMO)).not.toHaveProperty('stands')
  })
})

test('warnings of sets and rewires in premises are passed on, each once', () => {
  const twice = {
    ...shelf,
    twins: (_: string, name: string) => (name === 'fescue' ? ['a.yaml', 'b.yaml'] : [name]),
  }
  const { problems } = solve({ target: 'pair-of-rooms' }, twice)
  expect(problems).toMatchObject([{ code: 'key-doubled', severity: 'warning' }])
})
