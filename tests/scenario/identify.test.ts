import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { jsonOf, ringproof } from '../faces/ringproof.ts'

const readings = (...all: readonly string[]) => all.flatMap((one) => ['--reading', one])
const seen = (...all: readonly string[]) => all.flatMap((one) => ['--seen', one])
const SEDGE = readings('A3 A4 on-hook 0.2 Ω', 'B2 B3 on-hook open', 'B3 B4 on-hook 0.2 Ω')
/** One sedge is more probable than all others together, and another still possible. */
const LEADING = [
  ...seen('slot=no', 'part=extension-bell:no'),
  ...readings('A5 C1 off-hook 4.35 kΩ', 'B1 B3 on-hook open', 'B3 B4 on-hook 0.2 Ω'),
]

describe('a sedge on the bench that everybody takes for a fescue', () => {
  test('is told by three readings, each with what it says', async () => {
    const { code, out } = await ringproof(['identify', ...SEDGE])
    expect(code).toBe(0)
    expect(out).toContain('Unplug the set')
    expect(out).toMatch(/First sedge/)
    expect(out).toMatch(/B3 B4 on-hook +0\.2 Ω +0\.0 Ω/)
    expect(out).toContain('Next')
  })

  test('has a JSON form that its schema knows', async () => {
    const { data, wrong } = jsonOf(
      await ringproof(['identify', ...SEDGE, ...seen('colours=brown grey'), '--json']),
    )
    expect(wrong).toEqual([])
    expect(data).toMatchObject({
      ringproof: 'identify/1',
      outcome: 'answered',
      finds: 'several',
      compared: 32,
    })
    const text = JSON.stringify(data)
    expect(text).toContain('weak evidence: cords are replaced, and colours fade')
    expect(text).not.toMatch(/NaN|Infinity/)
  })

  test('differs from what is next as the sheets say', async () => {
    const { out } = await ringproof(['identify', ...SEDGE, ...readings('C1 C2 on-hook open')])
    expect(out).toContain('sedge-as-found')
    expect(out).toMatch(/strap|part/)
  })
})

describe('a set that no sheet describes', () => {
  const strange = readings(
    'A1 A4 0.2 Ω',
    'A1 A4 off-hook 0.1 Ω',
    'B2 B3 12 Ω',
    'B3 B5 0.1 Ω',
    'C1 C2 800 Ω',
    'A2 A5 on-hook open',
    'A2 A5 off-hook 0.2 Ω',
  )

  test('is called unknown, with the straps that the readings imply', async () => {
    const { code, out } = await ringproof(['identify', ...strange])
    expect(code).toBe(0)
    expect(out).toContain('UNKNOWN SET')
    expect(out).toMatch(/joined +A1–A4; B3–B5/)
    expect(out).toMatch(/not joined +B2–B3, C1–C2/)
    expect(out).toMatch(/a contact +A2–A5/)
  })
})

describe('a terminal that no known set has', () => {
  test('is called a slip, perhaps', async () => {
    const { out } = await ringproof(['identify', ...readings('Z9 A4 0.2 Ω')])
    expect(out.replace(/\s+/g, ' ')).toContain('No known set has a terminal Z9: perhaps a slip?')
    const { data, wrong } = jsonOf(
      await ringproof(['identify', ...seen('strap=A1-Z8'), ...readings('A3 A4 0.2 Ω'), '--json']),
    )
    expect(wrong).toEqual([])
    expect(data).toMatchObject({ stray: ['Z8'] })
  })
})

describe('what the first and the next differ in', () => {
  const DIFFER = 'What the first and the next differ in'

  test('is not told while none leads', async () => {
    const { out } = await ringproof(['identify', ...seen('slot=no'), '--width', '60'])
    expect(out).not.toContain(DIFFER)
    // twins lead, and a question follows: it is about the others
    expect(out).toContain('First melick or melick-coil-turned')
    expect(out).not.toContain('Nothing that may be asked')
    expect(out.replace(/\s+/g, ' ')).toContain('tells these from others, not from each other')
  })

  test('is told where one leads and another is possible, no line wider than the page', async () => {
    const { out } = await ringproof(['identify', ...LEADING, '--width', '60'])
    expect(out).toContain(DIFFER)
    expect(out.split('\n').filter((line) => [...line].length > 60)).toEqual([])
  })
})

describe('a sheet of one’s own', () => {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'ringproof-identify-'))
    const lines = [
      'ringproof: 1',
      'sheet: set',
      'name: mine',
      'based on: sedge',
      'parts: {bell: {resistance: 2 kΩ}}',
    ]
    writeFileSync(join(folder, 'mine.yaml'), `${lines.join('\n')}\n`)
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  test('is compared with the others, and rewires where asked', async () => {
    const bell = readings('C2 C3 2.02 kΩ', 'A3 A4 0.2 Ω', 'B3 B4 0.1 Ω')
    const { out } = await ringproof(['identify', ...bell, '--sheets', folder])
    expect(out).toMatch(/mine/)
    const { data } = jsonOf(await ringproof(['identify', ...bell, '--sheets', folder, '--rewires', '--json']))
    expect(data).toMatchObject({ request: { rewires: true } })
    expect(JSON.stringify(data)).toContain('"name":"mine"')
  })
})

describe('what cannot be understood', () => {
  test.each([
    [['--reading', 'A3 A4 on-hook 0.2'], '0.2 Ω'],
    [['--reading', 'A3'], 'terminal'],
    [['--seen', 'slt=no'], 'slot'],
    [['--instrument', 'nothing'], 'instrument'],
  ])('%j is refused with a mend', async (argv, says) => {
    const { code, err } = await ringproof(['identify', ...argv])
    expect(code).toBe(2)
    expect(err).toContain(says)
  })
})

describe('what was said of one thing twice', () => {
  test('counts as it was said last, and the first is named', async () => {
    const { out } = await ringproof([
      'identify',
      ...seen('slot=yes', 'slot=no'),
      ...readings('A3 A4 open', 'A3 A4 0.2 Ω'),
    ])
    expect(out).toContain('slot was yes before; the last that you gave counts.')
    expect(out).toContain('A3 A4 on-hook was open before')
    const { data, wrong } = jsonOf(await ringproof(['identify', ...seen('slot=yes', 'slot=no'), '--json']))
    expect(wrong).toEqual([])
    expect(data).toMatchObject({ 'taken back': [{ id: 'slot', says: 'yes' }] })
  })

  test('is no strap from a terminal to itself', async () => {
    const { code, err } = await ringproof(['identify', ...seen('strap=A3-A3')])
    expect(code).toBe(2)
    expect(err).toContain('strap=A3-A3')
  })
})
