import { check } from 'ringproof'
import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { DEMO } from '../support/bench.ts'
test('load', () => {
  const out: string[] = []
  for (const target of ['station-house', 'museum-hall', 'goods-office-shared', 'marram']) { const a = check({ target }, DEMO)
    out.push(target, ...a.verdicts.filter(v => v.check === 'line.ringing-load').map((v) => JSON.stringify({ s: v.state, says: v.says, mend: (v as never as {mend: string}).mend, fig: v.figure?.value, lim: v.limit?.value, cons: v.consequences?.length })), ...a.faults.map(f=>f.fault)) }
  writeFileSync('/tmp/load.txt', out.join('\n'))
})
