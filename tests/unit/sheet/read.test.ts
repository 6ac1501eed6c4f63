import { readFileSync } from 'node:fs'
import type { SetSheet } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import type { SheetText } from 'ringproof/sheet/shelf'
import { describe, expect, test } from 'vitest'
import { SKELETONS, sheetsIn, shelfOf, skeletonShelf } from '../../support/sheets.ts'

const shelf = skeletonShelf()
const skeleton = (file: string): SheetText => ({ file, text: readFileSync(`${SKELETONS}${file}`, 'utf8') })
const sheet = (text: string): SheetText => ({ file: 'new.yaml', text })
const codes = (text: string) =>
  readSheet(sheet(text), shelf).problems.map(({ code, place }) => `${code} ${place?.line}:${place?.column}`)

describe('a skeleton of the format', () => {
  test.each(sheetsIn(SKELETONS))('$file is accepted as it stands', (text) => {
    const { sheet: read, problems } = readSheet(text, shelf)
    expect(problems).toEqual([])
    expect(text.text).toContain(`sheet: ${read?.sheet}\nname: ${read?.name}\n`)
    expect(read?.file).toBe(text.file)
  })

  test('of the right kind is accepted where that kind is expected, of another refused', () => {
    expect(readSheet(skeleton('set-fescue.yaml'), shelf, 'set').sheet?.strips).toEqual({ A: 6, B: 5, C: 4 })
    const { sheet: none, problems } = readSheet(skeleton('set-fescue.yaml'), shelf, 'line')
    expect(none).toBeUndefined()
    expect(problems).toMatchObject([
      { code: 'sheet-kind-unknown', place: { line: 3, column: 8 }, mend: 'write `line`' },
    ])
  })
})

describe('a set', () => {
  const fescue = readSheet(skeleton('set-fescue.yaml'), shelf, 'set').sheet as SetSheet

  test('keeps its words and its quantities', () => {
    expect(fescue.parts['balance-c']).toMatchObject({
      kind: 'capacitor',
      capacitance: { value: 2e-6, unit: 'F', tolerance: 0.1, text: '2 µF ± 10 %' },
    })
    expect(fescue.contacts['mute-ear']).toEqual({
      from: 'B1',
      to: 'B3',
      'closed when': 'off-normal',
      order: 'first',
    })
    expect(fescue.slots['regulator']).toMatchObject({ 'needs unit': true, fitted: 'vetch' })
    expect(fescue.plug?.contacts).toEqual({ 5: 'a', 2: 'b', 3: 'ringing', 4: 'spare' })
  })

  test('carries the units that its slots name', () => {
    expect(fescue.units['vetch']?.pins).toEqual(['p1', 'p2', 'p3'])
  })

  test('knows where each of its words is written', () => {
    expect(fescue.places.get('straps.B4-B5')).toEqual({
      file: 'set-fescue.yaml',
      line: 11,
      column: 3,
      length: 5,
    })
    expect(fescue.places.get('parts.coil.windings.b')).toMatchObject({ line: 25, column: 7 })
    expect(fescue.places.get('joints.1')).toMatchObject({ line: 36, column: 19, length: 7 })
  })

  test('has no words that every object has', () => {
    for (const map of [fescue.parts, fescue.contacts, fescue.cords, fescue.units, fescue.landings]) {
      expect('constructor' in map).toBe(false)
      expect('toString' in map).toBe(false)
    }
  })

  test('needs nothing but its strips', () => {
    const { sheet: read, problems } = readSheet(
      sheet('ringproof: 1\nsheet: set\nname: bare\nstrips: {A: 1}\n'),
      shelf,
    )
    expect(problems).toEqual([])
    expect(read).toMatchObject({
      spare: [],
      straps: {},
      parts: {},
      joints: [],
      'common cores': [],
      bases: [],
      units: {},
    })
    expect(read).not.toHaveProperty('title')
    expect(read).not.toHaveProperty('plug')
  })

  test('may earth a contact, a part and touchable metal, and name cores meant to be common', () => {
    const text = `ringproof: 1
sheet: set
name: new
strips: {A: 3}
touchable metal: {case: earth, cradle: A1}
contacts:
  recall: {from: A1, to: earth, closed when: key, resistance: 0.1 Ω, leakage: open}
parts:
  r: {kind: resistor, from: A2, to: earth, resistance: 1 MΩ}
cords:
  handset: {ends in: handset, cores: {t2: {lands: A2, resistance: 1 Ω}, r2: {lands: A2}}}
common cores: [[t2, r2]]
`
    expect(codes(text)).toEqual([])
  })
})

describe('a variant', () => {
  const found = readSheet(skeleton('set-sedge-as-found.yaml'), shelf, 'set').sheet as SetSheet

  test('has what its bases have, without what it takes away, with what it changes', () => {
    expect(found.bases).toEqual(['sedge', 'fescue'])
    expect(Object.keys(found.straps)).toEqual(['B4-B5', 'C3-A1', 'B3-B4', 'A3-A4'])
    expect(found.contacts['mute-ear']).toEqual({
      from: 'B1',
      to: 'B2',
      'closed when': 'off-normal',
      order: 'first',
    })
    expect(found.parts).not.toHaveProperty('bell-resistor')
    expect(found.parts).toHaveProperty('own-capacitor')
    expect(found.slots).toEqual({})
    expect(found.title).toBe('table set, later board')
    expect(found).not.toHaveProperty('based on')
    expect(found).not.toHaveProperty('without')
  })

  test('remembers where each value was written, in whichever file', () => {
    expect(found.places.get('parts.own-capacitor')).toMatchObject({
      file: 'set-sedge-as-found.yaml',
      line: 7,
    })
    expect(found.places.get('straps.A3-A4')).toMatchObject({ file: 'set-sedge.yaml', line: 8 })
    expect(found.places.get('straps.B4-B5')).toMatchObject({ file: 'set-fescue.yaml', line: 11 })
    expect(found.places.has('without')).toBe(false)
  })

  test('remembers on which terminals its bases land a core, nearest first', () => {
    expect(found.landings['handset.r2']).toEqual(['B2', 'B3'])
    expect(found.landings['line.ringing']).toEqual(['C1'])
    expect(found.landings['handset.t1']).toEqual(['A5'])
  })

  test('is judged as a whole: what it takes away is missed where the base needs it', () => {
    const text =
      'ringproof: 1\nsheet: set\nname: new\nbased on: fescue\nwithout: [parts.hush-r, cords.handset.cores.r1]\n'
    const { problems } = readSheet(sheet(text), shelf)
    expect(problems.map(({ code, place }) => `${code} ${place?.file} ${place?.line}`)).toEqual([
      'end-dangling set-fescue.yaml 36',
      'name-unknown set-fescue.yaml 49',
    ])
    expect(problems[0]?.excerpt).toContain('joints: [joint-1, joint-2, joint-3]')
  })

  test('may change the kind of a part when it takes the old one away first', () => {
    const part = 'parts: {click: {kind: resistor, from: B1, to: B3, resistance: 10 kΩ}}\n'
    const head = 'ringproof: 1\nsheet: set\nname: new\nbased on: fescue\n'
    expect(codes(`${head}without: [parts.click]\n${part}`)).toEqual([])
    expect(codes(head + part)).toEqual(['key-unknown 32:53', 'key-unknown 32:76'])
    expect(readSheet(sheet(head + part), shelf).problems[1]).toMatchObject({
      place: { file: 'set-fescue.yaml' },
      mend: 'add `parts.click.exponent` to `without`',
    })
  })

  test('of a base of another version or kind is refused with the place in the base', () => {
    const base = { file: 'base.yaml', text: 'ringproof: 2\nsheet: set\nname: base\n' }
    const text = 'ringproof: 1\nsheet: set\nname: new\nbased on: base\n'
    expect(readSheet(sheet(text), shelfOf([base])).problems).toMatchObject([
      { code: 'version-unknown', place: { file: 'base.yaml', line: 1, column: 12 }, excerpt: 'ringproof: 2' },
    ])
  })
})

describe('a line', () => {
  const head = 'ringproof: 1\nsheet: line\nname: new\n'
  const read = (rest: string) => readSheet(sheet(head + rest), shelf, 'line')

  test('needs only feed and speech; the rest has its usual values', () => {
    const { sheet: line, problems } = read(
      'feed: {voltage: 21 V, current limit: 20 mA}\nspeech: {impedance: [600 Ω]}\n',
    )
    expect(problems).toEqual([])
    expect(line?.feed).toMatchObject({
      shared: 'half in each wire',
      negative: 'b wire',
      earth: 'positive pole',
    })
    expect(line).toMatchObject({ recall: 'none', limits: {} })
    expect(line).not.toHaveProperty('ringing')
  })

  test('takes the other forms that the skeleton shows in its comments', () => {
    const { sheet: line, problems } = read(
      `feed: {voltage: 21 V, current limit: 20 mA}
ringing: {voltage: 45 V, frequency: 25 Hz, wave: {trapezoid: 1.25}, source: 400 Ω, sent to: a wire}
speech: {impedance: [600 Ω, {beside: [10 mH, 1 µF, {beside: [1 kΩ, 2 kΩ]}]}]}
recall: {timed break: 50 ms to 130 ms}
limits: {pulses: {understood: no}}
`,
    )
    expect(problems).toEqual([])
    expect(line?.ringing?.wave).toEqual({ trapezoid: 1.25 })
    expect(line?.recall).toMatchObject({ 'timed break': { least: { value: 0.05 }, most: { value: 0.13 } } })
    expect(line?.limits.pulses).toEqual({ understood: false })
    expect(line?.speech.impedance[1]).toMatchObject({
      beside: [{ unit: 'H' }, { unit: 'F' }, { beside: [{}, {}] }],
    })
  })
})

describe('premises', () => {
  test('may have a place and a socket of one name, since names are unique in their map', () => {
    const text = `ringproof: 1
sheet: premises
name: new
line: depot-exchange
sockets:
  kitchen: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ, earth: yes}
sets:
  kitchen: {set: fescue, in: kitchen, condition: off-hook/break}
`
    const { sheet: read, problems } = readSheet(sheet(text), shelf, 'premises')
    expect(problems).toEqual([])
    expect(read?.sockets['kitchen']).toMatchObject({ is: 'master', earth: true })
    expect(read?.reversed).toBe(false)
  })
})

describe('moves', () => {
  test('are read in all forms that the skeleton shows, each with its place', () => {
    const text = `ringproof: 1
sheet: rewire
name: new
set: fescue
moves:
  - fit strap: B2-B3
  - {fit strap: A1-A2, hold: solder}
  - lift strap: C3-A1
  - cut: A3-A4
  - bridge: bell-resistor
  - park core: line.spare
  - plug unit: vetch
    in: regulator
  - pull unit: regulator
`
    const { sheet: read, problems } = readSheet(sheet(text), shelf, 'rewire')
    expect(problems).toEqual([])
    expect(read?.moves.map(({ place, ...move }) => [place?.line, move])).toEqual([
      [6, { do: 'fit strap', what: 'B2-B3' }],
      [7, { do: 'fit strap', what: 'A1-A2', hold: 'solder' }],
      [8, { do: 'lift strap', what: 'C3-A1' }],
      [9, { do: 'cut', what: 'A3-A4' }],
      [10, { do: 'bridge', what: 'bell-resistor' }],
      [11, { do: 'park core', what: 'line.spare' }],
      [12, { do: 'plug unit', what: 'vetch', in: 'regulator' }],
      [14, { do: 'pull unit', what: 'regulator' }],
    ])
  })
})

describe('a job', () => {
  test('may hold readings in words and no more than an opening', () => {
    const head =
      'ringproof: 1\nsheet: job\nname: new\ninstrument: {set: fescue, mark: B 12}\nopened: 2026-11-03\n'
    const reading = '{between: [A1, A2], condition: on-hook, instrument: digital, range: ohms, shows: open}'
    const { sheet: read, problems } = readSheet(
      sheet(`${head}left: {readings: [${reading}]}\n`),
      shelf,
      'job',
    )
    expect(problems).toEqual([])
    expect(read?.left).toMatchObject({ verdicts: [], readings: [{ shows: 'open', between: ['A1', 'A2'] }] })
    expect(read).toMatchObject({ found: { moves: [], readings: [] }, moves: [], photos: [] })
  })

  test('places the moves of its finding too', () => {
    const head = 'ringproof: 1\nsheet: job\nname: new\ninstrument: {set: fescue}\nopened: 2026-11-03\n'
    const { sheet: read } = readSheet(sheet(`${head}found: {moves: [{lift part: bell}]}\n`), shelf, 'job')
    expect(read?.found.moves).toMatchObject([
      { do: 'lift part', what: 'bell', place: { line: 6, column: 17 } },
    ])
  })
})

describe('a circuit', () => {
  test('may say its frequency, its source and its grade', () => {
    const text = `ringproof: 1
sheet: circuit
name: new
parts:
  e: {kind: voltage-source, from: a, to: earth, alternating: 1 V}
  r: {kind: resistor, from: a, to: earth, resistance: 1 kΩ}
frequency: 1 kHz
source: a textbook
grade: HIGH
`
    expect(readSheet(sheet(text), shelf, 'circuit').sheet).toMatchObject({
      frequency: { value: 1000 },
      grade: 'HIGH',
    })
  })

  test('may map its couplings', () => {
    const text = `ringproof: 1
sheet: circuit
name: new
parts:
  t:
    kind: induction-coil
    windings:
      a: {from: p, to: earth, resistance: 1 Ω, inductance: 1 H}
      b: {from: p, to: earth, resistance: 1 Ω, inductance: 1 H}
    coupling: {a-b: 0.5}
`
    expect(codes(text)).toEqual([])
  })
})

describe('names of sheets that nothing in reach carries', () => {
  test('are named even when there is nothing to suggest', () => {
    const text = 'ringproof: 1\nsheet: rewire\nname: new\nset: fescue\nmoves: []\n'
    expect(readSheet(sheet(text), shelfOf([])).problems).toMatchObject([
      { code: 'name-unknown', expected: 'the name of a set sheet in reach' },
    ])
  })
})
