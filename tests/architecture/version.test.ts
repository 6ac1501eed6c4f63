import { readFileSync } from 'node:fs'
import { VERSION } from 'ringproof'
import { expect, test } from 'vitest'

test('the version that answers carry is the one of the package', () => {
  expect(VERSION).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version)
})
