import { check } from 'ringproof'
import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { DEMO } from '../support/bench.ts'
const only = process.env.ONLY?.split(' ')
const names = only ?? [...DEMO.names('set'), ...DEMO.names('rewire'), ...DEMO.names('premises')]
test('look', () => {
  const out: string[] = []
  for (const target of names) {
    const t0 = performance.now()
    let a
    try { a = check({ target, ...(process.env.ON ? { on: process.env.ON } : {}) }, DEMO) } catch (e) { out.push(`${target}: THROWN ${(e as Error).stack}`); continue }
    const ms = performance.now() - t0
    out.push(`== ${target} (${ms.toFixed(0)} ms) fails: ${a.verdicts.filter((v) => v.state === 'fails').map((v) => v.check + ' ' + v.subject).join('; ')}`)
    for (const f of a.faults) {
      out.push(`   * ${f.fault} [${f.subject}] ${f.says}`)
      out.push(`     path ${f.path.join(' ')}`)
      for (const c of f.consequences) out.push(`     ${c.figure.id} ${c.figure.subject} ${c.figure.value ?? c.figure.state} -> ${c.mended === undefined ? '-' : c.mended.value ?? c.mended.state} ${c.figure.unit}`)
      out.push(`     mend: ${f.mend}`)
    }
  }
  writeFileSync('/tmp/faults-look.txt', out.join('\n'))
})
