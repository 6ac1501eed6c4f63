import { VERSION } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { beside, jsonOf, ringproof } from './ringproof.ts'

describe('a request that cannot be understood', () => {
  const cases: [string, string[], RegExp][] = [
    ['an unknown command', ['chek', 'fescue'], /found the command `chek`.*perhaps `check` is meant/],
    [
      'an unknown option',
      ['check', 'fescue', '--jsn'],
      /found the option `--jsn`.*perhaps `--json` is meant/,
    ],
    [
      'an option before its command',
      ['--json', 'check', 'fescue'],
      /options stand behind the command: `ringproof check … --json`/,
    ],
    ['an option of another command', ['list', 'sets', '--strict'], /found the option `--strict`/],
    ['a missing argument', ['check'], /found too few arguments, expected the argument <target>/],
    ['one argument too many', ['check', 'fescue', 'sedge'], /found too many arguments/],
    ['an option without its value', ['check', 'fescue', '--on'], /found the option `--on` alone/],
    ['a narrow width', ['list', 'sets', '--width', '20'], /found the width `20`.*from 60 to 1000/],
    ['a width that is no number', ['list', 'sets', '--width', '-1'], /found the width/],
    [
      'a frequency without a unit',
      ['solve', 'fescue', '--frequency', '1000'],
      /found the frequency `1000`.*mend: name the unit/,
    ],
    ['a frequency in volts', ['solve', 'fescue', '--frequency', '25 V'], /found the frequency `25 V`/],
    [
      'one point for two leads',
      ['meter', 'fescue', '--between', 'A1'],
      /`A1` behind `--between`.*two points/,
    ],
    ['three points for two leads', ['meter', 'fescue', '--between', 'A1', 'A2', 'A3'], /two points/],
    [
      'a condition for a table',
      ['meter', 'fescue', '--condition', 'off-hook'],
      /a condition without two points/,
    ],
    [
      'ohms on a live line',
      ['meter', 'fescue', '--on', 'workshop', '--between', 'plug.a', 'plug.b', '--range', 'ohms'],
      /`ohms` on a live line.*mend: unplug first/,
    ],
    ['a table of premises', ['meter', 'workshop'], /no set stands/],
    ['an unknown schema', ['schema', 'sets'], /found `sets`.*mend: write `ringproof schema set`/],
  ]
  test.each(cases)('ends with 2 on standard error: %s', async (_says, argv, words) => {
    const { code, out, err } = await ringproof(argv)
    expect({ code, out }).toEqual({ code: 2, out: argv.includes('--json') ? out : '' })
    expect((argv.includes('--json') ? out : err).replace(/\s+/g, ' ')).toMatch(words)
  })

  test.each(cases)('is an envelope of problems with --json: %s', async (_says, argv) => {
    const ran = await ringproof([...argv, '--json'])
    const { data, wrong } = jsonOf(ran)
    expect({ code: ran.code, err: ran.err, wrong }).toEqual({ code: 2, err: '', wrong: [] })
    expect(data).toMatchObject({
      ringproof: 'problems/1',
      'made by': VERSION,
      problems: [{ code: 'request-wrong' }],
    })
  })

  test('is coloured on a terminal only, and not when that is not wanted', async () => {
    const sign = '\u001b['
    const colour = { out: true, err: true }
    expect((await ringproof(['check', beside('six-mistakes.yaml')])).err).not.toContain(sign)
    expect((await ringproof(['check', beside('six-mistakes.yaml')], { colour })).err).toContain(sign)
    expect(
      (await ringproof(['check', beside('six-mistakes.yaml'), '--no-colour'], { colour })).err,
    ).not.toContain(sign)
  })
})

describe('help', () => {
  test.each([[[]], [['--help']], [['help']]])(
    'is shown for %j, with examples, cautions and exit codes',
    async (argv) => {
      const { code, out, err } = await ringproof(argv)
      expect({ code, err }).toEqual({ code: 0, err: '' })
      for (const word of ['ringproof demo', 'Exit codes', 'Unplug', '130']) expect(out).toContain(word)
    },
  )

  const commands = ['check', 'compare', 'solve', 'follow', 'meter', 'list', 'schema', 'demo']
  test.each(commands)('of %s teaches by example', async (command) => {
    for (const argv of [
      ['help', command],
      [command, '--help'],
    ]) {
      const { code, out } = await ringproof(argv)
      expect(code).toBe(0)
      expect(out).toMatch(new RegExp(`Examples:\\n  ringproof ${command}`))
    }
  })

  test.each(commands)('of %s gives examples whose options exist', async (command) => {
    const { out } = await ringproof(['help', command])
    const usage = out.slice(0, out.indexOf('Examples:'))
    for (const [flag] of out.slice(usage.length).matchAll(/--[a-z-]+/g)) expect(usage).toContain(flag)
  })

  test.each(['', ...commands])('%s fits 60 columns up to its examples', async (command) => {
    const { out } = await ringproof(
      ['help', command].filter((word) => word !== ''),
      { columns: 60 },
    )
    const usage = out.slice(0, out.indexOf('Examples:'))
    expect(usage.split('\n').filter((line) => line.length > 60)).toEqual([])
  })
})

test('the version is that of the package', async () => {
  expect(await ringproof(['--version'])).toEqual({ code: 0, out: `${VERSION}\n`, err: '' })
})

describe('a sheet with six different mistakes', () => {
  const argv = ['check', beside('six-mistakes.yaml')]

  test('gives six problems at six places and ends with 2', async () => {
    const { data, wrong } = jsonOf(await ringproof([...argv, '--json']))
    const problems = data.problems as {
      code: string
      place: { file: string; line: number; column: number }
    }[]
    expect(wrong).toEqual([])
    expect(problems).toHaveLength(6)
    expect(new Set(problems.map(({ place }) => `${place.line}:${place.column}`)).size).toBe(6)
    expect(new Set(problems.map(({ code }) => code)).size).toBe(6)
  })

  test('shows each as file, line and column, underlined, on standard error', async () => {
    const { code, out, err } = await ringproof(argv, { columns: 200 })
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err.match(/six-mistakes\.yaml:\d+:\d+: found /g)).toHaveLength(6)
    expect(err.match(/^ +\| +\^+$/gm)).toHaveLength(6)
    expect(err).toMatch(/\n6 problems\n$/)
  })
})

describe('what the program did not expect', () => {
  const broken = () => {
    throw new Error('first line\nsecond line')
  }

  test('is a problem of ours, ends with 3 and shows no stack trace', async () => {
    const { code, out, err } = await ringproof(['list', 'sets'], { shelf: broken })
    expect({ code, out }).toEqual({ code: 3, out: '' })
    expect(err).toContain('first line')
    expect(err).toContain('[ours]')
    expect(err).not.toMatch(/second line| {4}at /)
  })

  test('is in the envelope with --json', async () => {
    const ran = await ringproof(['list', 'sets', '--json'], { shelf: broken })
    expect(ran.code).toBe(3)
    expect(jsonOf(ran)).toMatchObject({ wrong: [], data: { problems: [{ code: 'ours' }] } })
  })
})
