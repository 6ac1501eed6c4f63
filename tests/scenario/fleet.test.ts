/** The fleet of the demo: every set, rewire and premises comes out as its sheet says that it is meant to. */
import { type CheckAnswer, check, figures, solve } from 'ringproof'
import type { SheetKind } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { DEMO, troubles } from '../support/bench.ts'

const LINES = ['valley-exchange', 'signal-box', 'adapter-port']

/** A path without the places in front of its ids. */
const bare = (path: readonly string[]): string => path.map((id) => id.replace(/^[^/]*\//, '')).join(' ')

/** What fails of the wiring group, each as its check, subject and path. */
function failing(answer: CheckAnswer): readonly string[] {
  return answer.verdicts
    .filter(({ check: id, state }) => id.startsWith('wiring.') && state === 'fails')
    .map(({ check: id, subject, path }) => `${id.slice(7)} ${bare([subject])}: ${bare(path)}`)
}

/** A plug of two wires has no ringing lead to ask about. */
const TWO_WIRES = { 'wiring.ringing-lead-alone': 'unknown' }
/** A bellset has no handset, hook or dial to ask about. */
const BELLSET = {
  'wiring.cores-reach-parts': 'unknown',
  'wiring.loop-through-set': 'unknown',
  'wiring.loop-closed-off-hook': 'unknown',
  'wiring.quench-present': 'unknown',
}

/** Meant to hold, with what cannot be asked of it. */
const HOLDING: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  ['fescue-late', {}],
  ['melick', TWO_WIRES],
  ['darnel', BELLSET],
  ['marram', {}],
  ['brome', {}],
  // two bells in series: every way is closed, the figures tell
  ['sedge-with-series-bell', {}],
  ['fescue-late-converted', {}],
  ['fescue-mirrored-plug-crossed-back', {}],
  ['melick-to-three-wires', {}],
  ['marram-with-bell-resistor', {}],
  ['marram-converted', {}],
  ['marram-converted-without-resistor', {}],
  ['brome-earth-parked', {}],
  ['darnel-put-right', BELLSET],
  ['sedge-series-bell-taken-out', {}],
  // their bells hang on the pair through their own capacitors and ring; a parked ringing core is no failure
  ['fescue-to-two-wires', {}],
  ['melick-new-cord', {}],
  ['marram-as-found', {}],
  // alone; beside bells with resistors it takes the greater part of the current
  ['fescue-without-bell-resistor', {}],
]

/** Meant to fail: the whole list of what does, with the path. */
const FAILING: readonly (readonly [string, readonly string[]])[] = [
  [
    'fescue-late-as-found',
    ['cores-reach-parts receiver: handset.r1 T5 handset.r2', 'no-part-left-out hush-r: U3 S1'],
  ],
  [
    'fescue-late-converted-one-off',
    [
      'cores-separate handset.t2, handset.r2: handset.t2 T8 handset.r2',
      'cores-reach-parts receiver: handset.r1 T5 handset.r2 T8',
    ],
  ],
  ['fescue-late-ringing-on-loop', ['ringing-lead-alone fescue-late-as-found: plug.ringing S5 S1 plug.a']],
  ['fescue-late-core-on-dead-terminal', ['cores-reach-parts receiver: handset.r1 T5 handset.r2 S6']],
  [
    'fescue-mirrored-plug',
    [
      'ringing-lead-to-bell bell: plug.spare',
      'bell-return bell: C3 A1 plug.a',
      'spares-free C4: C4',
      'spares-free plug.ringing: plug.ringing',
    ],
  ],
  [
    'fescue-own-capacitor-left-in',
    [
      'ringing-lead-alone fescue-as-found: plug.ringing C1 C2 B5 plug.b',
      'one-ringing-capacitor bell: capacitor own-capacitor',
    ],
  ],
  [
    'fescue-strap-missing',
    [
      'cores-reach-parts transmitter: handset.t1 A5 handset.t2 B4',
      'loop-through-set fescue: plug.a A1 A2 A3 B5 plug.b',
      'loop-closed-off-hook fescue: plug.a A1 A2 A3 B5 plug.b',
    ],
  ],
  ['fescue-spare-joined', ['spares-free plug.spare: plug.spare']],
  ['melick-to-three-wires-quench-lost', ['quench-present impulse: D7 E4']],
  [
    'melick-to-three-wires-leg-left',
    ['ringing-lead-alone melick-new-cord: plug.ringing E2 E3 D7 handset.t2', 'quench-present impulse: D7 E4'],
  ],
  ['melick-coil-turned', ['ringing-lead-to-bell bell: ']],
  ['marram-base-live', ['touchable-free base: Q4']],
  ['brome-earth-core-astray', ['spares-free plug.earth: plug.earth']],
  [
    'darnel-in-series',
    ['bell-return bell: G3', 'spares-free plug.spare: plug.spare', 'no-part-left-out bell: G2 G3'],
  ],
  [
    'darnel-still-in-series',
    [
      'bell-return bell: G3',
      'spares-free plug.spare: plug.spare',
      'no-part-left-out bell: G2 G3',
      'no-part-left-out bell-resistor: G1 G2',
    ],
  ],
  [
    'sedge-series-bell-strap-forgotten',
    ['bell-return bell: C3', 'no-part-left-out bell-resistor: C1 C2', 'no-part-left-out bell: C2 C3'],
  ],
]

/** Premises with the checks that are meant to fail, each with its place. */
const PREMISES: readonly (readonly [string, readonly string[]])[] = [
  ['station-house', []],
  ['cottage', []],
  ['cottage-bare', ['ringing-lead-to-bell parlour']],
  ['gatehouse', ['ringing-lead-to-bell stair-foot']],
  ['lodge', []],
  ['crossing-box', []],
  ['lamp-room', ['loop-open-on-hook lamps', 'loop-open-on-hook wicks', 'bell-return wicks']],
  ['goods-office-shared', []],
  ['signal-school', []],
  ['signal-school-bare', []],
  ['ganger-hut', []],
  ['ganger-hut-turned', ['loop-open-on-hook ganger', 'bell-return ganger']],
  [
    'weigh-house-turned',
    ['loop-open-on-hook weigher', 'loop-open-on-hook bookkeeper', 'bell-return bookkeeper'],
  ],
  [
    'junction-cabin-turned',
    [
      'loop-open-on-hook frame-1',
      'loop-open-on-hook frame-2',
      'loop-open-on-hook frame-3',
      'loop-open-on-hook frame-4',
      'loop-open-on-hook sleeper',
      'bell-return sleeper',
    ],
  ],
  ['museum-annexe', []],
]
const CROWDED = ['goods-office', 'museum-hall']

/** The ringing current of every bell of premises by its place, mA. */
function bells(premises: string): Readonly<Record<string, number>> {
  const found = figures({ target: premises, only: 'ringing.current' }, DEMO).figures
  return Object.fromEntries(found.map(({ subject, value }) => [subject.split('/')[0], 1e3 * (value ?? 0)]))
}

test('every sheet of the fleet reads without problems, and no two subjects share a name', () => {
  const kinds: readonly SheetKind[] = ['set', 'unit', 'line', 'premises', 'rewire', 'circuit']
  for (const kind of kinds) {
    for (const name of DEMO.names(kind)) {
      const text = DEMO.find(kind, name)
      expect(text && readSheet(text, DEMO, kind).problems, `${kind} ${name}`).toEqual([])
    }
  }
  const subjects = kinds.flatMap((kind) => DEMO.names(kind))
  expect(new Set(subjects).size).toBe(subjects.length)
  const told = [...HOLDING, ...FAILING, ...PREMISES].map(([name]) => name)
  for (const name of [...told, ...CROWDED, ...LINES]) expect(subjects).toContain(name)
})

test.each(HOLDING)('%s holds in the workshop', (target, unasked) => {
  expect(troubles(check({ target }, DEMO))).toEqual(unasked)
})

test.each(FAILING)('%s fails in the workshop, and in nothing but what its sheet says', (target, found) => {
  expect(failing(check({ target }, DEMO))).toEqual(found)
})

test.each(PREMISES)('the wiring of %s fails where its sheet says, and nowhere else', (target, found) => {
  const verdicts = check({ target }, DEMO).verdicts.filter(
    ({ check: id, state }) => id.startsWith('wiring.') && state === 'fails',
  )
  expect(verdicts.map(({ check: id, subject }) => `${id.slice(7)} ${subject.split('/')[0]}`)).toEqual(found)
})

test.each([...PREMISES.map(([name]) => name), ...CROWDED, 'crossing-box-astray'])(
  '%s is solved on-hook, ringing and with one set off-hook',
  (target) => {
    for (const condition of ['on-hook', 'on-hook/ringing', 'off-hook']) {
      const ringing = condition.endsWith('ringing')
      const answer = solve({ target, condition, ...(ringing ? { frequency: 25 } : {}) }, DEMO)
      expect(answer.residual).toBeLessThan(1)
      expect(Object.keys(answer.currents).length).toBeGreaterThan(20)
      expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity/)
    }
  },
)

test.each(LINES)('%s feeds a fescue with a loop current that it works with', (on) => {
  const [loop] = figures({ target: 'fescue', on, only: 'loop.current' }, DEMO).figures
  expect(loop?.value).toBeGreaterThan(0.02)
  expect(loop?.value).toBeLessThan(0.06)
})

test('a fescue-late gives every figure of a fescue', () => {
  const of = (target: string) => figures({ target }, DEMO).figures.map(({ value }) => value ?? 0)
  const late = of('fescue-late')
  of('fescue').forEach((value, k) => {
    if (Math.abs(value) > 1e-9) expect(Math.abs((late[k] ?? 0) / value - 1)).toBeLessThan(1e-6)
  })
})

describe('the ringing current', () => {
  test('reaches all five of the station house', () => {
    expect(Object.values(bells('station-house')).every((current) => current > 3)).toBe(true)
  })
  test('is too little for each of the twelve of the museum hall', () => {
    const currents = Object.values(bells('museum-hall'))
    expect(currents).toHaveLength(12)
    expect(Math.max(...currents)).toBeLessThan(3)
  })
  test('goes to a marram without bell resistor, and to all when it has one', () => {
    const { clerk = 0, ...others } = bells('goods-office')
    expect(clerk).toBeGreaterThan(5 * Math.max(...Object.values(others)))
    expect(Math.max(...Object.values(others))).toBeLessThan(3)
    expect(Math.min(...Object.values(bells('goods-office-shared')))).toBeGreaterThan(4)
  })
  test('does not reach the cottage before the adapter lead does', () => {
    expect(bells('cottage-bare')['parlour']).toBeLessThan(1e-3)
    expect(bells('cottage')['parlour']).toBeGreaterThan(3)
  })
})

describe('what once was judged wrongly', () => {
  test('a foxtail holds: its capacitor is found, though its ringer is silent at the test voltage', () => {
    expect(troubles(check({ target: 'foxtail' }, DEMO))).toEqual(TWO_WIRES)
  })
  test('the wiring of the goods office holds, many bells or few', () => {
    expect(failing(check({ target: 'goods-office' }, DEMO))).toEqual([])
  })
  test('an earth core on the b wire fails the check of earth where the socket has one', () => {
    expect(failing(check({ target: 'crossing-box-astray' }, DEMO)).join()).toMatch(/earth-free signalman/)
  })
})
