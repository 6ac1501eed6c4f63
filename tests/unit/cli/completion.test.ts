import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { COMMANDS } from 'ringproof/cli/commands'
import { OPTIONS } from 'ringproof/cli/options'
import { SHELLS, WORD_LISTS } from 'ringproof/cli/word-lists'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ringproof } from '../../faces/ringproof.ts'
import { DEMO } from '../../support/bench.ts'

const shown = COMMANDS.filter(({ hidden }) => hidden !== true)
const script = async (shell: string) => (await ringproof(['completion', shell])).out

/** Whether a shell is there to run its script. */
function isThere(shell: string): boolean {
  try {
    execFileSync(shell, ['--version'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

describe.each(SHELLS)('the script for %s', (shell) => {
  test('names every command that is shown, and no hidden one as a command', async () => {
    const text = await script(shell)
    for (const { name } of shown) expect(text).toMatch(new RegExp(`\\b${name}\\b`))
    expect(text).toContain(`ringproof completion ${shell}`)
  })

  test('names every option of every command', async () => {
    const text = await script(shell)
    const flags = new Set(
      shown.flatMap(({ options }) => options.map((key) => OPTIONS[key].flags.split(' ')[0])),
    )
    for (const flag of flags) expect(text).toContain(shell === 'fish' ? `-l ${flag?.slice(2)}` : flag)
  })

  test.runIf(isThere(shell))('is a script that the shell can read', async () => {
    const text = await script(shell)
    expect(() => execFileSync(shell, ['-n'], { input: text })).not.toThrow()
  })
})

test('a shell that is not known is refused, with what is near', async () => {
  const { code, err } = await ringproof(['completion', 'bsh'])
  expect(code).toBe(2)
  expect(err).toContain('ringproof completion bash')
})

describe('the words that scripts ask for', () => {
  test.each([
    ['targets', [...DEMO.names('set'), ...DEMO.names('rewire'), ...DEMO.names('premises')]],
    ['grounds', [...DEMO.names('premises'), ...DEMO.names('line'), 'none']],
    ['sides', [...DEMO.names('set'), ...DEMO.names('rewire'), ...DEMO.names('premises')]],
    ['shells', [...SHELLS]],
  ])('are, for %s, what is on the shelf', async (list, names) => {
    const { code, out, err } = await ringproof(['complete', list])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(out.trimEnd().split('\n').sort()).toEqual([...new Set(names)].sort())
  })

  test.each(Object.keys(WORD_LISTS))('are some for %s, none with a blank in it', async (list) => {
    const { out } = await ringproof(['complete', list])
    const words = out.trimEnd().split('\n')
    expect(words.length).toBeGreaterThan(1)
    expect(words.filter((word) => /\s|^$/.test(word))).toEqual([])
  })

  test('are none for a list that is not known, without a complaint', async () => {
    expect(await ringproof(['complete', 'songs'])).toEqual({ code: 0, out: '', err: '' })
  })

  test('are asked by a command that no help and no refusal shows', async () => {
    expect((await ringproof(['--help'])).out).not.toMatch(/^ +complete /m)
    expect((await ringproof(['complte'])).err).not.toContain('complete,')
  })
})

describe.runIf(isThere('bash'))('in bash', () => {
  let folder = ''
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'ringproof-completion-'))
    writeFileSync(join(folder, 'script'), await script('bash'))
    for (const list of Object.keys(WORD_LISTS))
      writeFileSync(join(folder, list), (await ringproof(['complete', list])).out)
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  /** What bash offers when the last of these words is to be completed; the program is played by files of its words. */
  function offered(...words: readonly string[]): string[] {
    const run = `
      ringproof() { [[ $1 == complete ]] && cat "${folder}/$2"; }
      source "${folder}/script"
      COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1))
      _ringproof
      printf '%s\\n' "\${COMPREPLY[@]}"`
    const out = execFileSync('bash', ['-c', run, 'bash', 'ringproof', ...words], { encoding: 'utf8' })
    return out.split('\n').filter((line) => line !== '')
  }

  test('the script is bound to the program', () => {
    const bound = execFileSync('bash', ['-c', `source "${folder}/script"; complete -p ringproof`], {
      encoding: 'utf8',
    })
    expect(bound).toContain('-F _ringproof ringproof')
  })

  test('the first word is a command', () => {
    expect(offered('')).toEqual(expect.arrayContaining(shown.map(({ name }) => name)))
    expect(offered('com')).toEqual(['compare', 'completion'])
    expect(offered('')).not.toContain('complete')
  })

  test('behind a command stand names of its own', () => {
    expect(offered('check', 'sedge-conv')).toEqual(['sedge-converted', 'sedge-converted-as-fescue'])
    expect(offered('list', 'inst')).toEqual(['instruments'])
    expect(offered('figures', 'fescue', 'ringing.sh')).toEqual(['ringing.share'])
    expect(offered('help', 'fol')).toEqual(['follow'])
    expect(offered('completion', '')).toEqual(['bash', 'zsh', 'fish'])
  })

  test('options are those of the command, and values those of the option', () => {
    expect(offered('check', 'fescue', '--st')).toEqual(['--strict'])
    expect(offered('list', 'sets', '--st')).toEqual([])
    expect(offered('check', 'fescue', '--on', 'valley')).toEqual(['valley-exchange'])
    expect(offered('solve', 'fescue', '--condition', 'off-hook/s')).toEqual(['off-hook/speech'])
    expect(offered('solve', 'goods-office', '--condition', 'clerk')).toEqual([
      'clerk=on-hook',
      'clerk=off-hook',
    ])
    expect(offered('check', 'fescue', '--at', 'stair-h')).toEqual(['stair-head'])
    expect(offered('check', 'fescue', '--in', 'stai')).toEqual(['stairs'])
    expect(offered('meter', 'fescue', '--range', 'alternating-v')).toContain('alternating-volts')
  })

  test('a value of an option is no word of the command', () => {
    expect(offered('check', '--on', 'workshop', 'brome-earth-p')).toEqual(['brome-earth-parked'])
    expect(offered('check', 'fescue', 'sed')).toEqual([])
  })

  test('folders of sheets go on to the program', () => {
    const run = `
      ringproof() { printf '%s\\n' "asked:$3:$4"; }
      source "${folder}/script"
      COMP_WORDS=(ringproof check --sheets "a folder" asked); COMP_CWORD=4
      _ringproof
      printf '%s\\n' "\${COMPREPLY[@]}"`
    expect(execFileSync('bash', ['-c', run], { encoding: 'utf8' })).toContain('asked:--sheets:a')
  })
})
