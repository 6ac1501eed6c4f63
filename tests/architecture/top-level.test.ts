import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { ROOT } from './sources.ts'

const FILES = /^(README\.md|DEVELOPERS\.md|package\.json|package-lock\.json|tsconfig\.json|LICENSE|\..*)$/
const FOLDERS = /^(src|netlists|tests|docs|\..*)$/

/** What stands at the top against the owner's list. */
function strangers(paths: readonly string[]): string[] {
  const tops = new Set(paths.map((path) => path.replace(/\/.*/, '/')))
  return [...tops].filter((top) => !(top.endsWith('/') ? FOLDERS.test(top.slice(0, -1)) : FILES.test(top)))
}

/** Every `resolved` of a lock file that names a host, wherever it is nested. */
function hosts(lock: unknown): string[] {
  if (typeof lock !== 'object' || lock === null) return []
  return Object.entries(lock).flatMap(([key, value]) => {
    return key === 'resolved' && String(value).includes('://') ? [String(value)] : hosts(value)
  })
}

/** Dependencies of a manifest whose version is a range, a tag or an address. */
function inexact(manifest: Record<string, unknown>): string[] {
  const groups = ['dependencies', 'devDependencies', 'optionalDependencies', 'peerDependencies', 'overrides']
  return groups
    .flatMap((group) => Object.entries((manifest[group] ?? {}) as Record<string, unknown>))
    .filter(([, version]) => typeof version !== 'string' || !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))
    .map(([name]) => name)
}

const read = (file: string) => readFileSync(`${ROOT}${file}`, 'utf8')

describe('the top level', () => {
  test('holds what the owner fixed and nothing else', () => {
    const args = ['ls-files', '-z', '--cached', '--others', '--exclude-standard']
    const paths = execFileSync('git', args, { cwd: ROOT, encoding: 'utf8' }).split('\0').filter(Boolean)
    expect(paths).toContain('package.json')
    expect(strangers(paths)).toEqual([])
  })

  test('would notice a stranger', () => {
    expect(strangers(['src/a.ts', 'README.md', '.ci/run', 'lib/a.ts', 'notes.md', 'docs'])).toEqual([
      'lib/',
      'notes.md',
      'docs',
    ])
  })
})

describe('the packages', () => {
  test('have exact versions', () => {
    expect(inexact(JSON.parse(read('package.json')))).toEqual([])
    expect(inexact({ dependencies: { a: '^1.0.0', b: '1.0.0' }, devDependencies: { c: 'latest' } })).toEqual([
      'a',
      'c',
    ])
  })

  test('come from no named host', () => {
    expect(hosts(JSON.parse(read('package-lock.json')))).toEqual([])
    if (existsSync(`${ROOT}.npmrc`)) expect(read('.npmrc')).not.toMatch(/^\s*(@[^=]*:)?registry\s*=|:\/\//m)
    expect(hosts({ packages: { a: { resolved: 'https://example.test/a.tgz' } } })).toHaveLength(1)
  })

  test('are the same in the lock', () => {
    const { dependencies, devDependencies } = JSON.parse(read('package.json'))
    expect(JSON.parse(read('package-lock.json')).packages['']).toMatchObject({
      dependencies,
      devDependencies,
    })
  })
})
