import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { meter } from 'ringproof'
import { kitOf } from 'ringproof/answer/instruments-table'
import { expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const page = readFileSync(fileURLToPath(new URL('../../../docs/meter.md', import.meta.url)), 'utf8')
const [, text = ''] = /```yaml\n(ringproof: 1\ninstruments:[\s\S]*?)```/.exec(page) ?? []

test('the template of an own instrument in docs/meter.md is one instrument that reads a set', () => {
  const own = { file: 'my-meter.yaml', text }
  expect(kitOf(undefined, own).instrument.name).toBe('mine')
  const { instrument, readings } = meter({ target: 'fescue', instrumentText: own }, DEMO)
  expect(instrument.name).toBe('mine')
  for (const id of ['meter.ohms', 'meter.capacitance'])
    expect(readings.some((one) => one.id === id && one.value !== null)).toBe(true)
})

test('docs/meter.md gives the phase of a capacitor as a reading says it', () => {
  expect(page).toContain('−90°')
  expect(page).not.toMatch(/[^−]90°/)
})
