import { execFileSync } from 'node:child_process'
import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { diskFolder } from 'ringproof/serve/disk-folder'
import { put, Taken } from 'ringproof/serve/put'
import { bytesOf } from 'ringproof/serve/sheet-bytes'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'

let base: string
let box: string
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'ringproof-serve-'))
  box = join(base, 'box')
  mkdirSync(join(box, 'inner'), { recursive: true })
  writeFileSync(join(box, 'a.yaml'), 'one')
})
afterEach(() => rmSync(base, { recursive: true, force: true }))

const text = (...path: string[]): string => readFileSync(join(box, ...path), 'utf8')

describe('a folder of sheets', () => {
  test('lists sheets to three folders below, and what was passed over', () => {
    const deep = join(box, '1', '2', '3', '4')
    mkdirSync(deep, { recursive: true })
    for (const folder of [deep, join(deep, '..')]) writeFileSync(join(folder, 'deep.yaml'), 'x')
    mkdirSync(join(box, '.git'))
    writeFileSync(join(box, '.git', 'b.yaml'), 'x')
    writeFileSync(join(box, 'big.yaml'), 'x'.repeat((1 << 20) + 1))
    writeFileSync(join(box, 'latin.yaml'), Buffer.from([0xe9]))
    writeFileSync(join(box, 'notes.txt'), 'x')
    const { sheets, problems } = diskFolder(box).list()
    expect(sheets.map(({ file }) => file)).toEqual(['a.yaml', '1/2/3/deep.yaml'])
    expect(problems.map(({ code }) => code)).toEqual(['too-big', 'syntax'])
  })

  test('saves what is as it was read, keeps its mode, and leaves nothing beside it', () => {
    chmodSync(join(box, 'a.yaml'), 0o640)
    const folder = diskFolder(box)
    const { mark } = folder.read('a.yaml')
    const saved = folder.save('a.yaml', 'two', mark)
    expect(saved).toEqual({ mark: folder.read('a.yaml').mark })
    expect(text('a.yaml')).toBe('two')
    expect(statSync(join(box, 'a.yaml')).mode & 0o777).toBe(0o640)
    expect(readdirSync(box).sort()).toEqual(['a.yaml', 'inner'])
  })

  test('notices a writer from outside', () => {
    const folder = diskFolder(box)
    const { mark } = folder.read('a.yaml')
    writeFileSync(join(box, 'a.yaml'), 'theirs')
    expect(folder.save('a.yaml', 'mine', mark)).toMatchObject({ now: { text: 'theirs' } })
    expect(folder.save('a.yaml', 'mine', null)).toMatchObject({ now: { text: 'theirs' } })
    rmSync(join(box, 'a.yaml'))
    expect(folder.save('a.yaml', 'mine', mark)).toEqual({ now: undefined })
    expect(readdirSync(box)).toEqual(['inner'])
  })

  test('makes a new sheet in a folder that is there, and no folder', () => {
    const folder = diskFolder(box)
    expect(folder.save('inner/new.yaml', 'new', null)).toHaveProperty('mark')
    expect(text('inner', 'new.yaml')).toBe('new')
    expect(() => folder.save('none/new.yaml', 'new', null)).toThrow(/^404/)
  })

  test('follows a link within itself, and writes where it leads', () => {
    symlinkSync(join(box, 'a.yaml'), join(box, 'inner', 'link.yaml'))
    const folder = diskFolder(box)
    folder.save('inner/link.yaml', 'two', folder.read('inner/link.yaml').mark)
    expect(text('a.yaml')).toBe('two')
    expect(lstatSync(join(box, 'inner', 'link.yaml')).isSymbolicLink()).toBe(true)
  })

  test('follows no link out, nor to what is hidden', () => {
    writeFileSync(join(base, 'secret.yaml'), 'secret')
    mkdirSync(join(base, 'box-twin'))
    symlinkSync(join(base, 'secret.yaml'), join(box, 'out.yaml'))
    symlinkSync(join(base, 'box-twin'), join(box, 'twin'))
    symlinkSync(join(base, 'nothing.yaml'), join(box, 'dangling.yaml'))
    mkdirSync(join(box, '.git'))
    symlinkSync(join(box, '.git'), join(box, 'shown'))
    mkdirSync(join(box, 'folder.yaml'))
    const folder = diskFolder(box)
    for (const file of ['out.yaml', 'twin/a.yaml', 'dangling.yaml', 'shown/a.yaml', 'folder.yaml']) {
      expect(() => folder.read(file), file).toThrow(/^40[34]/)
      expect(() => folder.save(file, 'evil', null), file).toThrow(/^403/)
    }
    expect(readFileSync(join(base, 'secret.yaml'), 'utf8')).toBe('secret')
    expect(readdirSync(join(base, 'box-twin'))).toEqual([])
    expect(readdirSync(join(box, '.git'))).toEqual([])
  })

  test('says so where something is in the way: a file for a folder, a pipe, a name too long', () => {
    execFileSync('mkfifo', [join(box, 'pipe.yaml')])
    const folder = diskFolder(box)
    expect(() => folder.read('a.yaml/b.yaml')).toThrow(/^404/)
    expect(() => folder.save('a.yaml/b.yaml', 'x', null)).toThrow(/^404/)
    expect(() => folder.read('pipe.yaml')).toThrow(/^403/)
    expect(() => folder.save('pipe.yaml', 'x', null)).toThrow(/^403/)
    expect(() => folder.read(`${'x'.repeat(300)}.yaml`)).toThrow(/^404/)
    expect(folder.list().sheets.map(({ file }) => file)).toEqual(['a.yaml'])
  })

  test('leaves a file alone that nobody may write', () => {
    chmodSync(join(box, 'a.yaml'), 0o444)
    const folder = diskFolder(box)
    expect(() => folder.save('a.yaml', 'two', folder.read('a.yaml').mark)).toThrow(/^403.*EACCES/)
    expect(text('a.yaml')).toBe('one')
    expect(readdirSync(box).sort()).toEqual(['a.yaml', 'inner'])
  })

  test('writes no other name of a file', () => {
    linkSync(join(box, 'a.yaml'), join(base, 'other.yaml'))
    const folder = diskFolder(box)
    folder.save('a.yaml', 'two', folder.read('a.yaml').mark)
    expect(readFileSync(join(base, 'other.yaml'), 'utf8')).toBe('one')
  })

  test('that is a folder no more has nothing, and takes nothing', () => {
    const folder = diskFolder(box)
    renameSync(box, join(base, 'moved'))
    symlinkSync(join(base, 'moved'), box)
    expect(folder.list().sheets).toEqual([])
    expect(() => folder.read('a.yaml')).toThrow(/^403/)
    rmSync(box)
    expect(folder.list()).toEqual({ sheets: [], problems: [] })
    expect(() => folder.save('a.yaml', 'x', null)).toThrow(/^404/)
    expect(readdirSync(join(base, 'moved')).sort()).toEqual(['a.yaml', 'inner'])
  })

  test('with too much in it shows what is near, and says that there is more', () => {
    const big = 'x'.repeat(1 << 20)
    for (let k = 0; k < 17; k += 1) writeFileSync(join(box, 'inner', `${k}.yaml`), big)
    const { sheets, problems } = diskFolder(box).list()
    expect(sheets[0]?.file).toBe('a.yaml')
    expect(sheets).toHaveLength(16)
    expect(problems).toMatchObject([{ code: 'too-big', severity: 'warning' }])
  })

  test('that is none is refused', () => {
    expect(() => diskFolder('')).toThrow('is no folder')
    expect(() => diskFolder(join(base, 'none'))).toThrow('is no folder')
    expect(() => diskFolder(join(box, 'a.yaml'))).toThrow('is no folder')
  })
})

describe('putting a file in its place', () => {
  test('looks right before, and leaves everything when it is another', () => {
    expect(() => put(join(box, 'a.yaml'), Buffer.from('two'), false, () => false)).toThrow(Taken)
    expect(text('a.yaml')).toBe('one')
    expect(readdirSync(box).sort()).toEqual(['a.yaml', 'inner'])
  })

  test('follows a link to where it leads by now', () => {
    writeFileSync(join(box, 'b.yaml'), 'one')
    symlinkSync(join(box, 'a.yaml'), join(box, 'link.yaml'))
    const folder = diskFolder(box)
    const { mark } = folder.read('link.yaml')
    rmSync(join(box, 'link.yaml'))
    symlinkSync(join(box, 'b.yaml'), join(box, 'link.yaml'))
    folder.save('link.yaml', 'two', mark)
    expect([text('a.yaml'), text('b.yaml')]).toEqual(['one', 'two'])
  })

  test('what is opened is what stands there: no folder on the way is a link by then', () => {
    symlinkSync(join(box, 'inner'), join(box, 'way'))
    writeFileSync(join(box, 'inner', 'c.yaml'), 'c')
    expect(() => bytesOf(join(box, 'way', 'c.yaml'), 'way/c.yaml')).toThrow(/^403/)
    expect(bytesOf(join(box, 'inner', 'c.yaml'), 'inner/c.yaml')?.toString()).toBe('c')
    expect(bytesOf(join(box, 'inner', 'none.yaml'), 'inner/none.yaml')).toBe(undefined)
    symlinkSync(join(box, 'a.yaml'), join(box, 'last.yaml'))
    expect(() => bytesOf(join(box, 'last.yaml'), 'last.yaml')).toThrow(/cannot be read/)
  })

  test('never takes a place that was to be new', () => {
    expect(() => put(join(box, 'a.yaml'), Buffer.from('two'), true, () => true)).toThrow(Taken)
    expect(text('a.yaml')).toBe('one')
  })
})
