import { check, compare, figures, follow, meter, ProblemError, solve, toJson } from 'ringproof'
import { PLAIN } from 'ringproof/report/paint'
import { answerText } from 'ringproof/report/text'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const text = (answer: Parameters<typeof answerText>[0]) => answerText(answer, { width: 100, paint: PLAIN })
const refused = (run: () => unknown) => {
  try {
    run()
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0]
    throw error
  }
  return expect.unreachable()
}

const HUT = { target: 'fescue', on: 'gatehouse' }

describe('a set that is asked for on premises', () => {
  test('is one set more, and the heading says which, where and in which socket', () => {
    const answer = check(HUT, DEMO)
    expect(answer.stands?.sets).toHaveLength(5)
    expect(answer.stands?.asked).toEqual({ place: 'fescue', socket: 'front' })
    expect(text(answer)).toContain('\nadded as a fifth set, at the place fescue, in the socket front\n')
  })

  test('says nothing of its place where it stands alone and nothing was said', () => {
    expect(text(check({ target: 'fescue' }, DEMO))).not.toContain('at the place')
  })

  test('takes the place of another set, its socket with it', () => {
    const answer = check({ ...HUT, at: 'stair-foot' }, DEMO)
    expect(answer.stands?.sets).toHaveLength(4)
    expect(answer.stands?.sets.find(({ place }) => place === 'stair-foot')?.socket).toBe('stairs')
    expect(answer.request).toEqual({ check: 'fescue', on: 'gatehouse', at: 'stair-foot' })
    expect(text(answer)).toContain('in place of the fescue, at the place stair-foot, in the socket stairs')
  })

  test('in the place of a rewired set is what was asked for, not the rewire', () => {
    const { stands } = check({ ...HUT, at: 'stair-head' }, DEMO)
    expect(stands?.sets.find(({ place }) => place === 'stair-head')).not.toHaveProperty('rewire')
  })

  test('is plugged into the socket that is named, where a bell without ringing lead is silent', () => {
    const answer = check({ ...HUT, in: 'stairs' }, DEMO)
    expect(answer.request).toEqual({ check: 'fescue', on: 'gatehouse', in: 'stairs' })
    expect(answer.stands?.asked?.socket).toBe('stairs')
    const bell = answer.verdicts.find(({ check: id }) => id === 'bell.rings-alone')
    expect(bell?.state).toBe('fails')
    expect(
      check({ ...HUT, in: 'front' }, DEMO).verdicts.find(({ check: id }) => id === 'bell.rings-alone')?.state,
    ).toBe('holds')
  })

  test('is compared with its rewire in that socket: silent before, ringing after', () => {
    const answer = compare({ found: 'fescue-to-two-wires', on: 'gatehouse', in: 'stairs' }, DEMO)
    expect(answer.request).toMatchObject({ on: 'gatehouse', in: 'stairs' })
    const rings = (side: typeof answer.found) =>
      side.verdicts.find(({ check: id }) => id === 'bell.rings-alone')?.state
    expect([rings(answer.found), rings(answer.proposed)]).toEqual(['fails', 'holds'])
    expect(text(answer)).toContain('added as a fifth set, at the place fescue, in the socket stairs')
  })

  test('has its place in what figures, follow, solve and meter repeat', () => {
    const spot = { ...HUT, in: 'stairs' }
    const asked = { on: 'gatehouse', in: 'stairs' }
    expect(figures({ ...spot, only: 'loop' }, DEMO)).toMatchObject({
      request: asked,
      stands: { asked: { socket: 'stairs' } },
    })
    expect(follow(spot, DEMO).request).toMatchObject(asked)
    expect(follow(spot, DEMO).steps.map(({ node }) => node)).toContain('stairs/a')
    expect(solve(spot, DEMO).request).toMatchObject(asked)
    const read = meter({ ...spot, between: ['plug.a', 'plug.b'] }, DEMO)
    expect(read.request).toMatchObject(asked)
  })

  test('is in JSON under `stands`', () => {
    const { stands } = toJson(check({ ...HUT, at: 'loft' }, DEMO)) as { stands: { asked: unknown } }
    expect(stands.asked).toEqual({ place: 'loft', socket: 'attic', 'in place of': 'melick' })
  })
})

describe('a place is refused', () => {
  test.each([
    ['a place that is not there', { ...HUT, at: 'stair-hed' }, 'perhaps `stair-head`'],
    ['a socket that is not there', { ...HUT, in: 'stair' }, 'perhaps `stairs`'],
    ['one for premises themselves', { target: 'gatehouse', at: 'hall' }, '`fescue --on gatehouse --at hall`'],
    ['one for premises without it', { target: 'gatehouse', at: 'moon' }, 'leave `--at` out'],
    ['one for a set that stands nowhere', { target: 'fescue', on: 'none', in: 'front' }, 'leave `--in` out'],
  ])('where it is %s', (_, where, mend) => {
    const problem = refused(() => check(where, DEMO))
    expect(problem?.code).toBe('request-wrong')
    expect(problem?.mend).toContain(mend)
  })

  test('for a circuit', () => {
    expect(refused(() => solve({ target: 'two-meshes', at: 'hall' }, DEMO))?.found).toContain(
      'the circuit two-meshes',
    )
  })

  test('where another set stands at the place of its name, and `--at` is offered', () => {
    const shelf = {
      ...DEMO,
      find: (...[kind, name, from]: Parameters<typeof DEMO.find>) => {
        const found = DEMO.find(kind, name, from)
        return name === 'gatehouse' && found
          ? { ...found, text: found.text.replaceAll('stair-foot', 'fescue') }
          : found
      },
    }
    expect(refused(() => check(HUT, shelf))?.mend).toContain('write `--at fescue`')
  })
})

describe('a name', () => {
  test('that is the beginning of one only is taken to mean that', () => {
    expect(refused(() => check({ target: 'fescue', on: 'depot' }, DEMO))?.mend).toBe(
      'perhaps `depot-exchange`',
    )
    expect(refused(() => check({ target: 'fescue', on: 'zzz' }, DEMO))?.mend).not.toContain('perhaps')
  })
})
