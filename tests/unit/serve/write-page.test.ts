import { createHash } from 'node:crypto'
import {
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pageFiles } from 'ringproof/serve/page-files'
import { writePage } from 'ringproof/serve/write-page'
import { afterEach, beforeEach, expect, test } from 'vitest'

let base: string
let to: string
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'ringproof-page-'))
  to = join(base, 'to')
})
afterEach(() => rmSync(base, { recursive: true, force: true }))

/** A built page of these files. */
function built(name: string, texts: Record<string, string>): string {
  const folder = join(base, name)
  const files: Record<string, string> = {}
  for (const [path, text] of Object.entries(texts)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
    files[path] = createHash('sha256').update(text).digest('hex')
  }
  writeFileSync(join(folder, 'files.json'), JSON.stringify({ ringproof: 'page/1', files }))
  return folder
}

const OLD = { 'index.html': 'old', 'assets/a-1.js': '1', 'service-worker.js': 'w' }
const there = (): string[] => readdirSync(to, { recursive: true, encoding: 'utf8' }).sort()

test('a page is written into a new folder, and a later one takes its place', () => {
  expect(writePage(to, built('old', OLD))).toBe(4)
  expect(there()).toEqual(['assets', 'assets/a-1.js', 'files.json', 'index.html', 'service-worker.js'])
  writePage(to, built('new', { 'index.html': 'new', 'assets/a-2.js': '2', 'service-worker.js': 'v' }))
  expect(there()).toEqual(['assets', 'assets/a-2.js', 'files.json', 'index.html', 'service-worker.js'])
  expect(readFileSync(join(to, 'index.html'), 'utf8')).toBe('new')
})

test('what was cut short is finished', () => {
  mkdirSync(join(to, 'assets'), { recursive: true })
  writeFileSync(join(to, 'assets', 'a-1.js'), '1')
  expect(writePage(to, built('old', OLD))).toBe(4)
})

test.each([
  ['anything else', 'thesis.txt'],
  ['a changed file of the page', 'index.html'],
  ['a hidden file', '.env'],
])('a folder with %s is left alone', (_what, name) => {
  writePage(to, built('old', OLD))
  writeFileSync(join(to, name), 'mine')
  const before = there()
  expect(() => writePage(to, built('new', { 'index.html': 'new' }))).toThrow(name)
  expect(there()).toEqual(before)
  expect(readFileSync(join(to, name), 'utf8')).toBe('mine')
})

test('into the folder at work, and into itself', () => {
  const folder = built('old', OLD)
  const here = process.cwd()
  mkdirSync(to)
  try {
    process.chdir(to)
    writePage('.', folder)
    writeFileSync('stray.txt', 'mine')
    expect(() => writePage('.', folder)).toThrow('stray.txt')
    expect(() => writePage('', folder)).toThrow('no folder')
    rmSync('stray.txt')
    expect(writePage('./', folder)).toBe(4)
  } finally {
    process.chdir(here)
  }
  expect(writePage(folder, folder)).toBe(4)
  expect(readFileSync(join(folder, 'assets', 'a-1.js'), 'utf8')).toBe('1')
})

test('other names of its files, and what links in it lead to, stay as they are', () => {
  writePage(to, built('old', OLD))
  linkSync(join(to, 'index.html'), join(base, 'kept.html'))
  writeFileSync(join(base, 'linked.js'), '1')
  rmSync(join(to, 'assets', 'a-1.js'))
  symlinkSync(join(base, 'linked.js'), join(to, 'assets', 'a-1.js'))
  writePage(to, built('new', { 'index.html': 'new', 'assets/a-1.js': '2' }))
  expect(readFileSync(join(to, 'assets', 'a-1.js'), 'utf8')).toBe('2')
  expect(readFileSync(join(base, 'linked.js'), 'utf8')).toBe('1')
  expect(readFileSync(join(base, 'kept.html'), 'utf8')).toBe('old')
  rmSync(join(to, 'assets'), { recursive: true })
  mkdirSync(join(base, 'elsewhere'))
  symlinkSync(join(base, 'elsewhere'), join(to, 'assets'))
  expect(() => writePage(to, built('old', OLD))).toThrow('assets')
})

test('what the system will not do is said', () => {
  writeFileSync(join(base, 'file'), 'mine')
  expect(() => writePage(join(base, 'file', 'page'), built('old', OLD))).toThrow('ENOTDIR')
  expect(() => writePage('a\0b', built('old', OLD))).toThrow('request-wrong')
})

test('a file in the place of the folder is left alone', () => {
  writeFileSync(to, 'mine')
  expect(() => writePage(to, built('old', OLD))).toThrow('request-wrong')
  expect(readFileSync(to, 'utf8')).toBe('mine')
})

test('without a built page both the server and the writer say so', () => {
  expect(() => writePage(to, join(base, 'none'))).toThrow('dist/web')
  expect(() => pageFiles(join(base, 'none'))).toThrow('dist/web')
})

test('the server reads the listed files once, without those for a page elsewhere', () => {
  const folder = built('old', { ...OLD, 'manifest.webmanifest': '{}' })
  writeFileSync(join(folder, 'stranger.js'), 'x')
  expect([...pageFiles(folder).keys()].sort()).toEqual(['/', '/assets/a-1.js', '/index.html'])
})

test('a list that leads out of its folder is no list', () => {
  const folder = built('old', OLD)
  writeFileSync(
    join(folder, 'files.json'),
    JSON.stringify({ ringproof: 'page/1', files: { '../secret.txt': 'a'.repeat(64) } }),
  )
  expect(() => pageFiles(folder)).toThrow('dist/web')
})
