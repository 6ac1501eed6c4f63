import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { ProblemError, type RewireAsked, rewireText } from 'ringproof'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import type { PartSpec } from 'ringproof/parts/kind'
import type { Move, PlacedMove } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'

const folder = packagedFolder()
const DEMO = folderShelf([], folder)
const textsIn = (name: string) =>
  readdirSync(join(folder, name)).map((file) => ({
    file,
    text: readFileSync(join(folder, name, file), 'utf8'),
  }))

/** Every part of the demo’s sets, units and circuits, and some with values of two quantities. */
const PARTS: readonly PartSpec[] = [...textsIn('sets'), ...textsIn('units'), ...textsIn('circuits')].flatMap(
  (text) => {
    const { sheet } = readSheet(text, DEMO)
    if (sheet === undefined || !('parts' in sheet)) return []
    return [...Object.values(sheet.parts), ...('handset' in sheet ? Object.values(sheet.handset) : [])]
  },
)

const read = (text: string) => readSheet({ file: 'rewire.yaml', text }, DEMO, 'rewire')
const bare = (moves: readonly PlacedMove[]): readonly Move[] => moves.map(({ place: _, ...move }) => move)

const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,11}$/)
const terminal = fc.stringMatching(/^[A-Z]{1,2}[1-9][0-9]?$/)
const strap = fc.tuple(terminal, terminal).map(([p, q]) => `${p}-${q}`)
const core = fc.tuple(name, name).map(([p, q]) => `${p}.${q}`)
const hold = fc.constantFrom('screw' as const, 'solder' as const, 'board' as const)
const move: fc.Arbitrary<Move> = fc.oneof(
  strap.map((what) => ({ do: 'fit strap' as const, what })),
  fc.tuple(strap, hold).map(([what, one]) => ({ do: 'fit strap' as const, what, hold: one })),
  strap.map((what) => ({ do: 'lift strap' as const, what })),
  strap.map((what) => ({ do: 'cut' as const, what })),
  fc.tuple(core, terminal).map(([what, onto]) => ({ do: 'land core' as const, what, onto })),
  core.map((what) => ({ do: 'park core' as const, what })),
  fc
    .tuple(name, fc.constantFrom(...PARTS))
    .map(([what, one]) => ({ do: 'fit part' as const, what, with: one })),
  name.map((what) => ({ do: 'lift part' as const, what })),
  name.map((what) => ({ do: 'bridge' as const, what })),
  name.map((what) => ({ do: 'pull unit' as const, what })),
  fc.tuple(name, name).map(([what, one]) => ({ do: 'plug unit' as const, what, in: one })),
)
const line = fc.oneof(
  fc.string({ maxLength: 40 }),
  fc.constantFrom('a: b', '# no comment', 'yes', '1.0', "it's", 'two\nlines', '- dash', '"', '‘ ’'),
)
const asked: fc.Arbitrary<RewireAsked> = fc.record(
  {
    name,
    set: name,
    moves: fc.array(move, { maxLength: 6 }),
    title: line,
    notes: fc.array(line, { maxLength: 3 }),
  },
  { requiredKeys: ['name', 'set', 'moves'] },
)
/** Texts that the reader takes: no invisible letters. */
const isPlain = ({ title = '', notes = [] }: RewireAsked): boolean =>
  [title, ...notes].every((one) => !/[^\P{C}\n]|\p{Zl}|\p{Zp}/u.test(one))

const same = (text: string, one: RewireAsked): void => {
  const { sheet, problems } = readSheet({ file: 'x.yaml', text }, ANY, 'rewire')
  expect(problems).toEqual([])
  expect(sheet?.name).toBe(one.name)
  expect(sheet?.set).toBe(one.set)
  expect(bare(sheet?.moves ?? [])).toEqual(one.moves)
  if (one.title !== undefined) expect(sheet?.title).toBe(one.title)
  if (one.notes !== undefined) expect(sheet?.notes ?? []).toEqual(one.notes)
}
const ANY = { find: () => ({ file: '', text: '' }), names: () => [] }

describe('a rewire as text', () => {
  test('is written as people write them', () => {
    const kΩ = { value: 3300, unit: 'Ω', tolerance: 0.05, text: '3.3 kΩ ± 5 %' }
    const text = rewireText({
      name: 'trial',
      title: 'a trial',
      set: 'fescue',
      moves: [
        { do: 'lift strap', what: 'C3-A1' },
        { do: 'land core', what: 'line.a', onto: 'B5' },
        {
          do: 'fit part',
          what: 'r',
          with: { kind: 'resistor', from: 'C1', to: 'C2', resistance: kΩ } as PartSpec,
        },
      ],
      notes: ['One: two.'],
    })
    expect(text).toBe(
      [
        'ringproof: 1',
        'sheet: rewire',
        'name: trial',
        'title: a trial',
        'set: fescue',
        'moves:',
        '  - lift strap: C3-A1',
        '  - land core: line.a',
        '    onto: B5',
        '  - fit part: r',
        '    with: {kind: resistor, from: C1, to: C2, resistance: 3.3 kΩ ± 5 %}',
        'notes:',
        '  - "One: two."',
        '',
      ].join('\n'),
    )
  })

  test('is read back as what was written, whatever the moves', () => {
    fc.assert(
      fc.property(asked.filter(isPlain), (one) => same(rewireText(one), one)),
      { numRuns: 150 },
    )
  })

  test('every part of the demo comes back as it was', () => {
    expect(PARTS.length).toBeGreaterThan(100)
    const moves = PARTS.map((one, k): Move => ({ do: 'fit part', what: `p${k}`, with: one }))
    same(rewireText({ name: 'all', set: 'fescue', moves }), { name: 'all', set: 'fescue', moves })
  })

  test('over an old one it says the new', () => {
    fc.assert(
      fc.property(asked.filter(isPlain), asked.filter(isPlain), (before, after) => {
        const old = { file: 'rewire.yaml', text: rewireText(before) }
        same(rewireText({ ...after, old }), after)
      }),
      { numRuns: 100 },
    )
  })

  test('over itself it is the very text, for every rewire of the demo', () => {
    for (const old of textsIn('rewires')) {
      const { sheet } = readSheet(old, DEMO, 'rewire')
      if (sheet === undefined) throw new Error(old.file)
      const { name: called, set, moves } = sheet
      expect(rewireText({ name: called, set, moves, old })).toBe(old.text)
      expect(rewireText({ name: called, set, moves, notes: sheet.notes ?? [], old })).toBe(old.text)
    }
  })

  const OLD = [
    '# why it is there',
    'sheet:   rewire      # odd blanks stay',
    'ringproof: 1',
    '',
    'set: "fescue"',
    'name: trial # its name',
    'moves:',
    '# the first',
    '- lift strap: B2-B3   # receiver',
    '- {land core: line.a, onto: B5}',
    '',
    '# the end',
    'notes: [one, two]',
    '',
  ].join('\n')
  const HAD: readonly Move[] = [
    { do: 'lift strap', what: 'B2-B3' },
    { do: 'land core', what: 'line.a', onto: 'B5' },
  ]

  test('a further move changes nothing else of the old text', () => {
    const moves: Move[] = [...HAD, { do: 'cut', what: 'A1-A2' }]
    const text = rewireText({ name: 'trial', set: 'fescue', moves, old: { file: 'o.yaml', text: OLD } })
    expect(text).toBe(OLD.replace('onto: B5}\n', 'onto: B5}\n- cut: A1-A2\n'))
  })

  test('a move that goes and one that is changed leave the others as they were', () => {
    const old = { file: 'o.yaml', text: OLD }
    const one = rewireText({ name: 'trial', set: 'fescue', moves: HAD.slice(0, 1), old })
    expect(one).toBe(OLD.replace('- {land core: line.a, onto: B5}\n', ''))
    const moved: Move[] = [...HAD.slice(0, 1), { do: 'land core', what: 'line.a', onto: 'B4' }]
    const two = rewireText({ name: 'trial', set: 'fescue', moves: moved, old })
    expect(two).toContain('- lift strap: B2-B3   # receiver\n- land core: line.a\n  onto: B4\n')
    expect(two).toContain('# why it is there\nsheet:   rewire      # odd blanks stay\n')
  })

  test('a name and a title are changed where they stand or come in', () => {
    const old = { file: 'o.yaml', text: OLD }
    const text = rewireText({ name: 'other', title: 'a title', set: 'fescue', moves: HAD, old })
    expect(text).toBe(OLD.replace('name: trial # its name\n', 'name: other # its name\ntitle: a title\n'))
  })

  test('notes that go take nothing else with them', () => {
    const old = { file: 'o.yaml', text: OLD }
    const text = rewireText({ name: 'trial', set: 'fescue', moves: HAD, notes: [], old })
    expect(text).toBe(OLD.replace('notes: [one, two]\n', ''))
    const long = OLD.replace(
      'notes: [one, two]\n',
      'notes:\n  - |\n    one\n\n    two\n  - three # so\n# behind\n',
    )
    const other = rewireText({
      name: 'trial',
      set: 'fescue',
      moves: HAD,
      notes: [],
      old: { file: 'o.yaml', text: long },
    })
    expect(other).toBe(OLD.replace('notes: [one, two]\n', '# behind\n'))
  })

  test('over an old text lines end as they do there, behind a byte order mark too', () => {
    for (const mark of ['', '\uFEFF']) {
      const text = mark + OLD.replaceAll('\n', '\r\n')
      const moves: Move[] = [...HAD, { do: 'cut', what: 'A1-A2' }]
      const one = {
        name: 'other',
        title: 'new: title',
        set: 'fescue',
        moves,
        notes: ['two\nlines', '- &a *b'],
      }
      const over = rewireText({ ...one, old: { file: 'o.yaml', text } })
      expect(over).not.toMatch(/[^\r]\n/)
      for (const comment of OLD.match(/#.*/g) ?? []) expect(over).toContain(comment)
      same(over, one)
    }
  })

  test('an old text that is no rewire is not kept', () => {
    for (const text of ['', 'nothing', '{a: b}', 'sheet: set\nname: x\n', 'moves: &m []\nx: [']) {
      const one = { name: 'trial', set: 'fescue', moves: HAD }
      same(rewireText({ ...one, old: { file: 'o.yaml', text } }), one)
    }
  })

  test('a name that the reader would refuse is refused', () => {
    for (const called of ['Trial', '1st', 'a name', '', 'ä']) {
      expect(() => rewireText({ name: called, set: 'fescue', moves: [] })).toThrow(ProblemError)
    }
    const odd = { do: 'lift strap', what: 'nowhere' } as const
    expect(() => rewireText({ name: 'trial', set: 'fescue', moves: [odd] })).toThrow(ProblemError)
    expect(read(rewireText({ name: 'trial', set: 'fescue', moves: [] })).sheet?.moves).toEqual([])
  })
})
