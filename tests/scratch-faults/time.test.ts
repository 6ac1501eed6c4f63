import { contextsOf } from 'ringproof/answer/check-answer'
import { stand } from 'ringproof/answer/standing'
import { CHECKS } from 'ringproof/checks/catalogue'
import { FAULT_RULES } from 'ringproof/faults/catalogue'
import { findFaults } from 'ringproof/faults/find-faults'
import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { DEMO } from '../support/bench.ts'
const names = (process.env.ONLY ?? 'fescue fescue-strap-missing fescue-as-found sedge-converted-as-fescue fescue-without-ringing-lead fescue-reversed-at-cord fescue-spare-joined fescue-mirrored-plug melick-new-cord fescue-late-ringing-on-loop station-house museum-hall').split(' ')
test('time', () => {
  const out: string[] = []
  for (const target of names) for (let round = 0; round < 4; round += 1) {
    let trials = 0
    const contexts = contextsOf(stand({ target }, DEMO)).map((c) => ({ ...c, trial: (i: never, p: never) => { trials += 1; return c.trial(i, p) } }))
    const t0 = performance.now()
    const judged = contexts.map((c, k) => CHECKS.flatMap((r) => (r.once && k > 0 ? [] : r.run(c))))
    const t1 = performance.now()
    const per: [string, number][] = []; const told = new Set<string>()
    let t2 = t1
    if (round % 2) { findFaults(contexts, judged); t2 = performance.now() }
    else for (const rule of FAULT_RULES) {
      const a = performance.now()
      if (rule.once) rule.find(contexts[0]!, judged.flat(), told)
      else contexts.forEach((c, k) => rule.find(c, judged[k]!, told).forEach((f) => f.path.forEach((x) => told.add(x))))
      per.push([rule.id, performance.now() - a])
    }
    if (round >= 2) out.push(`${target}: checks ${(t1 - t0).toFixed(1)} faults ${(t2 - t1).toFixed(2)} trials ${trials} : ${per.filter(([, t]) => t > 0.5).map(([i, t]) => `${i} ${t.toFixed(1)}`).join(', ')}`)
  }
  writeFileSync('/tmp/faults-time.txt', out.join('\n'))
})
