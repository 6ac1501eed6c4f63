import { describe, expect, test } from 'vitest'
import { jsonOf, ringproof } from './ringproof.ts'

const SPEAKING = ['--condition', 'off-hook/speech', '--frequency', '1 kHz']

const answered: [string[], number][] = [
  [['figures', 'fescue'], 0],
  [['figures', 'fescue', 'ringing'], 0],
  [['figures', 'sedge-converted', 'loop.current', '--on', 'depot-exchange'], 0],
  [['figures', 'fescue', '--on', 'none'], 0],
  [['figures', 'fescue', '--second-opinion'], 0],
  [['figures', 'fescue', 'speech', '--second-opinion', '--digits', '20'], 0],
  [['check', 'fescue-unit-left-out', '--second-opinion'], 1],
  [['solve', 'fescue', '--condition', 'off-hook', '--second-opinion'], 0],
  [['solve', 'fescue', '--condition', 'off-hook', '--second-opinion', '--digits', '40'], 0],
  [['solve', 'fescue', ...SPEAKING, '--second-opinion', '--digits', '100'], 0],
  [['solve', 'two-meshes', '--second-opinion', '--digits', '16'], 0],
]

describe('the command', () => {
  test.each(answered)('answers %j and ends with %i, at every width', async (argv, expected) => {
    for (const width of ['60', '100']) {
      const { code, out, err } = await ringproof([...argv, '--width', width])
      expect({ code, err }).toEqual({ code: expected, err: '' })
      expect(out.split('\n').filter((line) => Array.from(line).length > Number(width))).toEqual([])
      expect(out).not.toMatch(/NaN|Infinity|undefined|\[object/)
      expect(out.includes('Second opinion: ')).toBe(argv.includes('--second-opinion'))
    }
  })

  test.each(answered)('answers %j with --json as its schema says', async (argv, expected) => {
    const ran = await ringproof([...argv, '--json'])
    const { data, wrong } = jsonOf(ran)
    expect({ code: ran.code, err: ran.err, wrong }).toEqual({ code: expected, err: '', wrong: [] })
    expect('second opinion' in data).toBe(argv.includes('--second-opinion'))
  })

  const refused: [string[], string][] = [
    [['solve', 'fescue', '--digits', '40'], 'write `--second-opinion --digits 40`'],
    [['solve', 'fescue', '--second-opinion', '--digits', '15'], 'a whole number from 16 to 100'],
    [['solve', 'fescue', '--second-opinion', '--digits', '101'], 'a whole number from 16 to 100'],
    [['check', 'fescue', '--second-opinion', '--digits', 'many'], 'a whole number from 16 to 100'],
    [['compare', 'sedge-converted', '--second-opinion'], 'the option `--second-opinion`'],
    [['figures', 'fescue', 'ringin'], 'perhaps `ringing`'],
    [['figures', 'fescue', 'ringing.'], 'the figure `ringing.`'],
    [['figures', 'workshop'], 'where no set stands'],
  ]
  test.each(refused)('refuses %j with 2 and says %j', async (argv, says) => {
    const { code, out, err } = await ringproof([...argv, '--width', '100'])
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err.replace(/\s+/g, ' ')).toContain(says)
  })
})

describe('figures', () => {
  test('stand in a table with what they are of, when, and their unit, and the ids to choose by', async () => {
    const { out } = await ringproof(['figures', 'fescue', '--width', '100'])
    expect(out).toMatch(/^ {2}figure +of +with +value$/m)
    expect(out).toMatch(/^ {2}loop current +fescue +handset up +[\d.]+ mA$/m)
    expect(out.replace(/\s+/g, ' ')).toMatch(/ ids .*loop\.current, loop\.resistance/)
    expect(out).toContain('Caution: Unplug')
  })

  test('of a set without a line are none, and that is said', async () => {
    const { out } = await ringproof(['figures', 'fescue', '--on', 'none'])
    expect(out).toContain('No figures')
  })

  test('that begin otherwise are left out', async () => {
    const { data } = jsonOf(await ringproof(['figures', 'fescue', 'speech', '--json']))
    const { figures } = data as unknown as { figures: { id: string }[] }
    const ids = new Set(figures.map(({ id }) => id))
    for (const id of ['speech.send', 'speech.receive', 'speech.sidetone']) expect(ids).toContain(id)
    expect([...ids].filter((id) => !id.startsWith('speech.'))).toEqual([])
  })
})

test('digits stand below the numbers of the solver', async () => {
  const argv = ['solve', 'fescue', '--condition', 'off-hook', '--second-opinion', '--digits', '40']
  const { out } = await ringproof([...argv, '--width', '100'])
  const lines = out.split('\n')
  const at = lines.findIndex((line) => /^ {2}fescue\/transmitter +\+0\.0\d+$/.test(line))
  const [ours = '', second = ''] = lines
    .slice(at, at + 2)
    .map((line) => line.trim().split(/\s+/).at(-1) ?? '')
  expect(second).toMatch(/^\+0\.0\d{40,41}$/)
  expect(second.slice(0, 14)).toBe(ours.slice(0, 14))
})

test('on a terminal the line of what is going on is taken away again, and short work shows none', async () => {
  const shown: string[] = []
  const status = (text: string): void => {
    shown.push(text)
  }
  await ringproof(['solve', 'two-meshes', '--second-opinion'], { status })
  expect(shown.at(-1) ?? '').toBe('')
  const ran = await ringproof(['solve', 'fescue', '--second-opinion', '--digits', '9'], { status })
  expect(ran.code).toBe(2)
})
