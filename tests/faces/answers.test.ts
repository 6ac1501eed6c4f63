import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { beside, jsonOf, ringproof } from './ringproof.ts'

const netlists = fileURLToPath(new URL('../../netlists', import.meta.url))
const lastLine = (text: string) => text.trimEnd().split('\n').at(-1)

describe('the command', () => {
  const answered: [string[], number][] = [
    [['check', 'fescue'], 0],
    [['check', 'sedge-converted'], 0],
    [['check', 'sedge-converted-as-fescue'], 1],
    [['check', 'fescue-unit-left-out'], 1],
    [['check', `${netlists}/rewires/sedge-converted-as-fescue.yaml`], 1],
    [['check', 'sedge-converted', '--strict'], 1],
    [['check', 'fescue', '--on', 'workshop'], 0],
    [['check', 'fescue', '--on', `${netlists}/lines/depot-exchange.yaml`], 0],
    [['compare', 'sedge-converted'], 0],
    [['compare', 'sedge-converted-as-fescue'], 1],
    [['solve', 'two-meshes'], 0],
    [['solve', 'two-meshes', '--frequency', '1 kHz'], 0],
    [['solve', `${netlists}/circuits/two-meshes.yaml`], 0],
    [['solve', 'fescue', '--condition', 'off-hook'], 0],
    [['solve', 'sedge-converted-as-fescue', '--condition', 'off-hook/speech', '--frequency', '1 kHz'], 0],
    [['follow', 'fescue'], 0],
    [['follow', 'fescue', '--condition', 'on-hook/ringing', '--frequency', '25 Hz'], 0],
    [['meter', 'fescue'], 0],
    [['meter', 'sedge', '--instrument', 'needle'], 0],
    [['meter', 'sedge-converted', '--on', 'depot-exchange'], 0],
    [
      [
        'meter',
        'fescue',
        '--between',
        'plug.a',
        'plug.b',
        '--condition',
        'off-hook',
        '--instrument',
        'needle',
      ],
      0,
    ],
    [['meter', 'fescue', '--between', 'A6', 'B5', '--range', 'capacitance'], 0],
    [
      [
        'meter',
        'fescue',
        '--between',
        'plug.a',
        'plug.b',
        '--on',
        'workshop',
        '--condition',
        'on-hook/ringing',
      ],
      0,
    ],
    ...['sets', 'units', 'lines', 'premises', 'rewires', 'circuits', 'jobs'].map(
      (what): [string[], number] => [['list', what], 0],
    ),
    ...['checks', 'limits', 'figures', 'parts', 'problems', 'conditions', 'instruments'].map(
      (what): [string[], number] => [['list', what], 0],
    ),
  ]

  test.each(answered)('answers %j and ends with %i, at every width', async (argv, expected) => {
    for (const width of ['60', '80', '120']) {
      const { code, out } = await ringproof([...argv, '--width', width])
      expect(code).toBe(expected)
      expect(out.split('\n').filter((line) => Array.from(line).length > Number(width))).toEqual([])
      expect(out).not.toMatch(/NaN|Infinity|undefined\b(?!\s*$)|\[object/)
    }
  })

  test.each(answered)('answers %j with --json as its schema says', async (argv, expected) => {
    const ran = await ringproof([...argv, '--json'])
    const { data, wrong } = jsonOf(ran)
    expect({ code: ran.code, err: ran.err, wrong }).toEqual({ code: expected, err: '', wrong: [] })
    expect(data.ringproof).toBe(`${argv[0]}/1`)
  })

  test.each([
    'set',
    'unit',
    'line',
    'premises',
    'rewire',
    'job',
    'circuit',
    'check',
    'solve',
    'meter',
    'problems',
  ])('prints the schema of %s', async (what) => {
    const { code, out, err } = await ringproof(['schema', what])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(JSON.parse(out).title).toMatch(new RegExp(`: ${what}$`))
  })
})

describe('every demo sheet', () => {
  const demos = [
    ['sets', 'check'],
    ['rewires', 'check'],
    ['rewires', 'compare'],
    ['circuits', 'solve'],
  ] as const
  test.each(demos)('of %s has an answer to %s as its schema says', async (what, command) => {
    const rows = jsonOf(await ringproof(['list', what, '--json'])).data.rows as { name: string }[]
    expect(rows.length).toBeGreaterThan(0)
    for (const { name } of rows) {
      const ran = await ringproof([command, name, '--json'])
      expect({ name, wrong: jsonOf(ran).wrong, err: ran.err }).toEqual({ name, wrong: [], err: '' })
      expect([0, 1]).toContain(ran.code)
    }
  })
})

test('whatever reports ringing shows a caution', async () => {
  const ringing = ['--condition', 'on-hook/ringing', '--frequency', '25 Hz']
  for (const command of ['solve', 'follow']) {
    const { out } = await ringproof([command, 'fescue', ...ringing])
    expect(out).toContain('Caution: Unplug')
  }
  // a line can ring at any moment; a textbook circuit cannot
  expect((await ringproof(['follow', 'fescue'])).out).toContain('Caution')
  const inside = ['--from', 'C1', '--to', 'A1']
  expect((await ringproof(['follow', 'fescue', ...ringing, ...inside])).out).toContain('Caution: Unplug')
  expect((await ringproof(['solve', 'two-sources'])).out).not.toContain('Caution')
})

test('premises without a set are nothing to judge', async () => {
  const { code, err } = await ringproof(['check', 'workshop'])
  expect(code).toBe(2)
  expect(err).toContain('[request-wrong]')
})

describe('a meter', () => {
  // common practice, no source: the caution comes before any reading
  test('shows its caution before anything else, and another one on a live line', async () => {
    const off = (await ringproof(['meter', 'fescue'])).out
    expect(off.indexOf('Caution: Unplug')).toBeLessThan(off.indexOf('reads'))
    const on = (await ringproof(['meter', 'fescue', '--on', 'workshop', '--width', '200'])).out
    expect(on).toMatch(/Caution: .*live line.*licensed\s+practice/s)
  })

  test('prints its table by conditions, the dial’s pages with what differs only', async () => {
    const { out } = await ringproof(['meter', 'fescue'])
    const pages = ['Handset down', 'Handset up', 'Handset up, dial running, pulse contact closed'].map(
      (title) => out.indexOf(`\n${title}\n`),
    )
    expect(pages).toEqual(pages.toSorted((p, q) => p - q))
    expect(pages[0]).toBeGreaterThan(0)
    const dialling = out.slice(pages[2])
    expect(dialling).toContain('All else reads as on the page “Handset up”')
    expect(dialling).not.toMatch(/plug\.ringing – C2 +3\.300/)
  })

  test('takes an instrument from a file', async () => {
    const { code, err } = await ringproof(['meter', 'fescue', '--instrument', beside('six-mistakes.yaml')])
    expect(code).toBe(2)
    expect(err).toContain('six-mistakes.yaml')
    const own = beside('one-instrument.yaml')
    const { out } = await ringproof(['meter', 'fescue', '--instrument', own, '--between', 'C1', 'C2'])
    expect(out).toContain('bench-box: a box of one range')
    expect(out).toContain('3.30 kΩ')
  })
})

describe('a check', () => {
  test('ends with its counts on the last line', async () => {
    const { out } = await ringproof(['check', 'sedge-converted-as-fescue'])
    expect(lastLine(out)).toMatch(
      /^(?:\d+ faults? by name, )?\d+ fails?, \d+ marginal, \d+ unknown, \d+ holds?$/,
    )
  })

  // common practice, no source: a core landed on a strapped neighbour joins two handset cores
  test('of the trap names both cores, the path of terminals, and the mend', async () => {
    const { out } = await ringproof(['check', 'sedge-converted-as-fescue', '--width', '200'])
    expect(out).toContain('FAILS  wiring.cores-separate')
    const path = out.split('\n').find((line) => line.startsWith('  path'))!
    for (const id of ['handset.r2', 'B3', 'B4']) expect(path).toContain(id)
    expect(path).toMatch(/handset\.t\d/)
    expect(out).toMatch(/^ {2}mend +\S/m)
    expect(out).toContain('Caution: Unplug')
  })
})

test('an unknown name ends with 2 and the nearest name', async () => {
  const { code, err } = await ringproof(['check', 'fescu'])
  expect(code).toBe(2)
  expect(err).toContain('perhaps `fescue`')
})

test('a missing file ends with 2', async () => {
  const { code, err } = await ringproof(['check', 'nothing-here.yaml'])
  expect(code).toBe(2)
  expect(err).toContain('[file-missing]')
})

test('sheets in a given folder are found before those of the program', async () => {
  const { code, out } = await ringproof([
    'list',
    'sets',
    '--sheets',
    netlists,
    '--sheets',
    `${netlists}/sets`,
  ])
  expect(code).toBe(0)
  expect(out).toContain('fescue')
})

describe('the demo', () => {
  test('tells the trap and its mend, and ends with 0', async () => {
    const { code, out, err } = await ringproof(['demo'])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    const [wrong = -1, right = -1, house = -1] = [
      'check sedge-converted-as-fescue',
      'compare sedge-converted',
      'check goods-office',
    ].map((line) => out.indexOf(`$ ringproof ${line}\n`))
    expect(wrong).toBeGreaterThan(0)
    expect(right).toBeGreaterThan(wrong)
    expect(out.slice(wrong, right)).toContain('FAILS  wiring.cores-separate')
    expect(house).toBeGreaterThan(right)
    expect(out.slice(right, house)).not.toContain('FAILS')
    expect(out.slice(house)).toMatch(/clerk +marram .* yes +yes/)
    expect(out.slice(house)).toMatch(/porter-1 +fescue .* no +yes/)
  })
})
