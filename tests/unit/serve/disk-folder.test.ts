import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { diskFolder } from 'ringproof/serve/disk-folder'
import { put, Taken } from 'ringproof/serve/put'
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

  test('that is none is refused', () => {
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

  test('never takes a place that was to be new', () => {
    expect(() => put(join(box, 'a.yaml'), Buffer.from('two'), true, () => true)).toThrow(Taken)
    expect(text('a.yaml')).toBe('one')
  })
})
