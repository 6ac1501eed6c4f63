/** A mend that is moves is told as moves too: made on the bench they take the fault away. */
import { ANSWER_SCHEMAS, check, openBench, openSheet, toJson } from 'ringproof'
import { expect, test } from 'vitest'
import { checkMoved, DEMO } from '../../support/bench.ts'

test('the moves are those that the words name', () => {
  const [fault] = checkMoved('sedge', 'land core: handset.r2, onto: B3').faults
  expect(fault?.mend).toContain('land core handset.r2 on B2')
  expect(fault?.moves).toEqual([{ do: 'land core', what: 'handset.r2', onto: 'B2' }])
})

test.each([
  'fescue-strap-missing',
  'fescue-bell-to-b-wire',
  'fescue-transmitter-parked',
  'brome-earth-core-astray',
  'fescue-own-capacitor-left-in',
])('the moves that mend %s are allowed, and the fault goes with them', (name) => {
  const { set, moves } = openSheet({ kind: 'rewire', name }, DEMO)
  const bench = openBench({ target: `set/${set}` }, DEMO)
  const { faults } = bench.side(moves).check()
  const tried = faults.filter((one) => one.moves !== undefined)
  expect(tried).not.toEqual([])
  for (const { fault, subject, moves: mend = [] } of tried) {
    const after = bench.side([...moves, ...mend])
    expect(after.refused).toEqual([])
    const left = after.check().faults.map((one) => `${one.fault} ${one.subject}`)
    expect(left).not.toContain(`${fault} ${subject}`)
  }
})

test('JSON writes a part that is fitted as a sheet does', () => {
  const json = toJson(check({ target: 'melick-to-three-wires-quench-lost' }, DEMO))
  ANSWER_SCHEMAS.check.parse(json)
  const { faults } = json as unknown as { faults: readonly { fault: string; moves?: readonly unknown[] }[] }
  expect(faults.find(({ fault }) => fault === 'quench-lost')?.moves).toMatchObject([
    { do: 'fit part', what: 'new-quench', with: { kind: 'quench', resistance: '100 Ω' } },
  ])
})
