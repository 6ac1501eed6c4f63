import { contextsOf } from 'ringproof/answer/check-answer'
import { deliveredAgeing } from 'ringproof/answer/spread-ageing'
import { stand } from 'ringproof/answer/standing'
import { agedParts } from 'ringproof/spread/aged'
import { readAgeing } from 'ringproof/spread/ageing'
import { refitsBetween, worldOf } from 'ringproof/spread/world'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { house, lineText, MASTER, plainSet } from '../checks/_ask.ts'

const LOOSE_LINE = lineText({
  feed: '{voltage: 50 V ± 10 %, resistance: 400 Ω ± 5 %, negative: b wire, earth: positive pole}',
})

function standingHouse(sockets: readonly string[] = [MASTER]) {
  const { text, shelf = DEMO } = house(LOOSE_LINE, sockets, ['hall: {set: plain, in: front}'], plainSet(300))
  return stand({ target: '', ...(text === undefined ? {} : { text }) }, shelf)
}

describe('a world of loose values', () => {
  test('takes values with a tolerance, and counts the others', () => {
    const net = compiled(
      'r: {kind: resistor, from: p, to: earth, resistance: 1 kΩ ± 5 %}',
      's: {kind: resistor, from: p, to: earth, resistance: 1 kΩ}',
      't: {kind: transmitter, from: p, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}',
    )
    const { loose, unstated } = worldOf({ net, transmitterSpread: 3 })
    expect(loose.map(({ id, least, most }) => [id, least, most])).toEqual([
      ['trial/r resistance', 0.95, 1.05],
      ['trial/t resistance', 1 / 3, 3],
    ])
    // of the transmitter the current at which it is measured states none
    expect(unstated).toBe(2)
  })

  test('takes those of the line and of sockets from their sheets, whatever parts are made of them', () => {
    const { net, installation } = standingHouse([
      'front: {is: master, capacitance: 1.8 µF ± 5 %, resistance: 470 kΩ}',
    ])
    const world = worldOf({ net, installation, transmitterSpread: 3 })
    expect(world.loose.map(({ id }) => id)).toEqual([
      'trial-line feed voltage',
      'trial-line feed resistance',
      'front capacitance',
    ])
    const raised = world.at([1.1, 1, 1])
    const moved = refitsBetween(net, raised).map(({ part }) => net.parts[part]?.id)
    expect(moved).toEqual(['exchange/feed.b'])
    expect(raised.line?.feedVoltage).toBeCloseTo(55, 9)
    const shorter = refitsBetween(net, world.at([1, 1, 0.95])).map(({ part }) => net.parts[part]?.id)
    expect(shorter).toEqual(['front/capacitor'])
  })

  test('is the stated netlist where no factor differs from one', () => {
    const { net, installation } = standingHouse()
    const world = worldOf({ net, installation, transmitterSpread: 3 })
    expect(world.at(new Float64Array(world.loose.length).fill(1))).toBe(world.net)
  })
})

const TABLE = readAgeing(
  [
    'ringproof: 1',
    'years: 40',
    'changes:',
    '  - {part: resistor, value: resistance, factor: 1.21, spread: 1.44, source: from memory}',
    '  - {part: capacitor, value: leakage, seconds: 10, spread: 1, source: from memory}',
    '  - {part: contact, value: resistance, factor: 4, usual: 50 mΩ, spread: 1, source: from memory}',
  ].join('\n'),
  'ageing.yaml',
)

describe('age', () => {
  const standing = () =>
    stand(
      {
        target: '',
        text: plainSet(100, { parts: 'c: {kind: capacitor, from: A1, to: A2, capacitance: 2 µF}' }),
      },
      DEMO,
    )

  test('multiplies by the same share every year', () => {
    const { net } = standing()
    const aged = worldOf({ net, transmitterSpread: 1, aged: agedParts(net, TABLE, 20) })
    const load = aged.loose.find(({ id }) => id === 'plain/load resistance')
    assertClose(load?.value, 110, { relative: 1e-12 }, 'half the years, the root of the factor')
    assertClose(load?.most, 1.2, { relative: 1e-12 }, 'and of the spread')
    expect(load?.byRatio).toBe(true)
  })

  test('adds a leakage that grows evenly, and takes what a sheet is silent about as usual', () => {
    const { net } = standing()
    const { refits, rows } = agedParts(net, TABLE, 20)
    const spec = (id: string): unknown => refits.find(({ part }) => net.parts[part]?.id === id)?.spec
    // 10 Ω·F after 40 years is 20 Ω·F after 20: 10 MΩ beside 2 µF
    expect(spec('plain/c')).toMatchObject({ leakage: { value: 10e6, unit: 'Ω' } })
    expect(spec('plain/hook')).toMatchObject({ resistance: { value: 0 } })
    expect(rows.map(({ part, parts }) => [part, parts])).toEqual([
      ['resistor', 3],
      ['capacitor', 1],
      ['contact', 2],
    ])
  })

  test('leaves line and sockets alone', () => {
    const [context] = contextsOf(stand({ target: 'fescue' }, DEMO))
    if (context === undefined) throw new Error('no place')
    const { refits } = agedParts(context.net, deliveredAgeing(), 50)
    const places = new Set(refits.map(({ part }) => context.net.parts[part]?.place))
    expect([...places]).toEqual(['fescue'])
  })

  test('spreads the contacts of its plug too, which stand in no sheet of the set', () => {
    const { net, installation } = stand({ target: 'fescue' }, DEMO)
    const aged = agedParts(net, deliveredAgeing(), 50)
    const { loose } = worldOf({ net, installation, transmitterSpread: 1, aged })
    const plug = loose.filter(({ part }) => part.startsWith('fescue/plug.'))
    expect(plug.length).toBe(3)
    expect(plug.every(({ least, most }) => least === 0.5 && most === 2)).toBe(true)
  })

  test('names a source for every row, and only kinds that there are', () => {
    const { changes } = deliveredAgeing()
    expect(changes.every(({ source }) => source !== '')).toBe(true)
    const [context] = contextsOf(stand({ target: 'fescue' }, DEMO))
    const rows = context === undefined ? [] : agedParts(context.net, deliveredAgeing(), 50).rows
    expect(rows.filter(({ parts }) => parts === 0)).toEqual([])
  })

  test('a broken table is refused in words', () => {
    expect(() => readAgeing('ringproof: 1\nyears: -3\nchanges: []\n', 'ageing.yaml')).toThrow(/years/)
    expect(() => readAgeing('{', 'ageing.yaml')).toThrow(/no YAML/)
  })
})
