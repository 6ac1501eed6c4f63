import { contextsOf } from 'ringproof/answer/check-answer'
import { setFigures } from 'ringproof/answer/set-figures'
import { stand } from 'ringproof/answer/standing'
import { CHECKS } from 'ringproof/checks/catalogue'
import { between } from 'ringproof/figures/between'
import type { Tap } from 'ringproof/figures/figure'
import { loopCurrent } from 'ringproof/figures/loop'
import { readFigure } from 'ringproof/figures/read'
import { compileCircuit } from 'ringproof/netlist/compile'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'
import { sameStates } from 'ringproof/netlist/line-state'
import { type Netlist, nodeOf } from 'ringproof/netlist/netlist'
import { groupsOf, makePortion } from 'ringproof/netlist/portion'
import { readSheet } from 'ringproof/sheet/read'
import { answererOf } from 'ringproof/solver/answerer'
import type { Question } from 'ringproof/solver/question'
import { currentIn, type Solution, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

/** So far two answers may be apart, as a share of the largest of their kind: both are refined to the last digits. */
const APART = 1e-9

type Read = (solution: Solution) => { re: number; im: number } | undefined

function expectSame(read: Read, one: Solution, other: Solution, largest: number): void {
  const p = read(one)
  const q = read(other)
  expect(p === undefined).toBe(q === undefined)
  if (p === undefined || q === undefined) return
  expect(Math.hypot(p.re - q.re, p.im - q.im)).toBeLessThanOrEqual(APART * largest + 1e-15)
}

function largestOf(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
}

/** Asks every check and figure of a standing, and compares each answer with a solve of its own. */
function askEverything(target: string): number {
  const standing = stand({ target }, DEMO)
  let compared = 0
  const supply = (net: Netlist) => {
    const answer = answererOf(net)
    const seen = new Set<string>()
    return (question: Question, reads?: Parameters<typeof answer>[1]) => {
      const given = answer(question, reads)
      const key = JSON.stringify([question, reads])
      if (reads === undefined || seen.has(key)) return given
      seen.add(key)
      compared += 1
      const fresh = solve(net, question)
      expect(given.probeOpen).toBe(fresh.probeOpen)
      if (fresh.probeOpen) return given
      const [p, q] = reads.nodes
      if (p !== undefined && q !== undefined)
        expectSame((one) => voltageBetween(one, p, q), given, fresh, largestOf(fresh.voltages))
      for (const k of reads.branches)
        expectSame((one) => currentIn(one, k), given, fresh, largestOf(fresh.currents))
      return given
    }
  }
  for (const context of contextsOf(standing, supply)) {
    for (const rule of CHECKS) rule.run(context)
    setFigures(context)
  }
  return compared
}

describe('an answerer', () => {
  test.each([
    'sedge-converted-as-fescue',
    'marram-base-live',
    'foxtail',
    'brome',
    'lamp-room',
    'goods-office',
  ])(
    'gives %s what a fresh solve of each question gives',
    (target) => {
      expect(askEverything(target)).toBeGreaterThan(50)
    },
    60_000,
  )

  test('solves equal questions once, whatever words their condition is in', () => {
    const { net, places } = stand({ target: 'fescue' }, DEMO)
    const [place = ''] = places
    const answer = answererOf(net)
    const said = conditionOf(place, readCondition('on-hook') ?? never())
    const one = answer({ analysis: 'direct', condition: said })
    const other = answer({ analysis: 'direct', condition: { line: 'idle', sets: {} } })
    expect(other.voltages).toBe(one.voltages)
  })

  test('makes a source of an ideal link that a voltage is put into', () => {
    const { net, places } = stand({ target: 'fescue' }, DEMO)
    const [place = ''] = places
    const condition = conditionOf(place, readCondition('off-hook/speech') ?? never())
    const base = { analysis: 'alternating', frequency: 1000, sources: 'none', condition } as const
    const branch = net.branchIndex.get(`${place}/handset.t1`) ?? -1
    const answer = answererOf(net)
    answer(base)
    const given = answer({ ...base, series: [{ branch, re: 1 }] })
    const fresh = solve(net, { ...base, series: [{ branch, re: 1 }] })
    expectSame((one) => currentIn(one, branch), given, fresh, largestOf(fresh.currents))
    expect(largestOf(given.currents)).toBeGreaterThan(1e-6)
  })

  test('knows nothing of a plug that is lifted, and reads its links all the same', () => {
    const { net } = stand({ target: 'goods-office' }, DEMO)
    const place = net.places[1] ?? never()
    const lifted = net.branches
      .filter(({ part }) => part.sort === 'plug' && part.place === place.place)
      .map(({ index }) => index)
    const condition = conditionOf(place.place, readCondition('off-hook') ?? never())
    const figure = readFigure(
      net,
      loopCurrent(net, place, condition, 'loop.current', { lifted }),
      answererOf(net),
    )
    expect(figure.value).toBe(0)
  })

  test('feeds a part with other values as it feeds the rest', () => {
    const { net } = stand({ target: 'goods-office' }, DEMO)
    const place = net.places[1] ?? never()
    const part = net.parts.findIndex(({ id }) => id === `${place.place}/transmitter`)
    const own = (net.parts[part] ?? never()).spec as unknown as { resistance: { value: { value: number } } }
    const { resistance } = own
    const other = { ...own, resistance: { ...resistance, value: { ...resistance.value, value: 600 } } }
    const lifted = net.branches
      .filter(({ part: one }) => one.sort === 'plug' && one.place === place.place)
      .map(({ index }) => index)
    const plan = between(
      net,
      nodeOf(net, `${place.place}/handset.t1`),
      nodeOf(net, `${place.place}/handset.t2`),
      {
        condition: conditionOf(place.place, readCondition('off-hook') ?? never()),
        lifted,
        instead: [{ part, spec: other as never }],
      },
    )
    const given = readFigure(net, plan, answererOf(net)).value ?? 0
    const fresh = readFigure(net, plan, (question) => solve(net, question)).value ?? -1
    expect(Math.abs(given / fresh - 1)).toBeLessThan(1e-9)
    const as = readFigure(
      net,
      { ...plan, taps: plan.taps.map((tap) => withoutInstead(tap)) },
      answererOf(net),
    )
    expect(as.value).not.toBeCloseTo(given, 0)
  })

  test('puts a voltage into a part whose law bends, as the line feeds it', () => {
    const { net, places } = stand({ target: 'fescue' }, DEMO)
    const branch = net.branchIndex.get(`${places[0]}/transmitter`) ?? -1
    const question: Question = {
      analysis: 'alternating',
      frequency: 1000,
      sources: 'none',
      small: 'fed',
      condition: conditionOf(places[0] ?? '', readCondition('off-hook/speech') ?? never()),
      series: [{ branch, re: 1 }],
    }
    const fresh = solve(net, question)
    expectSame((one) => currentIn(one, branch), answererOf(net)(question), fresh, largestOf(fresh.currents))
    expect(largestOf(fresh.currents)).toBeGreaterThan(1e-4)
  })

  test('says a problem each time it is asked, and answers all else', () => {
    const text = `ringproof: 1
sheet: circuit
name: two-batteries
parts:
  e: {kind: voltage-source, from: p, to: earth, direct: 10 V}
  f: {kind: voltage-source, from: p, to: earth, direct: 9 V}
  r: {kind: resistor, from: p, to: earth, resistance: 1 kΩ}
`
    const { sheet } = readSheet({ file: 'two-batteries.yaml', text }, DEMO, 'circuit')
    const answer = answererOf(compileCircuit(sheet ?? never()))
    const condition = { line: 'idle', sets: {} } as const
    const ask = () => answer({ analysis: 'direct', condition })
    expect(ask).toThrow('contradiction')
    expect(ask).toThrow('contradiction')
    // one source lifted, the other one is right
    const left = answer({ analysis: 'direct', condition, lifted: [1] })
    expect(voltageBetween(left, 1, 0)?.re).toBeCloseTo(10, 9)
  })
})

describe('portions of a netlist', () => {
  test('hold the sets and sockets that they are made of, with the ids of the whole', () => {
    const { net } = stand({ target: 'goods-office' }, DEMO)
    const groups = groupsOf(net) ?? never()
    const portion = makePortion(net, groups, new Set([1]))
    const [place = ''] = groups.places
    expect(portion.net.nodes[0]).toBe('earth')
    expect(portion.net.nodes.slice(1).every((id) => id.startsWith(`${place}/`))).toBe(true)
    expect(portion.net.parts.some(({ sort }) => sort === 'plug')).toBe(false)
    const alone = net.branches.filter(({ part }) => part.place === place && part.sort !== 'plug')
    expect(portion.net.branches.map(({ id }) => id)).toEqual(alone.map(({ id }) => id))
    expect(portion.net.graph.order).toBe(portion.net.nodes.length)
    expect(portion.net.graph.size).toBe(portion.net.branches.length)
    expect(nodeOf(portion.net, 'earth')).toBe(0)
  })

  test('are none where no set stands', () => {
    const { net } = stand({ target: 'fescue' }, DEMO)
    expect(groupsOf({ ...net, places: [] })).toBeUndefined()
  })
})

describe('states of the line', () => {
  test('idle and speech are one network, ringing another', () => {
    const { net } = stand({ target: 'fescue' }, DEMO)
    expect(sameStates(net)).toEqual({ idle: 'idle', ringing: 'ringing', speech: 'idle' })
  })

  test('are all one where there is no line', () => {
    const { net } = stand({ target: 'fescue', on: 'none' }, DEMO)
    expect(sameStates(net)).toEqual({ idle: 'idle', ringing: 'idle', speech: 'idle' })
  })
})

function withoutInstead(tap: Tap): Tap {
  const { instead: _, ...question } = tap.question
  return { ...tap, question }
}

function never(): never {
  throw new Error('the test is wrong')
}
