import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { rewritten, runner, sessionsOf } from './sessions.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const documents = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(`${root}docs`)
    .filter((file) => file.endsWith('.md'))
    .map((file) => `docs/${file}`),
]
const read = (path: string): string => readFileSync(`${root}${path}`, 'utf8')

describe('the documents', () => {
  test.each(documents)('%s never runs a command that npx might fetch', (path) => {
    expect(read(path).match(/\bnpx (?!--no-install )/g) ?? []).toEqual([])
  })

  test('show at least one session, in the README', () => {
    expect(sessionsOf(read('README.md')).flat().length).toBeGreaterThan(0)
  })
})

/** Only the build has a command to run. */
describe.runIf(process.env.RINGPROOF_BUILD === '1')('a session in a document', () => {
  const rewrite = process.env.RINGPROOF_REWRITE === '1'
  test.each(documents.filter((path) => sessionsOf(read(path)).length > 0))(
    '%s prints what it shows',
    (path) => {
      const before = read(path)
      const after = rewritten(before, runner(root))
      if (rewrite) writeFileSync(`${root}${path}`, after)
      else expect(before).toBe(after)
    },
  )
})

describe('console blocks', () => {
  const text = 'a\n```console\n$ one\nfirst\n\nsecond\n$ two\n```\nb\n```sh\n$ three\n```\n'

  test('are taken apart into commands and output', () => {
    expect(sessionsOf(text)).toEqual([
      [
        { command: 'one', output: 'first\n\nsecond' },
        { command: 'two', output: '' },
      ],
    ])
  })

  test('are written anew without touching the rest', () => {
    const after = rewritten(text, (command) => `says ${command}\n`)
    expect(after).toBe('a\n```console\n$ one\nsays one\n$ two\nsays two\n```\nb\n```sh\n$ three\n```\n')
    expect(rewritten(after, (command) => `says ${command}`)).toBe(after)
  })

  test('that begin with output or run another command are refused', () => {
    expect(() => sessionsOf('```console\nfirst\n```\n')).toThrow('begins with output')
    expect(() => runner(root)('ls')).toThrow('may run only')
  })
})
