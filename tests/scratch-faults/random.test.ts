import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { DEMO, checkMoved } from '../support/bench.ts'
import { readSheet } from 'ringproof/sheet/read'
function* moves(set: string): Iterable<string> {
  const text = DEMO.find('set', set)!
  const s = readSheet(text, DEMO, 'set').sheet! as never as { straps: Record<string, {hold: string}>, parts: Record<string, unknown>, cords: Record<string, {cores: Record<string, {lands: string}>}>, strips: Record<string, number> }
  for (const [n, st] of Object.entries(s.straps)) yield st.hold === 'screw' ? `lift strap: ${n}` : `cut: ${n}`
  for (const n of Object.keys(s.parts)) { yield `lift part: ${n}` }
  const terms = Object.entries(s.strips).flatMap(([k, n]) => Array.from({ length: n }, (_, i) => `${k}${i + 1}`))
  for (const [c, cord] of Object.entries(s.cords)) for (const [k, core] of Object.entries(cord.cores)) {
    yield `park core: ${c}.${k}`
    const at = terms.indexOf(core.lands)
    for (const d of [-2, -1, 1, 2]) if (terms[at + d]) yield `land core: ${c}.${k}, onto: ${terms[at + d]}`
  }
  for (let i = 0; i + 2 < terms.length; i += 1) yield `fit strap: ${terms[i]}-${terms[i + 2]}`
}
test('random', () => {
  const out: string[] = []
  for (const set of (process.env.SETS ?? 'fescue melick').split(' ')) for (const m of moves(set)) {
    const t = performance.now()
    try {
      const a = checkMoved(set, m)
      const ms = performance.now() - t
      out.push(`${set} {${m}} ${ms.toFixed(0)}: fails ${a.verdicts.filter((v) => v.state === 'fails').map((v) => v.check.replace('wiring.', '') + ' ' + v.subject.replace(/^[^/]*\//, '')).join('; ') || '-'}`)
      for (const f of a.faults) out.push(`      * ${f.fault} [${f.subject}] mend: ${f.mend.replace('with the set unplugged, ', '')}`)
    } catch (e) { out.push(`${set} {${m}}: THROWN ${(e as Error).message.split('\n')[0]} `) }
  }
  writeFileSync('/tmp/faults-random.txt', out.join('\n'))
}, 600000)
