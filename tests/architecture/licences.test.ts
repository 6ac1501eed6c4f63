import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { licenceIsAllowed, type Manifest, type Reader, runtimeClosure } from './licences.ts'
import { ROOT } from './sources.ts'

const manifestIn = (folder: string): Manifest =>
  JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))

/** Looks upwards through `node_modules`, the way node does. */
const installed: Reader = (name, from) => {
  for (let at = from; ; at = dirname(at)) {
    const folder = join(at, 'node_modules', name)
    if (existsSync(join(folder, 'package.json'))) return { manifest: manifestIn(folder), folder }
    if (at === dirname(at)) return undefined
  }
}

describe('what ships with the library', () => {
  const root = manifestIn(ROOT)
  const closure = runtimeClosure(root, ROOT, installed)

  test('holds every dependency and what these bring', () => {
    const names = closure.map(({ name }) => name)
    expect(names).toEqual(expect.arrayContaining(Object.keys(root.dependencies ?? {})))
    expect(names.length).toBeGreaterThan(Object.keys(root.dependencies ?? {}).length)
  })

  test('is under allowed licences only', () => {
    expect(
      closure.filter(({ license, name }) => !licenceIsAllowed(license, name)).map(({ name }) => name),
    ).toEqual([])
  })

  test('is itself under MIT, in the name of its authors', () => {
    expect(root.license).toBe('MIT')
    expect(readFileSync(`${ROOT}LICENSE`, 'utf8')).toMatch(
      /^MIT License\n\nCopyright .* the Ringproof authors\n/,
    )
  })
})

describe('the look at licences', () => {
  test('reads alternatives and sums, and refuses what it does not know', () => {
    expect(['MIT', '(MIT OR GPL-3.0-only)', 'MIT AND ISC'].map((one) => licenceIsAllowed(one))).toEqual([
      true,
      true,
      true,
    ])
    const refused = [
      'GPL-3.0-only',
      'MIT AND GPL-3.0-only',
      'SEE LICENSE IN x',
      '(MIT) OR (X)',
      '',
      undefined,
    ]
    expect(refused.filter((one) => licenceIsAllowed(one))).toEqual([])
    expect(['elkjs', 'other'].map((name) => licenceIsAllowed('EPL-2.0', name))).toEqual([true, false])
  })

  test('finds a strange licence two floors down, and a package that is missing', () => {
    const shelf: Record<string, Manifest> = {
      a: { name: 'a', license: 'MIT', dependencies: { b: '1.0.0' } },
      b: { name: 'b', license: 'GPL-3.0-only', dependencies: { a: '1.0.0' } },
    }
    const read: Reader = (name) => (shelf[name] ? { manifest: shelf[name], folder: name } : undefined)
    const root: Manifest = { name: 'root', dependencies: { a: '1.0.0' } }
    expect(runtimeClosure(root, '', read).map(({ license }) => license)).toEqual(['MIT', 'GPL-3.0-only'])
    const broken: Manifest = { name: 'root', dependencies: { gone: '1.0.0' } }
    expect(() => runtimeClosure(broken, '', read)).toThrow('needs gone')
  })
})
