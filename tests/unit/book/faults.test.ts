import { readFileSync } from 'node:fs'
import { deliveredOdds } from 'ringproof/answer/odds-table'
import type { BookFault, Family } from 'ringproof/book/fault'
import { faultsOf, variantSpecs } from 'ringproof/book/faults/index'
import { servingSockets } from 'ringproof/book/faults/serving'
import { describe, expect, test } from 'vitest'
import { setText } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { type Faulty, faulty } from './_faults.ts'

const SETS = [
  'fescue',
  'fescue-late',
  'sedge',
  'sedge-with-series-bell',
  'melick',
  'darnel',
  'marram',
  'brome',
  'foxtail',
]
const FLEET: readonly (readonly [string, Faulty])[] = [
  ...SETS.map((name) => [name, faulty(name, 'none')] as const),
  ['fescue in the workshop', faulty('fescue')],
  ...['office', 'kitchen', 'ticket-desk', 'shelter', 'yard'].map(
    (place) => [`station-house, ${place}`, faulty('station-house', undefined, place)] as const,
  ),
]

function ofFleet(name: string): Faulty {
  const found = FLEET.find(([one]) => one === name)
  if (found === undefined) throw new Error(name)
  return found[1]
}

function idsOf({ faults, place }: Faulty): readonly string[] {
  const head = `${place.place}/`
  return faults.map(({ id }) => (id.startsWith(head) ? id.slice(head.length) : id))
}

describe.each(FLEET)('the faults of %s', (_, asked) => {
  const { net, place, faults } = asked

  test('have ids of their own, and are the same when asked again', () => {
    expect(new Set(faults.map(({ id }) => id)).size).toBe(faults.length)
    const odds = deliveredOdds()
    expect(faultsOf(net, place, odds)).toEqual(faultsOf(net, place, odds))
  })

  test('hold every mode of every part of the set, in the order of its parts', () => {
    const own = net.parts.filter((part) => part.place === place.place)
    const due = own.flatMap((part) =>
      (part.law.modes?.(part.spec) ?? []).map(({ mode, family }) => `${part.id} ${mode} ${family}`),
    )
    // a darnel is hardly more than a bell
    expect(due.length).toBeGreaterThanOrEqual(15)
    const had = new Set(faults.map(({ id, family }) => `${id} ${family}`))
    expect(due.filter((one) => !had.has(one))).toEqual([])
  })

  test('let every core lie on each neighbour, be parked, and be crossed with or touch each other of its cord', () => {
    const ids = new Set(idsOf(asked))
    for (const one of place.cores) {
      if (one.lands !== undefined) expect(ids).toContain(`${one.name} parked`)
      for (const two of place.cores) {
        if (one.cord !== two.cord || place.cores.indexOf(one) >= place.cores.indexOf(two)) continue
        expect(ids).toContain(`${one.name}+${two.name} touching`)
        const isPair = one.name === 'line.a' && two.name === 'line.b'
        if (one.lands !== two.lands)
          expect(ids).toContain(`${one.name}+${two.name} ${isPair ? 'reversed' : 'crossed'}`)
      }
    }
  })

  test('speak in words that stand alone, and weigh something', () => {
    for (const fault of faults) {
      for (const text of [fault.says, fault.sign, fault.mend, fault.source]) {
        expect(text, fault.id).not.toMatch(/NaN|undefined|null|\[object|Infinity| {2}/)
        expect(text.trim(), fault.id).toMatch(/^\S.*[^.\s]$/)
      }
      expect(fault.weight, fault.id).toBeGreaterThan(0)
      expect(fault.weight, fault.id).toBeLessThan(1000)
      expect(fault.subjects.length, fault.id).toBeGreaterThan(0)
      expect(fault.changes.length, fault.id).toBeGreaterThan(0)
    }
  })

  test('name subjects that are there, and change branches, nodes and parts that are there', () => {
    const known = new Set([
      ...net.nodes,
      ...net.branches.map(({ id }) => id),
      ...net.parts.map(({ id }) => id),
      ...place.cores.map(({ name }) => `${place.place}/${name}`),
      ...place.slots.map(({ name }) => `${place.place}/${name}`),
    ])
    for (const { id, subjects, changes } of faults) {
      for (const one of subjects) expect(known, id).toContain(one)
      for (const change of changes) {
        if ('lifted' in change) expect(net.branches[change.lifted], id).toBeDefined()
        else if ('within' in change) expect(change.within.ohms, id).toBeGreaterThan(0)
        else if ('instead' in change) expect(net.parts[change.instead.part], id).toBeDefined()
        else {
          const { from, to, ohms } = change.bridge
          expect(net.nodes[from] !== undefined && net.nodes[to] !== undefined, id).toBe(true)
          expect(from, id).not.toBe(to)
          expect(ohms, id).toBeGreaterThan(0)
        }
      }
    }
  })

  test('hold the same thing gone wrong in the same way once', () => {
    const groups = new Map<string, readonly string[]>()
    for (const { id, subjects, family, changes } of faults) {
      const same = `${subjects} ${family} ${JSON.stringify(changes)}`
      groups.set(same, [...(groups.get(same) ?? []), id])
    }
    expect([...groups.values()].filter((ids) => ids.length > 1)).toEqual([])
  })
})

const ALL: readonly BookFault[] = FLEET.flatMap(([, { faults }]) => faults)
const FAMILIES: readonly Family[] = [
  'open',
  'resists',
  'shorted',
  'leaky',
  'lost-value',
  'drifted',
  'shorted-turns',
  'packed',
  'weak-magnet',
  'stuck',
  'crossed',
  'one-off',
  'missing',
  'extra',
  'damp',
  'reversed',
  'turned',
]

test('every family occurs in the fleet, and no other', () => {
  expect([...new Set(ALL.map(({ family }) => family))].sort()).toEqual([...FAMILIES].sort())
})

test('what the trade knows is there', () => {
  const ids = new Set(FLEET.flatMap(([, one]) => idsOf(one)))
  for (const id of [
    'coil open-a',
    'coil shorted-turns-c',
    'coil turned-b',
    'bell weak-magnet',
    'bell shorted-turns',
    'hook dirty',
    'hook welded',
    'hook open',
    'impulse dirty',
    'impulse-quench leaky',
    'balance-c lost-value',
    'balance-c lossy',
    'bell-resistor drifted-up',
    'transmitter packed',
    'transmitter damp',
    'receiver weak-magnet',
    'click leaky',
    'ringer open',
    'regulator missing',
    'regulator.series open',
    'B2-B3 missing',
    'B2-B3 extra',
    'B2-B3 damp',
    'handset.t1+handset.r1 crossed',
    'handset.t1+handset.r1 touching',
    'handset.t1+handset.t2 damp',
    'line.a+line.b reversed',
    'hall/cable reversed',
    'front/cable reversed',
    'plug.3 high-resistance',
    'bench/capacitor lost-value',
    'bench/resistor open',
    'bench/gas-tube shorted',
    'hall/cable open-ringing',
    'hall/cable bad-joint-a',
    'hall/cable shorted-a-b',
    'hall/a earthed',
    'exchange/feed.a open',
    'exchange/ringing high-resistance',
  ])
    expect(ids, id).toContain(id)
})

describe('where faults may be', () => {
  test('a core that belongs on B2 of a sedge may lie on B3, and the other way round in a fescue', () => {
    expect(idsOf(ofFleet('sedge')).filter((id) => id.startsWith('handset.r2 one-off'))).toEqual([
      'handset.r2 one-off B1',
      'handset.r2 one-off B3',
    ])
    expect(idsOf(ofFleet('fescue'))).toContain('handset.r2 one-off B2')
  })

  test('no strip reaches into the next one, and no strap is doubled', () => {
    const ids = idsOf(ofFleet('fescue'))
    expect(ids.filter((id) => /^[A-Z]\d-[A-Z]\d (extra|damp)$/.test(id)).every((id) => id[0] === id[3])).toBe(
      true,
    )
    expect(ids).not.toContain('B4-B5 extra')
    expect(ids).not.toContain('B4-B5 damp')
    expect(ids).toContain('B3-B4 extra')
  })

  test('a soldered strap is seldom missing, one of the board never', () => {
    const { faults } = ofFleet('sedge')
    const missing = faults.filter(({ id }) => /-.* missing$/.test(id))
    expect(missing.map(({ id }) => id)).toEqual([
      'sedge/B4-B5 missing',
      'sedge/C3-A1 missing',
      'sedge/B3-B4 missing',
    ])
    const [screwed, , soldered] = missing
    assertClose(soldered?.weight, 0.2 * (screwed?.weight ?? 0), { relative: 1e-12 }, 'held by solder')
  })

  test('a set alone has no faults of sockets; in premises those of its own way to the line, and no others', () => {
    expect(ofFleet('fescue').faults.some(({ id }) => !id.startsWith('fescue/'))).toBe(false)
    const shelter = ofFleet('station-house, shelter')
    expect(servingSockets(shelter.net, shelter.place)).toEqual(['porch', 'hall', 'front'])
    const owners = new Set(shelter.faults.map(({ id }) => id.split('/')[0]))
    expect(owners).toEqual(new Set(['exchange', 'front', 'hall', 'porch', 'shelter']))
  })

  test('a unit is missing only where one is plugged in', () => {
    expect(idsOf(ofFleet('sedge'))).not.toContain('regulator missing')
    const bare = faulty(setText('fescue', 'slots: {regulator: {fitted: none}}'), 'none')
    expect(idsOf(bare)).not.toContain('regulator missing')
  })

  test('a parked core is crossed with one that lies in its place, and lies one off nothing', () => {
    const bare = faulty(setText('fescue', 'cords: {line: {cores: {spare: {lands: parked}}}}'), 'none')
    const crossed = bare.fault('line.ringing+line.spare crossed')
    expect(crossed.sign).toMatch(/^line\.ringing is parked and line\.spare on C1; /)
    expect(crossed.mend).toBe('with the set unplugged, land line.ringing on C1 and park line.spare')
    expect(idsOf(bare).filter((id) => /^line\.spare (one-off|parked)/.test(id))).toEqual([])
  })
})

describe('weights', () => {
  test('of wiring faults count sets: those of one sort add up to what the table of odds says', () => {
    const odds = deliveredOdds().faults
    const sumOf = (name: string, pattern: RegExp): number =>
      idsOf(ofFleet(name)).reduce((sum, id, k) => {
        return pattern.test(id) ? sum + (ofFleet(name).faults[k]?.weight ?? 0) : sum
      }, 0)
    const sums: readonly (readonly [string, RegExp, number])[] = [
      ['fescue', / crossed$/, odds['cores-crossed'].weight],
      ['fescue', / one-off /, odds['core-one-off'].weight],
      ['fescue', / parked$/, odds['core-parked'].weight],
      ['fescue', / touching$/, odds['cores-touching'].weight],
      ['fescue', / extra$/, odds['strap-extra'].weight],
      ['fescue', /\d[-+].* damp$|[abrt12]\+.* damp$|spare\+.* damp$|ringing\+.* damp$/, odds.damp.weight],
      ['fescue', /^\w+-\w+ missing$/, odds['strap-missing'].weight],
      ['fescue', /^regulator missing$/, odds['unit-missing'].weight],
      ['fescue', /^line.*reversed$/, odds['pair-reversed'].weight],
      ['station-house, kitchen', /cable reversed$/, odds['socket-pair-reversed'].weight],
      ['station-house, kitchen', /cable open-/, odds['wire-broken'].weight],
      ['station-house, kitchen', / earthed$/, odds['wire-earthed'].weight],
    ]
    for (const [name, pattern, due] of sums)
      assertClose(sumOf(name, pattern), due, { relative: 1e-12 }, `${name} ${pattern}`)
  })

  test('say where they are from', () => {
    expect(new Set(ALL.map(({ source }) => source))).toEqual(new Set(['from memory']))
  })
})

test('words name the thing within the part, and mends come with their caution', () => {
  const { fault } = ofFleet('station-house, kitchen')
  expect(fault('coil open-a').says).toBe('winding a of the coil is open')
  expect(fault('hall/cable shorted-a-b').says).toBe('wires a and b of the cable to socket hall touch')
  expect(fault('handset.t1+handset.r1 crossed').says).toBe('the cores handset.t1 and handset.r1 are crossed')
  expect(fault('front/capacitor leaky').mend).toMatch(/wires of a socket are live, and local codes/)
  expect(fault('hall/cable open-a').mend).toMatch(/wires of a socket are live, and local codes/)
  expect(fault('exchange/feed.a open').mend).toMatch(/whoever runs the exchange/)
  expect(fault('bell open').mend).toMatch(/^with the set unplugged, /)
})

test('the parts of a variant have the values that the fault gives them, and their own otherwise', () => {
  const { net, fault } = ofFleet('fescue')
  const index = net.parts.findIndex(({ id }) => id === 'fescue/bell')
  const weak = variantSpecs(net, fault('bell weak-magnet'))
  expect(weak(index)).toMatchObject({ 'rings from': { value: { value: 6e-3 } } })
  expect(variantSpecs(net, fault('bell open'))(index)).toBe(net.parts[index]?.spec)
  expect(weak(0)).toBe(net.parts[0]?.spec)
  expect(() => weak(net.parts.length)).toThrow(RangeError)
})

test('the document has a row for every family, and for every fault of the wiring with its weight and source', () => {
  const text = readFileSync(new URL('../../../docs/fault-book.md', import.meta.url), 'utf8')
  for (const family of FAMILIES) expect(text).toContain(`\n| \`${family}\` | `)
  for (const [name, { weight, source }] of Object.entries(deliveredOdds().faults))
    expect(text, name).toMatch(new RegExp(`\\n\\| \`${name}\` \\| ${weight} \\| [^|]+ \\| ${source} \\|`))
})
