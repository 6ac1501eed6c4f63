import { check } from 'ringproof'
import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { DEMO } from '../support/bench.ts'
test('lines', () => {
  const out: string[] = []
  const RIGHT = 'fescue fescue-late sedge melick foxtail darnel marram brome fescue-converted fescue-late-converted sedge-converted sedge-cores-joined-harmless fescue-mirrored-plug-crossed-back melick-to-three-wires marram-with-bell-resistor marram-converted marram-converted-without-resistor brome-earth-parked darnel-put-right sedge-series-bell-taken-out'.split(' ')
  const PREM = DEMO.names('premises').filter((n) => n !== 'workshop')
  for (const target of [...RIGHT, ...PREM]) for (const on of ['depot-exchange', 'valley-exchange', 'signal-box', 'adapter-port', ...(RIGHT.includes(target) ? ['none', 'gatehouse'] : [])]) {
    try {
      const a = check({ target, on }, DEMO)
      if (a.faults.length) out.push(`${target} on ${on}: ${a.faults.map((f) => `${f.fault} [${f.subject}] ${f.consequences.filter(c=>c.figure.id==='ringing.current').map(c=>`${((c.figure.value??0)*1e3).toFixed(2)}->${((c.mended?.value??0)*1e3).toFixed(2)}`).slice(0,5).join(' ')} ${f.fault==='too-many-bells'? f.mend:''}`).join('; ')}`)
    } catch (e) { out.push(`${target} on ${on}: THROWN ${(e as Error).message.split('\n')[0]}`) }
  }
  writeFileSync('/tmp/faults-lines.txt', out.join('\n'))
}, 600000)
