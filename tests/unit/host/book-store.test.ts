import { mkdirSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { nameOf, sealed, unsealed } from 'ringproof/host/book-seal'
import { bookStore } from 'ringproof/host/book-store'
import { prune } from 'ringproof/host/book-store-prune'
import { cacheFolder } from 'ringproof/host/cache-folder'
import { codeFolder, printOf, programPrint } from 'ringproof/host/program-print'
import { describe, expect, test } from 'vitest'
import { folderWith } from './_folder.ts'

const bytes = (...all: readonly number[]): Uint8Array => Uint8Array.from(all)

describe('a store of books', () => {
  test('gives back what it was given, in a run to come too', () => {
    const folder = join(folderWith({}), 'deep', 'below')
    const store = bookStore(folder)
    expect(store.read('one')).toBeUndefined()
    store.write('one', bytes(1, 2, 3))
    store.write('two', bytes())
    for (const again of [store, bookStore(folder)]) {
      expect(again.read('one')).toEqual(bytes(1, 2, 3))
      expect(again.read('two')).toEqual(bytes())
      expect(again.read('three')).toBeUndefined()
    }
    store.remove('one')
    store.remove('never there')
    expect(store.read('one')).toBeUndefined()
    expect(readdirSync(folder)).toEqual([`${nameOf('two')}.book`])
    // nobody else's business
    expect(statSync(folder).mode & 0o077).toBe(0)
    expect(statSync(join(folder, `${nameOf('two')}.book`)).mode & 0o077).toBe(0)
  })

  test('takes the later of two writers of one key', () => {
    const folder = folderWith({})
    const [one, other] = [bookStore(folder), bookStore(folder)]
    for (let k = 0; k < 20; k += 1) {
      one.write('key', bytes(1, k))
      other.write('key', bytes(2, k))
      expect(one.read('key')).toEqual(bytes(2, k))
    }
    expect(readdirSync(folder)).toHaveLength(1)
  })

  test('passes over what is torn, spoilt, foreign, or another key’s under its name', () => {
    const folder = folderWith({})
    const store = bookStore(folder)
    const path = join(folder, `${nameOf('key')}.book`)
    store.write(
      'key',
      Uint8Array.from({ length: 500 }, (_, k) => k),
    )
    const whole = readFileSync(path)
    for (const length of [0, 5, 20, 60, 88, 89, 300, whole.length - 1]) {
      writeFileSync(path, whole.subarray(0, length))
      expect(store.read('key'), `${length} bytes`).toBeUndefined()
    }
    for (let at = 0; at < whole.length; at += 7) {
      const spoilt = Buffer.from(whole)
      spoilt[at] = (spoilt[at] ?? 0) ^ 1
      writeFileSync(path, spoilt)
      expect(store.read('key'), `byte ${at}`).toBeUndefined()
    }
    writeFileSync(path, Buffer.concat([whole, Buffer.of(0)]))
    expect(store.read('key')).toBeUndefined()
    writeFileSync(path, sealed('another key', bytes(1)))
    expect(store.read('key')).toBeUndefined()
    // what is written anew is whole again
    store.write('key', bytes(9))
    expect(store.read('key')).toEqual(bytes(9))
  })

  test('that cannot be read or written keeps nothing and throws nothing', () => {
    const folder = folderWith({ file: 'no folder' })
    const store = bookStore(join(folder, 'file', 'below'))
    store.write('key', bytes(1))
    expect(store.read('key')).toBeUndefined()
    store.remove('key')
    const taken = folderWith({})
    mkdirSync(join(taken, `${nameOf('key')}.book`, 'inner'), { recursive: true })
    const other = bookStore(taken)
    other.write('key', bytes(1))
    expect(other.read('key')).toBeUndefined()
    // nor does it leave anything half written
    expect(readdirSync(taken)).toEqual([`${nameOf('key')}.book`])
  })

  test('lets the oldest go where there are too many or too much', () => {
    const folder = folderWith({ 'other.txt': 'not ours' })
    const store = bookStore(folder, { files: 3, bytes: 1e9 })
    const age = (key: string, seconds: number) =>
      utimesSync(join(folder, `${nameOf(key)}.book`), seconds, seconds)
    for (const [k, key] of ['a', 'b', 'c', 'd', 'e'].entries()) {
      store.write(key, bytes(k))
      age(key, 1000 + k)
    }
    // whoever is read is used
    expect(store.read('b')).toEqual(bytes(1))
    prune(folder, '.book', { files: 3, bytes: 1e9 })
    const left = (): readonly string[] =>
      ['a', 'b', 'c', 'd', 'e'].filter((key) => store.read(key) !== undefined)
    expect(left()).toEqual(['b', 'd', 'e'])
    age('d', 1)
    prune(folder, '.book', { files: 9, bytes: 2 * sealed('b', bytes(1)).length })
    expect(left()).toEqual(['b', 'e'])
    expect(readFileSync(join(folder, 'other.txt'), 'utf8')).toBe('not ours')
  })

  test('looks after its size by itself while it is written to', () => {
    const folder = folderWith({})
    const store = bookStore(folder, { files: 100, bytes: 20 * 2 ** 20 })
    for (let k = 0; k < 12; k += 1) store.write(`${k}`, new Uint8Array(4 * 2 ** 20))
    const sizes = readdirSync(folder).map((name) => statSync(join(folder, name)).size)
    expect(sizes.length).toBeGreaterThan(2)
    // what was written since it last looked may stand above
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(30 * 2 ** 20)
  })

  test('sweeps up after writers that died long ago, and no others', () => {
    const now = Date.now()
    const folder = folderWith({ 'x.book.1.a.tmp': 'old', 'x.book.2.b.tmp': 'young', 'mine.tmp': 'not ours' })
    utimesSync(join(folder, 'x.book.1.a.tmp'), now / 1000 - 7200, now / 1000 - 7200)
    utimesSync(join(folder, 'mine.tmp'), now / 1000 - 7200, now / 1000 - 7200)
    prune(folder, '.book', { files: 9, bytes: 9 }, now)
    expect(readdirSync(folder).sort()).toEqual(['mine.tmp', 'x.book.2.b.tmp'])
  })
})

describe('the seal of a kept file', () => {
  test('tells whole from torn, and whose it is', () => {
    const file = sealed('key', bytes(1, 2))
    expect(unsealed('key', file)).toEqual(bytes(1, 2))
    expect(unsealed('other', file)).toBeUndefined()
    expect(nameOf('key')).toMatch(/^[0-9a-f]{64}$/)
  })
})

describe('where kept books lie', () => {
  test.each([
    [{ RINGPROOF_CACHE: 'off', HOME: '/h' }, undefined],
    [{ RINGPROOF_CACHE: '/own', XDG_CACHE_HOME: '/x' }, '/own'],
    [{ RINGPROOF_CACHE: 'own' }, undefined],
    [{ RINGPROOF_CACHE: '', XDG_CACHE_HOME: '/x', HOME: '/h' }, '/x/ringproof'],
    [{ XDG_CACHE_HOME: 'x', HOME: '/h' }, '/h/.cache/ringproof'],
    [{ HOME: '/h' }, '/h/.cache/ringproof'],
    [{ HOME: '' }, undefined],
  ])('%j', (environment, folder) => {
    expect(cacheFolder(environment)).toBe(folder)
  })
})

describe('the print of the program', () => {
  test('differs by each of its files, by name and by content, and by nothing else', () => {
    const print = (files: Record<string, string>) => printOf(folderWith(files))
    const one = print({ 'a.js': '1', 'b/c.js': '2', 'notes.txt': 'x' })
    expect(print({ 'a.js': '1', 'b/c.js': '2', 'c.d.ts': 'y' })).toBe(one)
    const others = [
      print({ 'a.js': '1', 'b/c.js': '3' }),
      print({ 'a.js': '1', 'b/d.js': '2' }),
      print({ 'a.js': '1' }),
      print({ 'a.js': '12', 'b/c.js': '' }),
    ]
    expect(new Set([one, ...others]).size).toBe(5)
  })

  test('is that of the whole program, as one file or as many', () => {
    expect(codeFolder('/p/dist/cli/ringproof.js')).toBe('/p/dist/cli')
    expect(codeFolder('/p/dist/lib/host/program-print.js')).toBe('/p/dist/lib')
    expect(programPrint()).toMatch(/^[0-9a-f]{64}$/)
    expect(programPrint()).toBe(programPrint())
  })
})
