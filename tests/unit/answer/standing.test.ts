import { check, ProblemError, solve } from 'ringproof'
import { stand } from 'ringproof/answer/standing'
import { describe, expect, test } from 'vitest'
import { DEMO, setText, verdictsOf } from '../../support/bench.ts'

describe('a set that stands nowhere', () => {
  const answer = check({ target: 'fescue', on: 'none' }, DEMO)

  test('is compiled alone, with its plug ends open', () => {
    const { net, places, moves } = stand({ target: 'fescue-unit-left-out', on: 'none' }, DEMO)
    expect(places).toEqual(['fescue'])
    expect(moves).toHaveLength(1)
    expect(net.line).toBeUndefined()
    expect(net.nodes.every((id) => id === 'earth' || id.startsWith('fescue/'))).toBe(true)
    expect(net.branches.filter(({ part }) => part.sort === 'plug')).toEqual([])
  })

  test.each(['wiring.loop-through-set', 'wiring.loop-open-on-hook', 'wiring.one-ringing-capacitor'])(
    'says that %s needs a line',
    (id) => {
      for (const one of verdictsOf(answer, id))
        expect(one).toMatchObject({ state: 'unknown', reason: 'no-line' })
    },
  )

  test.each([
    'wiring.cores-separate',
    'wiring.loop-closed-off-hook',
    'wiring.ringing-lead-to-bell',
    'wiring.ringing-lead-alone',
    'wiring.bell-return',
    'wiring.spares-free',
    'wiring.unit-as-needed',
    'wiring.quench-present',
  ])('is judged by %s all the same, from contact to contact of its plug', (id) => {
    for (const one of verdictsOf(answer, id)) expect(one.state).toBe('holds')
  })

  test('has none of the figures that need a line, and what a line closes is then unknown', () => {
    expect(answer.figures).toEqual([])
    const joined = check({ target: 'sedge-converted-as-fescue', on: 'none' }, DEMO)
    expect(verdictsOf(joined, 'wiring.cores-separate')).toMatchObject([
      { state: 'unknown', reason: 'no-line', figure: null, limit: null, margin: null },
    ])
    expect(verdictsOf(joined, 'wiring.cores-reach-parts')).toMatchObject([
      { state: 'unknown', reason: 'no-line' },
    ])
  })

  test('carries no current', () => {
    const { currents } = solve({ target: 'fescue', on: 'none', condition: 'off-hook' }, DEMO)
    for (const current of Object.values(currents)) expect(Math.abs(current as number)).toBe(0)
  })
})

test('a set that is named takes the first socket of the premises, beside the sets that stand there', () => {
  const { net, name } = stand({ target: 'sedge' }, DEMO)
  expect(name).toBe('sedge')
  expect(net.places.map(({ place, socket }) => [place, socket?.name])).toEqual([['sedge', 'bench']])
})

test.each([
  [[], 'list'],
  [['workshops'], 'workshops'],
])('a set has nowhere to stand where the workshop is not in reach, among %j', (names, mend) => {
  const shelf: typeof DEMO = {
    find: (kind, name, from) => (kind === 'premises' ? undefined : DEMO.find(kind, name, from)),
    names: () => names,
  }
  try {
    check({ target: '', text: setText('fescue') }, shelf)
    expect.unreachable()
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    expect(error.problems).toMatchObject([{ code: 'name-unknown', found: '`workshop`' }])
    expect(error.problems[0]?.mend).toContain(mend)
  }
})
