/** Each named fault is caught in its demo with its path, its consequence and its mend, and none where the wiring is right. */
import { type CheckAnswer, check } from 'ringproof'
import { FAULT_RULES } from 'ringproof/faults/catalogue'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../support/bench.ts'
import { ALL_FAULTS, FAULT_DEMOS, type FaultDemo, type Relation, RIGHT } from '../support/fault-demos.ts'

type Fault = CheckAnswer['faults'][number]
type Consequence = Fault['consequences'][number]

const bare = (id: string): string => id.replace(/^[^/]*\//, '')

const ids = (answer: CheckAnswer): readonly string[] => answer.faults.map(({ fault }) => fault)

/** Less than this is no current, A; what leaks through open contacts is less. */
const NOTHING = 1e-6

const HOLDS: Readonly<Record<Relation, (now: number, then: number) => boolean>> = {
  rises: (now, then) => then > 1.05 * now,
  falls: (now, then) => then < 0.95 * now,
  'from nothing': (now, then) => now < NOTHING && then > 100 * NOTHING,
  'to nothing': (now, then) => now > 100 * NOTHING && then < NOTHING,
  'from open': (now, then) => now === Number.POSITIVE_INFINITY && then > 0 && then < 1e5,
}

/** A figure's number; an open way is beyond all of them. */
function size(figure: Consequence['figure'] | undefined): number {
  if (figure === undefined) throw new Error('no figure')
  return figure.state === 'open' ? Number.POSITIVE_INFINITY : (figure.value ?? Number.NaN)
}

function consequence({ consequences }: Fault, { figure: id, of }: FaultDemo): Consequence | undefined {
  return consequences.find(
    ({ figure }) => figure.id === id && (of === undefined || figure.subject.endsWith(of)),
  )
}

describe.each(FAULT_DEMOS)('$target', (demo) => {
  const { target, on, fault } = demo
  let known: CheckAnswer | undefined
  const answer = (): CheckAnswer => {
    known ??= check({ target, ...(on === undefined ? {} : { on }) }, DEMO)
    return known
  }

  test(`is told as ${fault}, with path, mend and what the mend makes of it`, () => {
    const found = answer()
    const one = found.faults.find((each) => each.fault === fault)
    if (one === undefined) throw new Error(`not named: ${ids(found).join()}`)
    expect(bare(one.subject)).toBe(demo.subject)
    expect(one.path.map(bare).join(' ')).toBe(demo.path)
    expect(one.mend).toMatch(demo.mend)
    const follows = consequence(one, demo)
    const [now, then] = [size(follows?.figure), size(follows?.mended)]
    expect(HOLDS[demo.relation](now, then), `${now} ${demo.relation} ${then}`).toBe(true)
    expect(ids(found)).toEqual(ALL_FAULTS[target] ?? [fault])
  })

  test('explains verdicts that fail, or stands where no check of the wiring sees it', () => {
    const found = answer()
    const one = found.faults.find((each) => each.fault === fault)
    const failed = found.verdicts.filter(({ state }) => state === 'fails').map(({ check: id }) => id)
    const wiring = failed.filter((id) => id.startsWith('wiring.'))
    const explained = failed.filter((id) => one?.explains.includes(id))
    expect(explained.length > 0 || wiring.length === 0).toBe(true)
  })
})

describe('where the wiring is right', () => {
  const cases = RIGHT.flatMap(([target, ...lines]) =>
    lines.length === 0 ? [{ target }] : lines.map((on) => ({ target, on })),
  )
  test.each(cases)('no fault is named: $target on $on', (request) => {
    expect(ids(check(request, DEMO))).toEqual([])
  })
})

test('every fault of the catalogue has its demo', () => {
  const shown = new Set(FAULT_DEMOS.map(({ fault }) => fault))
  // the last resort, for what no nearer name fits, has its tests beside its file
  const last = ['core-on-wrong-terminal', 'strap-too-many']
  expect(FAULT_RULES.map(({ id }) => id).filter((id) => !shown.has(id))).toEqual(last)
})

describe('a pair that is reversed', () => {
  const hut = (reversed: string, set: string): CheckAnswer => {
    const text = [
      'ringproof: 1\nsheet: premises\nname: hut\nline: depot-exchange',
      `reversed: ${reversed}`,
      'sockets:\n  box: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
      '  two: {is: secondary, fed from: box}',
      `sets:\n  one: {set: fescue, in: box}\n  other: {${set}, in: two}\n`,
    ].join('\n')
    return check({ target: '', text: { file: 'hut.yaml', text } }, DEMO)
  }

  test('at the exchange is no fault, whatever stands there', () => {
    for (const set of ['fescue', 'melick', 'foxtail', 'marram']) {
      expect(ids(hut('yes', `set: ${set}`))).toEqual([])
    }
  })

  test.each(['melick', 'foxtail'])(
    'at the cord of a %s, which has its own capacitor, is none either',
    (set) => {
      expect(ids(hut('no', `set: ${set}, reversed: yes`))).toEqual([])
    },
  )

  test('at its own cord lets a set ring beside another, and bridges direct current that is there all the time', () => {
    const [fault] = hut('no', 'set: fescue, reversed: yes').faults
    expect(fault).toMatchObject({ fault: 'reversed-at-cord', subject: 'other' })
    const of = (id: string) => fault?.consequences.find(({ figure }) => figure.id === id)
    // milliamperes on-hook and while the pulse contact is open, where nothing should flow
    expect(of('bell.direct-current')?.figure.value).toBeGreaterThan(3e-3)
    expect(of('leakage.on-hook')?.figure.value).toBeGreaterThan(3e-3)
    expect(of('dial.leakage-open')?.figure.value).toBeGreaterThan(3e-3)
    expect(of('dial.leakage-open')?.mended?.value).toBeLessThan(1e-5)
    expect(of('ringing.current')?.figure.value).toBeGreaterThan(3e-3)
    expect(fault?.says).toMatch(/Alone it gets 0\.1 mA/)
  })
})

test('with the sets unplugged that too many bells name, every other bell rings, and with one fewer not', () => {
  const [fault] = check({ target: 'museum-hall' }, DEMO).faults
  const out = /^unplug ([^;]*?), or give/.exec(fault?.mend ?? '')?.[1]?.split(', ') ?? []
  const text = DEMO.find('premises', 'museum-hall')
  const silent = (gone: readonly string[]): number => {
    const lines = (text?.text ?? '')
      .split('\n')
      .filter((line) => !gone.some((one) => line.includes(`${one}: {`)))
    const sheet = { file: 'hall.yaml', text: lines.join('\n').replace('name: museum-hall', 'name: hall') }
    const { verdicts } = check({ target: '', text: sheet }, DEMO)
    return verdicts.filter(({ check: id, state }) => id === 'bell.rings-with-all' && state === 'fails').length
  }
  expect(out.length).toBeGreaterThan(0)
  expect(silent(out)).toBe(0)
  for (const back of out) expect(silent(out.filter((one) => one !== back))).toBeGreaterThan(0)
})
