/** What the trade says of every set of the fleet: common practice, no source. */
import { check, type Figure, figures } from 'ringproof'
import type { SetSheet } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import type { SheetText } from 'ringproof/sheet/shelf'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../support/bench.ts'

const LINES = DEMO.names('line')
const SETS = DEMO.names('set')

function textOf(kind: 'premises' | 'set', name: string): SheetText {
  const found = DEMO.find(kind, name)
  if (found === undefined) throw new Error(`no ${kind} ${name}`)
  return found
}

/** Sizes of figures of some ids by id, subject and frequency. */
function sizes(found: readonly Figure[], ids: RegExp): ReadonlyMap<string, number> {
  return new Map(
    found
      .filter(({ id, value }) => ids.test(id) && value !== null)
      .map(({ id, subject, frequency, value }) => [
        `${id} ${subject} ${frequency ?? ''}`,
        Math.abs(value ?? 0),
      ]),
  )
}

/** Both have the same figures, and each is as large there as here, currents up to a nanoampere. */
function same(here: ReadonlyMap<string, number>, there: ReadonlyMap<string, number>): void {
  expect([...there.keys()]).toEqual([...here.keys()])
  for (const [what, size] of here)
    expect(Math.abs((there.get(what) ?? 0) - size), what).toBeLessThanOrEqual(1e-6 * size + 1e-9)
}

const BELL_AND_LOOP = /^(ringing\.current|loop\.current)$/
/** Premises that say whether their pair is reversed, as they are and the other way round. */
const turned = ({ file, text }: SheetText): SheetText => ({
  file,
  text: text.replace(
    /^reversed: (no|yes)/m,
    (_, word: string) => `reversed: ${word === 'no' ? 'yes' : 'no'}`,
  ),
})
/** An earth on one wire is what makes the wires differ: there the way round matters, and the sheet says that it is wrong. */
const TO_EARTH = ['crossing-box-astray']

describe('either way round at the exchange is right', () => {
  const houses = DEMO.names('premises').filter((name) => name !== 'workshop' && !TO_EARTH.includes(name))

  test.each(houses)('for %s: bells and loops get the same current', (name) => {
    const text = textOf('premises', name)
    expect(turned(text).text).not.toBe(text.text)
    const here = sizes(figures({ target: '', text }, DEMO).figures, BELL_AND_LOOP)
    expect(here.size).toBeGreaterThan(1)
    same(here, sizes(figures({ target: '', text: turned(text) }, DEMO).figures, BELL_AND_LOOP))
  })

  test.each(LINES)('for every set of the fleet, alone on %s', (line) => {
    const other = turned(textOf('premises', 'workshop')).text.replace(/^line: .*$/m, `line: ${line}`)
    const onText = { file: 'turned.yaml', text: other.replace(/^name: .*$/m, 'name: turned') }
    for (const target of SETS) {
      const here = sizes(figures({ target, on: line }, DEMO).figures, BELL_AND_LOOP)
      expect(here.size, target).toBeGreaterThan(0)
      same(here, sizes(figures({ target, onText }, DEMO).figures, BELL_AND_LOOP))
    }
  })
})

const sheetOf = (name: string): SetSheet | undefined =>
  readSheet<'set'>(textOf('set', name), DEMO, 'set').sheet

/** The contact of the plug that carries the core called spare. */
const contactOf = (sheet: SetSheet | undefined): string | undefined =>
  Object.entries(sheet?.plug?.contacts ?? {}).find(([, core]) => core === 'spare')?.[0]

/**
 * Sets whose fourth core is spare: on a spare terminal or on none, and on the contact that no ringing lead reaches. An
 * old series wiring uses it, a recall key earths it, and in a mirrored plug the ringing lead comes in on it.
 */
const spared = SETS.filter((name) => {
  const sheet = sheetOf(name)
  const core = sheet?.cords.line?.cores.spare
  if (core === undefined || sheet?.plug?.['numbered by'] !== 'wiring') return false
  return core.lands === 'parked' || sheet.spare.includes(core.lands)
})

describe('three cores suffice, the fourth is spare', () => {
  test.each(spared)('%s without its spare core has the same figures and verdicts', (name) => {
    const contact = contactOf(sheetOf(name))
    expect(contact).toBeDefined()
    const without = `ringproof: 1\nsheet: set\nname: ${name}\nbased on: ${name}-whole\nwithout: [cords.line.cores.spare, plug.contacts.${contact}]\n`
    const whole = textOf('set', name)
    const shelf = {
      ...DEMO,
      find: (...asked: Parameters<typeof DEMO.find>) =>
        asked[1] === `${name}-whole` ? whole : DEMO.find(...asked),
    }
    const [before, after] = [
      check({ target: name }, DEMO),
      check({ target: '', text: { file: 'three-cores.yaml', text: without } }, shelf),
    ]
    same(sizes(before.figures, /./), sizes(after.figures, /./))
    const states = ({ verdicts }: typeof before) =>
      verdicts
        .filter(({ check: id }) => id !== 'wiring.spares-free')
        .map(({ check: id, subject, state }) => `${id} ${subject} ${state}`)
    expect(states(after)).toEqual(states(before))
  })

  test('which is so of most of the fleet', () => {
    expect(spared.length).toBeGreaterThan(8)
    expect(spared).not.toContain('brome')
    expect(spared).not.toContain('darnel-in-series')
  })
})

describe('3.3 kΩ in series with a bell of about 1 kΩ', () => {
  const load = (target: string): number =>
    figures({ target, only: 'ringing.load' }, DEMO).figures.find(
      ({ id }) => id === 'ringing.load.four-kilohm-unit',
    )?.value ?? Number.NaN
  const fitted = ['fescue', 'fescue-late', 'sedge', 'brome', 'darnel', 'melick-to-three-wires']

  test.each([...fitted, 'marram-with-bell-resistor'])('makes a %s one load, more or less', (target) => {
    expect(load(target)).toBeGreaterThan(0.75)
    expect(load(target)).toBeLessThan(1.1)
  })
  test.each(['marram', 'fescue-without-bell-resistor'])(
    'a %s without it is several loads, or nearly two',
    (target) => {
      expect(load(target)).toBeGreaterThan(1.7)
    },
  )
})
