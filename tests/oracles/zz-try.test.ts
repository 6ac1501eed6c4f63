import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { house } from './_house.ts'
test('x', () => {
  const h = house({ part: '{kind: resistor, from: A1, to: A2, resistance: 10 Ω}', cable: '{type: twin, gauge: 0.5 mm, length: 1 km, temperature: 40 °C}' }, false)
  writeFileSync('/tmp/help/try.out', JSON.stringify((h as any).all, null, 1))
})
