import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { MOST_FOLDERS, MOST_SHEETS, sheetsBelow } from 'ringproof/serve/sheets-below'
import { afterEach, beforeEach, expect, test } from 'vitest'

let box: string
beforeEach(() => {
  box = mkdtempSync(join(tmpdir(), 'ringproof-below-'))
})
afterEach(() => rmSync(box, { recursive: true, force: true }))

const sheet = (...path: string[]): void => {
  mkdirSync(join(box, ...path.slice(0, -1)), { recursive: true })
  writeFileSync(join(box, ...path), '')
}

test('what is near comes first, and three folders below is the end', () => {
  sheet('b', '2', 'z.yaml')
  sheet('a', '1', '2', 'x.yaml')
  sheet('a', '1', '2', '3', 'too-deep.yaml')
  sheet('c.yaml')
  sheet('a', 'y.yaml')
  expect(sheetsBelow(box)).toEqual({
    files: ['c.yaml', 'a/y.yaml', 'b/2/z.yaml', 'a/1/2/x.yaml'],
    isWhole: true,
  })
  expect(sheetsBelow(join(box, 'none'))).toEqual({ files: [], isWhole: true })
})

test('more folders than a folder of sheets has are not gone through', () => {
  const half = MOST_FOLDERS / 2
  for (let k = 0; k < half; k += 1) mkdirSync(join(box, 'a', `${k}`), { recursive: true })
  for (let k = 0; k < half - 3; k += 1) mkdirSync(join(box, 'b', `${k}`), { recursive: true })
  expect(sheetsBelow(box).isWhole).toBe(true)
  mkdirSync(join(box, 'b', 'one-more'))
  sheet('b', 'near.yaml')
  expect(sheetsBelow(box)).toEqual({ files: ['b/near.yaml'], isWhole: false })
  sheet('a', '0', 'below', 'far.yaml')
  expect(sheetsBelow(box).isWhole).toBe(false)
})

test('nor more sheets', () => {
  const [first, ...rest] = Array.from({ length: MOST_SHEETS + 1 }, (_, k) => `${1e6 + k}.yaml`)
  for (const name of rest) sheet('a', name)
  expect(sheetsBelow(box)).toMatchObject({ isWhole: true })
  sheet('b', first ?? '')
  const { files, isWhole } = sheetsBelow(box)
  expect([files.length, isWhole]).toEqual([MOST_SHEETS, false])
})
