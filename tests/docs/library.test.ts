import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { solveCircuit } from 'ringproof'
import { expect, test } from 'vitest'
import { farApart } from '../support/close.ts'

const page = readFileSync(fileURLToPath(new URL('../../docs/library.md', import.meta.url)), 'utf8')

test('the example in docs/library.md gives the value behind it', () => {
  const [, sheet = ''] = /solveCircuit\(`([^`]*)`\)/.exec(page) ?? []
  const [, node = '', value = ''] =
    /console\.log\(answer\.voltages\['([\w/]+)'\]\) \/\/ (\S+),/.exec(page) ?? []
  // two equal resistors halve the voltage: the printed 5 is exact but for the last digits of the solve
  expect(farApart(solveCircuit(sheet).voltages[node], Number(value), { relative: 1e-12 })).toBeNull()
})
