import { kitOf } from 'ringproof/answer/instruments-table'
import { deliveredSightings } from 'ringproof/answer/sightings-table'
import { stand } from 'ringproof/answer/standing'
import type { BenchTest } from 'ringproof/book/bench-test'
import { scoreRead } from 'ringproof/book/tell-apart'
import { OPEN } from 'ringproof/figures/variants'
import { benchOf } from 'ringproof/meter/bench'
import { corePairs, partPairs, pointsOf } from 'ringproof/meter/points'
import { readBetween } from 'ringproof/meter/read'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'
import { type Netlist, nodeOf, placeOf } from 'ringproof/netlist/netlist'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { DIGITAL, onBench } from './_bench-tests.ts'

const SETS = ['fescue', 'sedge', 'foxtail', 'melick', 'brome'] as const

/** A netlist under the instrument, its loose values as stated: only what is shown matters here. */
function bench(target: string, on?: string) {
  const { net } = stand({ target, ...(on === undefined ? {} : { on }) }, DEMO)
  return { ...benchOf(net, DIGITAL), loose: [] }
}

function branchOf({ branches }: Netlist, id: string): number {
  return branches.findIndex((one) => one.id === id)
}

const SHOWS: Readonly<Record<string, 'ohms' | 'capacitance' | 'volts' | 'alternating-volts'>> = {
  ohms: 'ohms',
  capacitance: 'capacitance',
  volts: 'volts',
  'alternating-volts': 'alternating-volts',
}

/**
 * What `ringproof meter` shows where a test is read; +∞ where that is open or counts as open, undefined where it is
 * adrift. Cores that are off besides.
 */
function shownBy(
  on: ReturnType<typeof bench>,
  set: string,
  { id, most = OPEN }: BenchTest,
  ...off: readonly string[]
): number | undefined {
  const [what = '', red, black, when = ''] = id.split(' ')
  const place = placeOf(on.net, set)
  const written = readCondition(when === 'cord-off' ? 'on-hook' : when)
  if (written === undefined) throw new Error(`${when} is no condition`)
  const lifted =
    when === 'cord-off'
      ? place.cores.filter(({ endsIn }) => endsIn === 'handset').flatMap(({ branch }) => branch ?? [])
      : []
  const shows = SHOWS[what]
  if (shows === undefined) throw new Error(`${what} is no range`)
  const frequency = on.net.line?.ringingFrequency
  const { value } = readBetween(
    on,
    {
      red: nodeOf(on.net, `${set}/${red}`),
      black: nodeOf(on.net, `${set}/${black}`),
      condition: conditionOf(set, written, on.net.rest),
      lifted: [...lifted, ...off.map((core) => branchOf(on.net, `${set}/${core}`))],
    },
    { shows, ...(frequency === undefined ? {} : { frequency }) },
  )
  if (value !== null && value > most) return OPEN
  return value ?? (shows === 'ohms' || shows === 'capacitance' ? OPEN : undefined)
}

const benches = new Map(SETS.map((set) => [set, onBench({ target: set })] as const))

function benchOn(set: (typeof SETS)[number]) {
  const on = benches.get(set)
  if (on === undefined) throw new Error(`${set} is on no bench`)
  return on
}

describe.each(SETS)('readings of %s', (set) => {
  const on = benchOn(set)
  // parts by themselves have tests of their own
  const readings = on.tests.filter(({ id, words }) => words === undefined && !/(?<!cord)-off$/.test(id))

  test('show what the meter shows of the set by itself', () => {
    const meter = bench(set, 'none')
    for (const one of readings.filter(({ live }) => !live)) {
      const shown = shownBy(meter, set, one) ?? Number.NaN
      const score = on.score(one.id)
      // what bends less than a tenth of a per cent counts as straight, and one digit is nothing
      if (shown === OPEN) expect([one.id, score]).toEqual([one.id, OPEN])
      else expect(Math.abs(score - shown), one.id).toBeLessThanOrEqual(1e-3 * shown + one.scale)
    }
  })

  test('show what the meter shows on the live line', () => {
    const meter = bench(set)
    const live = readings.filter((one) => one.live)
    expect(live.length).toBeGreaterThan(2)
    for (const one of live) {
      const shown = shownBy(meter, set, one) ?? Number.NaN
      expect(Math.abs(on.score(one.id) - shown), one.id).toBeLessThanOrEqual(1e-9 * Math.abs(shown) + 1e-9)
    }
  })

  test('hold every pair of the meter’s table, on-hook', () => {
    const { net } = stand({ target: set, on: 'none' }, DEMO)
    const place = placeOf(net, set)
    const points = pointsOf(net, place)
    const cores = corePairs(points)
    const pairs = [...cores, ...partPairs(net, place, points, cores)]
    const ids = new Set(readings.map(({ id }) => id))
    const bare = (id: string): string => id.slice(set.length + 1)
    expect(pairs.length).toBeGreaterThan(20)
    for (const [red, black] of pairs)
      expect(ids).toContain(`ohms ${bare(red.name)} ${bare(black.name)} on-hook`)
  })

  test('are few, each of its own, and dearer the deeper one must go', () => {
    expect(readings.length).toBeLessThanOrEqual(150)
    expect(new Set(readings.map(({ id }) => id)).size).toBe(readings.length)
    const effort = (site: BenchTest['site'], live: boolean) =>
      readings.find((one) => one.site === site && one.live === live)?.effort ?? Number.NaN
    expect(effort('outside', false)).toBeLessThan(effort('outside', true))
    expect(effort('outside', true)).toBeLessThan(effort('inside', false))
    expect(readings.some(({ site, live }) => site === 'inside' && live)).toBe(false)
  })

  test('can move: some change of the wiring at one of their points shows', () => {
    for (const one of readings.filter(({ live }) => !live)) {
      const [, red = '', black = ''] = one.id.split(' ')
      const joined = { bridge: { from: on.node(red), to: on.node(black), ohms: 7.5 } }
      expect(on.score(one.id, [joined]), one.id).not.toBe(on.score(one.id))
    }
  })
})

describe('a reading', () => {
  const fescue = benchOn('fescue')

  test('of the bell and its resistor is their sum', () => {
    // 3.3 kΩ and 1 kΩ in series; two cores and a strap are 30 mΩ. @source any textbook of circuits
    expect(fescue.score('ohms plug.a plug.ringing on-hook')).toBeCloseTo(4300, 1)
    const { net } = fescue
    const half = fescue.becomes('bell-resistor', (spec) => ({
      ...spec,
      ...{ resistance: { value: 1650, unit: 'Ω', text: '1.65 kΩ' } },
    }))
    expect(net.parts.length).toBeGreaterThan(0)
    expect(fescue.score('ohms plug.a plug.ringing on-hook', [half])).toBeCloseTo(2650, 1)
  })

  test('scatters by 1 % and its last digit, or by a third of what the instrument may be off', () => {
    const { error, scale } = fescue.test('ohms plug.a plug.b off-hook')
    expect(scale).toBe(0.1)
    // on the range of 6 kΩ the last digit is 1 Ω
    expect(error(1000)).toBeCloseTo(0.01 * 1000 + 1, 12)
    // nothing is shown as 0 to 3 digits of 0.1 Ω; half of that and 0.2 Ω of the leads, as three standard deviations
    expect(error(0)).toBeCloseTo((0.3 / 2 + 0.2) / 3, 12)
    expect(error(OPEN)).toBe(0)
  })

  test('says where the leads go, and how the set is held', () => {
    expect(fescue.test('ohms plug.a plug.ringing off-hook').how).toBe(
      'Unplug the set; handset lifted; set the instrument to ohms; red lead on the plug contact of core a (wiring 5, contact 2), black lead on the plug contact of core ringing (wiring 3, contact 4).',
    )
    expect(fescue.test('ohms handset.r1 handset.r2 cord-off').how).toBe(
      'Unplug the set; open the case; take the cores of the handset cord off their terminals; set the instrument to ohms; red lead on the loose end of core r1, black lead on the loose end of core r2.',
    )
    expect(fescue.test('ohms A2 A3 off-hook/break').how).toContain('red lead on terminal A2')
    expect(fescue.test('ohms A2 A3 off-hook/break').how).toContain('pulse contact is open')
    expect(fescue.test('alternating-volts plug.a plug.b on-hook/ringing').how).toContain(
      'ringing may come at any moment',
    )
  })

  test('of the capsules by themselves is theirs, whatever the cores land on', () => {
    const { index } = fescue.branch('handset.r2')
    expect(fescue.score('ohms handset.r1 handset.r2 cord-off', [{ lifted: index }])).toBeCloseTo(150, 6)
    expect(fescue.score('ohms handset.r1 handset.r2 cord-off', fescue.mode('receiver', 'open'))).toBe(OPEN)
    expect(fescue.score('ohms handset.r1 handset.r2 on-hook', [{ lifted: index }])).toBeGreaterThan(100)
  })

  test('above 10 MΩ is open, though a clamp lets something pass there, in the score and in what a person reads', () => {
    // the only other way from core to core is the clamp before its knee, on ohms a leak of 35 MΩ
    const { index } = fescue.branch('handset.t1')
    const one = fescue.test('ohms plug.a plug.b off-hook')
    const meter = bench('fescue', 'none')
    const { most: _, ...asShown } = one
    const shown = shownBy(meter, 'fescue', asShown, 'handset.t1') ?? Number.NaN
    expect(shown).toBeGreaterThan(20e6)
    expect(shown).toBeLessThan(40e6)
    expect(scoreRead(one, shown)).toBe(OPEN)
    expect(fescue.score(one.id, [{ lifted: index }])).toBe(OPEN)
    expect(one.most).toBe(10e6)
    expect(scoreRead(one, 9.9e6)).toBe(9.9e6)
    // nothing else is taken for open: farads and volts are what they are
    expect(scoreRead(fescue.test('volts plug.a plug.b on-hook'), 50)).toBe(50)
    // the limit is the one by which sets are identified
    expect(one.most).toBe(deliveredSightings().reading.open.value)
  })

  test.each(['handset.t1', 'handset.r1', 'line.a'])(
    'with %s parked is at the plug what the meter shows',
    (core) => {
      const { index } = fescue.branch(core)
      const meter = bench('fescue', 'none')
      const outside = fescue.tests.filter(({ id }) => id.startsWith('ohms plug.'))
      expect(outside.length).toBeGreaterThan(5)
      for (const one of outside) {
        const shown = shownBy(meter, 'fescue', one, core) ?? Number.NaN
        const score = fescue.score(one.id, [{ lifted: index }])
        if (shown === OPEN || score === OPEN) expect([one.id, score]).toEqual([one.id, shown])
        else expect(Math.abs(score - shown), one.id).toBeLessThanOrEqual(2e-3 * shown + one.scale)
      }
    },
  )

  test('of a capacitor falls with its value', () => {
    const read = SETS.map(benchOn).flatMap((on) =>
      on.tests.filter(({ id }) => id.startsWith('capacitance ')).map((one) => [on, one] as const),
    )
    expect(read.length).toBeGreaterThan(0)
    for (const [on, one] of read) {
      expect([one.unit, one.scale]).toEqual(['F', 1e-11])
      const [, red = '', black = ''] = one.id.split(' ')
      // a short is beyond every range of capacitance
      const shorted = { bridge: { from: on.node(red), to: on.node(black), ohms: 0.001 } }
      expect(on.score(one.id, [shorted])).toBe(OPEN)
    }
  })

  test('through a bridge is of the range that holds it, and differs the other way round', () => {
    const foxtail = benchOn('foxtail')
    const one = foxtail.test('ohms J4 J5 on-hook')
    expect(one.plans.length).toBe(6)
    expect(foxtail.test('ohms plug.a J3 off-hook').plans.length).toBe(1)
    expect(foxtail.score('ohms J4 J5 on-hook')).not.toBe(foxtail.score('ohms J5 J4 on-hook'))
  })

  test('is made with a needle, too', () => {
    const needle = onBench({ target: 'fescue' }, kitOf('needle', undefined))
    expect(needle.score('ohms plug.a plug.ringing on-hook')).toBeCloseTo(4300, 1)
    const { error } = needle.test('ohms plug.a plug.ringing on-hook')
    expect(error(4300)).toBeGreaterThan(fescue.test('ohms plug.a plug.ringing on-hook').error(4300))
    expect(needle.tests.some(({ id }) => id.startsWith('capacitance'))).toBe(false)
  })
})
