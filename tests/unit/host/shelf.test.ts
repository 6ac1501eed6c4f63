import { chmodSync, mkdirSync, symlinkSync, unlinkSync } from 'node:fs'
import { join, relative } from 'node:path'
import { folderShelf } from 'ringproof/host/shelf'
import { describe, expect, test } from 'vitest'
import { folderWith } from './_folder.ts'

const head = (kind: string, name: string): string =>
  `# a sheet\nringproof: 1\nsheet: ${kind}\nname: ${name}\n`
const unit = (name: string): string => head('unit', name)

/** A desk with sheets at every distance from `desk/mine/set.yaml`. */
function desk(files: Readonly<Record<string, string>>) {
  const root = folderWith({ 'desk/mine/set.yaml': head('set', 'asking'), ...files })
  const shelf = folderShelf([join(root, 'given'), join(root, 'other')], join(root, 'packaged'))
  const asking = join(root, 'desk/mine/set.yaml')
  const find = (name: string, from: string | undefined = asking): string | undefined => {
    const found = shelf.find('unit', name, from)
    return found && relative(root, found.file)
  }
  return { root, shelf, asking, find }
}

describe('a shelf of folders', () => {
  test('finds a sheet by the kind and name that stand in it, whatever its file is called', () => {
    const { shelf, find } = desk({ 'given/x.yaml': unit('reed'), 'given/reed.yaml': unit('moss') })
    expect(find('reed')).toBe('given/x.yaml')
    expect(find('x')).toBeUndefined()
    expect(shelf.find('set', 'reed')).toBeUndefined()
    expect(shelf.find('unit', 'moss')?.text).toBe(unit('moss'))
  })

  test('names all sheets that are equally near to be the one, the taken one first', () => {
    const { root, shelf } = desk({
      'given/b.yaml': unit('reed'),
      'given/a.yaml': unit('reed'),
      'other/c.yaml': unit('reed'),
    })
    expect(shelf.twins?.('unit', 'reed').map((file) => relative(root, file))).toEqual([
      'given/a.yaml',
      'given/b.yaml',
    ])
    expect(shelf.twins?.('unit', 'moss')).toEqual([])
  })

  test('looks nearest first: own folder, folders beside it, given ones in their order, the packaged one', () => {
    const places = [
      'desk/mine/u.yaml',
      'desk/units/u.yaml',
      'given/deep/u.yaml',
      'other/u.yaml',
      'packaged/units/u.yaml',
    ]
    for (let k = 0; k < places.length; k++) {
      const { find } = desk(Object.fromEntries(places.slice(k).map((place) => [place, unit('reed')])))
      expect(find('reed')).toBe(places[k])
    }
  })

  test('looks only in the given folders and the packaged one when nobody in particular asks', () => {
    const { shelf } = desk({ 'desk/mine/u.yaml': unit('reed'), 'packaged/u.yaml': unit('moss') })
    expect(shelf.names('unit')).toEqual(['moss'])
    expect(shelf.find('unit', 'reed')).toBeUndefined()
  })

  test('takes the first by file name of two that are equally near', () => {
    const { find } = desk({ 'given/a/z.yaml': unit('reed'), 'given/b/c.yaml': unit('reed') })
    expect(find('reed')).toBe('given/b/c.yaml')
    const twice = desk({ 'desk/b/u.yaml': unit('reed'), 'desk/a/u.yaml': unit('reed') })
    expect(twice.find('reed')).toBe('desk/a/u.yaml')
  })

  test('looks three levels below a given folder and no deeper, not into hidden folders', () => {
    const { find } = desk({
      'given/1/2/3/u.yaml': unit('reed'),
      'given/1/2/3/4/u.yaml': unit('moss'),
      'given/.old/u.yaml': unit('fern'),
    })
    expect(['reed', 'moss', 'fern'].map((name) => find(name))).toEqual([
      'given/1/2/3/u.yaml',
      undefined,
      undefined,
    ])
  })

  test('reads head lines with comments, quotation marks, windows line ends and a byte order mark', () => {
    const { shelf } = desk({
      'given/a.yaml': '\uFEFFsheet: unit\r\nname: "reed" # ours\r\n',
      'given/b.yaml': "name: 'moss'\nsheet:   unit\n",
      'given/c.yaml': 'notes:\n  name: fern\nsheet: unit\n',
      'given/d.yaml': `${'#'.repeat(5000)}\n${unit('late')}`,
      'given/e.txt': unit('text'),
    })
    expect(shelf.names('unit')).toEqual(['moss', 'reed'])
  })

  test('names each name once, sorted, as seen from the asking sheet', () => {
    const { shelf, asking } = desk({
      'desk/units/u.yaml': unit('reed'),
      'given/a.yaml': unit('reed'),
      'packaged/b.yaml': unit('moss'),
    })
    expect(shelf.names('unit', asking)).toEqual(['moss', 'reed'])
    expect(shelf.names('set', asking)).toEqual(['asking'])
    expect(shelf.names('line', asking)).toEqual([])
  })

  test('passes over folders that are not there, files that are none, and links in a circle', () => {
    const { root, shelf, find } = desk({ 'given/u.yaml': unit('reed') })
    mkdirSync(join(root, 'given/folder.yaml'))
    symlinkSync(join(root, 'nowhere'), join(root, 'given/broken.yaml'))
    symlinkSync(join(root, 'given'), join(root, 'given/again'))
    symlinkSync(join(root, 'given/u.yaml'), join(root, 'given/linked.yaml'))
    expect(shelf.names('unit')).toEqual(['reed'])
    expect(find('reed')).toBe('given/linked.yaml')
    expect(folderShelf([join(root, 'no-such')], join(root, 'none-either')).names('unit')).toEqual([])
  })

  test.skipIf(process.getuid?.() === 0)('passes over a folder and a file that may not be read', () => {
    const { root, shelf } = desk({ 'given/shut/u.yaml': unit('reed'), 'given/u.yaml': unit('moss') })
    chmodSync(join(root, 'given/shut'), 0)
    chmodSync(join(root, 'given/u.yaml'), 0)
    const names = shelf.names('unit')
    chmodSync(join(root, 'given/shut'), 0o755)
    expect(names).toEqual([])
  })

  test('looks a folder through once', () => {
    const { root, shelf, find } = desk({ 'given/u.yaml': unit('reed'), 'given/v.yaml': unit('reed') })
    expect(find('reed')).toBe('given/u.yaml')
    unlinkSync(join(root, 'given/u.yaml'))
    expect(shelf.names('unit')).toEqual(['reed'])
    expect(find('reed')).toBe('given/v.yaml')
  })
})
