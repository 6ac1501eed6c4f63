import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { packagedFolder } from 'ringproof/host/packaged'
import { ProblemError } from 'ringproof/problem'
import { expect, test } from 'vitest'
import { folderWith } from './_folder.ts'

test('the packaged folder is the one with the sheets of the demo', () => {
  expect(existsSync(join(packagedFolder(), 'premises', 'workshop.yaml'))).toBe(true)
})

test('the packaged folder is found from sources and builds alike, past packages of other names and broken ones', () => {
  const folder = folderWith({
    'package.json': '{"name": "ringproof"}',
    'dist/package.json': '{"name": "another"}',
    'dist/lib/package.json': 'broken',
  })
  for (const file of ['src/host/packaged.ts', 'dist/lib/host/packaged.js', 'dist/cli/ringproof.js']) {
    expect(packagedFolder(join(folder, file))).toBe(join(folder, 'netlists'))
  }
})

test('a program outside its package says so', () => {
  expect(() => packagedFolder('/nowhere/program.js')).toThrow(ProblemError)
})
