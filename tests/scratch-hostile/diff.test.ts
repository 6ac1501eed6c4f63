import { stand } from 'ringproof/answer/standing'
import type { Netlist } from 'ringproof/netlist/netlist'
import { answererOf } from 'ringproof/solver/answerer'
import type { Question } from 'ringproof/solver/question'
import { currentIn, type Solution, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { writeFileSync, appendFileSync } from 'node:fs'
import { test } from 'vitest'
import { besides } from '../support/bench.ts'

const OUT = '/tmp/hostile/diff.log'
let s = Number(process.env.HSEED ?? 12345)
const rnd = () => { s = (s * 1664525 + 1013904223) >>> 0; return s / 4294967296 }
const int = (n: number) => Math.floor(rnd() * n)
const pick = <T>(xs: readonly T[]): T => xs[int(xs.length)]!
const EXTRA = [
`ringproof: 1
sheet: set
name: earthy
title: bell to earth
strips: {A: 4}
parts:
  bell: {kind: bell, from: A3, to: earth, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}
contacts:
  hook: {from: A1, to: A2, closed when: off-hook}
cords:
  line:
    ends in: plug
    cores: {a: {lands: A1}, b: {lands: A4}, ringing: {lands: A3}, spare: {lands: A2}}
  handset:
    ends in: handset
    cores: {t1: {lands: A2}, t2: {lands: A4}}
plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing, 4: spare}}
handset:
  transmitter: {kind: transmitter, from: t1, to: t2, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
`,
`ringproof: 1
sheet: set
name: battery
title: local battery
strips: {A: 6}
parts:
  cell: {kind: voltage-source, from: A5, to: A4, direct: 3 V, alternating: 1 V at 30°}
  d: {kind: diode, from: A1, to: A6, drop: 0.7 V at 20 mA}
  r: {kind: resistor, from: A6, to: A2, resistance: 470 Ω}
  c: {kind: capacitor, from: A3, to: A4, capacitance: 1 µF}
contacts:
  hook: {from: A1, to: A2, closed when: off-hook}
cords:
  line:
    ends in: plug
    cores: {a: {lands: A1}, b: {lands: A4}, ringing: {lands: A3}}
  handset:
    ends in: handset
    cores: {t1: {lands: A2}, t2: {lands: A5}}
plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}
handset:
  transmitter: {kind: transmitter, from: t1, to: t2, resistance: 150 Ω at 40 mA, falls with exponent: 0.5}
`,
`ringproof: 1
sheet: set
name: commoned
title: ringing and spare and b joined by zero-ohm straps
strips: {A: 6}
straps:
  A3-A4: {hold: screw, resistance: 0 Ω}
  A4-A5: {hold: screw, resistance: 0 Ω}
  A3-A5: {hold: screw, resistance: 0 Ω}
parts:
  r: {kind: resistor, from: A1, to: A3, resistance: 100 kΩ}
cords:
  line:
    ends in: plug
    cores: {a: {lands: A1}, b: {lands: A5}, ringing: {lands: A3, resistance: 0 Ω}, spare: {lands: A4, resistance: 0 Ω}, other: {lands: A5, resistance: 0 Ω}}
plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing, 4: spare, 1: other}}
`,
`ringproof: 1
sheet: set
name: islanded
title: capacitors only, varistor dangling on one contact
strips: {A: 6}
parts:
  c1: {kind: capacitor, from: A1, to: A5, capacitance: 1 µF}
  c2: {kind: capacitor, from: A3, to: A5, capacitance: 2 µF}
  v: {kind: varistor, from: A1, to: A6, voltage at 1 A: 60 V, exponent: 5}
  v2: {kind: varistor, from: A6, to: A2, voltage at 1 A: 60 V, exponent: 5}
  c3: {kind: capacitor, from: A2, to: A5, capacitance: 0.5 µF}
cords:
  line:
    ends in: plug
    cores: {a: {lands: A1}, b: {lands: A5}, ringing: {lands: A3}}
plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}
`,
`ringproof: 1
sheet: set
name: coupled
title: transformer between plug contacts
strips: {A: 6}
parts:
  coil:
    kind: induction-coil
    windings:
      a: {from: A1, to: A5, resistance: 5000 Ω, inductance: 0.40 H}
      c: {from: A3, to: A2, resistance: 30 Ω, inductance: 0.107 H}
    coupling: 0.985
  bell: {kind: bell, from: A2, to: A5, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}
cords:
  line:
    ends in: plug
    cores: {a: {lands: A1}, b: {lands: A5}, ringing: {lands: A3}}
plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}
`,
]
const SETS = ['fescue','fescue-late','sedge','melick','foxtail','darnel','marram','brome','fescue-mirrored-plug','sedge-as-found','marram-as-found','darnel-in-series','earthy','battery','commoned','islanded','coupled']
const LINES = ['depot-exchange','valley-exchange','signal-box','adapter-port']
const COND = ['on-hook','off-hook','off-hook/break','off-hook/make','off-hook/key','on-hook/key']

function premises(): string {
  const n = 3 + int(4)
  const socks: string[] = [`  s0: {is: ${pick(['master','master','outlet'])}`]
  if (socks[0]!.includes('master')) socks[0] += `, capacitance: 1.8 µF, resistance: 470 kΩ${pick([', gas tube: 250 V',''])}`
  socks[0] += `${pick([', earth: yes',''])}${pick([', mirrored: yes','',''])}}`
  for (let k = 1; k < n; k++) {
    const from = `fed from: s${int(k)}`
    const over = pick(['', ', over: {type: house-three, gauge: 0.5 mm, length: 10 m}', ', over: {type: house-pair, gauge: 0.5 mm, length: 10 m}'])
    const e = pick([', earth: yes','',''])
    const kind = pick([
      `is: secondary, ${from}${over}`, `is: secondary, ${from}${over}`,
      `is: master, capacitance: 1.8 µF, resistance: 470 kΩ, ${from}${over}`,
      `is: outlet, ${from}${over}`,
      `is: adapter, ${from}${over}`,
      `is: adapter, capacitance: 1 µF, resistance: 470 kΩ, ${from}${over}`,
      `is: converter, ${from}${over}, series resistance: 55 Ω, load: 10 kΩ${pick(['',', passes ringing: no'])}`,
      `is: filter, ${from}${over}, inductance: 10 mH, resistance: 10 Ω, capacitance: 10 nF`,
    ])
    socks.push(`  s${k}: {${kind}${e}${pick([', mirrored: yes','','',''])}}`)
  }
  const m = 2 + int(4)
  const sets: string[] = []
  for (let k = 0; k < m; k++) {
    const c = pick(['','','',`, condition: ${pick(COND)}`])
    sets.push(`  p${k}: {set: ${pick(SETS)}, in: s${int(n)}${pick(['',', reversed: yes'])}${c}}`)
  }
  return `ringproof: 1\nsheet: premises\nname: trial\ntitle: t\nline: ${pick(LINES)}\nreversed: ${pick(['yes','no'])}\nsockets:\n${socks.join('\n')}\nsets:\n${sets.join('\n')}\n`
}

function question(net: Netlist): Question {
  const N = net.nodes.length, B = net.branches.length
  const node = () => int(N), branch = () => int(B)
  const alt = rnd() < 0.6
  const sets: Record<string, any> = {}
  for (const p of net.places) if (rnd() < 0.5) sets[p.place] = { hook: pick(['on-hook','off-hook']), dial: pick(['rest','rest','make','break']), key: pick(['up','up','down']) }
  const q: any = { analysis: alt ? 'alternating' : 'direct', condition: { line: pick(['idle','ringing','speech']), sets } }
  if (alt) q.frequency = pick([25, 1000, 300, 16.7])
  if (rnd() < 0.4) q.sources = 'none'
  const kind = rnd()
  if (kind < 0.25) q.small = true
  else if (kind < 0.5) q.small = 'fed'
  if (rnd() < 0.4) { q.probes = [{ into: node(), outOf: node(), re: 1e-3 }]; if (alt) q.probes[0].im = 1e-3 }
  if (rnd() < 0.3) q.series = [{ branch: branch(), re: 1 }]
  if (rnd() < 0.4) {
    const which = net.places.filter(() => rnd() < 0.4).map((p) => p.place)
    q.lifted = net.branches.filter((b) => b.part.sort === 'plug' && which.includes(b.part.place)).map((b) => b.index)
    if (rnd() < 0.3) q.lifted.push(branch())
  }
  if (rnd() < 0.25) q.added = [{ from: node(), to: node() }]
  if (rnd() < 0.25) q.bridges = [{ from: node(), to: node(), ohms: pick([0, 100, 1e5]) }]
  if (rnd() < 0.25) q.within = [{ branch: branch(), ohms: 330 }]
  if (rnd() < 0.25) {
    const cands = net.parts.map((p, k) => [p, k] as const).filter(([p]) => ['resistor','bell','transmitter','varistor','capacitor'].includes(p.spec.kind as string))
    if (cands.length) { const [p, k] = pick(cands); const spec: any = { ...p.spec }
      if (spec.resistance?.at) spec.resistance = { ...spec.resistance, value: { ...spec.resistance.value, value: spec.resistance.value.value * 2 } }
      else if (typeof spec.resistance?.value === 'number') spec.resistance = { ...spec.resistance, value: spec.resistance.value * 2 }
      else if (spec.capacitance) spec.capacitance = { ...spec.capacitance, value: spec.capacitance.value * 2 }
      q.instead = [{ part: k, spec }] }
  }
  return q
}
const attempt = (f: () => Solution): Solution | string => { try { return f() } catch (e: any) { return e.problems ? 'P:' + e.problems.map((p: any) => p.code + ' ' + p.found).join() : 'E:' + (e.stack ?? e) } }
const largest = (v: Float64Array) => v.reduce((m, x) => Math.max(m, Math.abs(x)), 0)

test('diff', () => {
  const until = Date.now() + Number(process.env.HTIME ?? 60) * 1000
  let asked = 0, bad = 0, nets = 0, both = 0
  const kinds = new Map<string, number>()
  while (Date.now() < until) {
    const text = premises()
    let net: Netlist
    const shelf = besides(text, ...EXTRA)
    try { net = stand({ target: 'trial' }, shelf).net } catch (e: any) { const w = 'stand ' + (e.problems ? e.problems.map((p: any) => p.code + p.found).join() : e.stack); kinds.set(w, (kinds.get(w) ?? 0) + 1); continue }
    nets++
    const answer = answererOf(net)
    for (let j = 0; j < 25; j++) {
      const q = question(net)
      const reads = rnd() < 0.5 ? { nodes: [int(net.nodes.length), int(net.nodes.length)], branches: [] as number[] } : { nodes: [] as number[], branches: [int(net.branches.length)] }
      const one = attempt(() => answer(q, reads)), two = attempt(() => solve(net, q))
      asked++
      let why = ''
      if (typeof one === 'string' || typeof two === 'string') {
        if (typeof one === 'string' && typeof two === 'string') { both++; if (one.startsWith('E:') || two.startsWith('E:')) why = 'CRASH both ' + one.slice(0, 300) }
        else why = `problem: answerer ${typeof one === 'string' ? one : 'ok'} / solve ${typeof two === 'string' ? two : 'ok'}`
      } else if (one.probeOpen !== two.probeOpen) why = `probeOpen ${one.probeOpen} ${two.probeOpen}`
      else if (!one.probeOpen) {
        const get = (x: Solution) => reads.branches.length ? currentIn(x, reads.branches[0]!) : voltageBetween(x, reads.nodes[0]!, reads.nodes[1]!)
        let p: any, r: any
        try { p = get(one) } catch (e) { p = 'throw ' + e } ; r = get(two)
        if (typeof p === 'string') why = p
        else if ((p === undefined) !== (r === undefined)) why = `undetermined: answerer ${JSON.stringify(p)} solve ${JSON.stringify(r)}`
        else if (p && r) {
          const d = Math.hypot(p.re - r.re, p.im - r.im)
          const big = largest(reads.branches.length ? two.currents : two.voltages)
          if (!(d <= 1e-7 * big + 1e-13)) why = `value ${JSON.stringify(p)} vs ${JSON.stringify(r)} (largest ${big})`
        }
        if (!why) {
          const a = [...one.standIns].filter(([,b]) => b.length).map(([k]) => k).sort().join('|'), b = [...two.standIns].filter(([,b]) => b.length).map(([k]) => k).sort().join('|')
          if (false && a !== b) why = `standIns ${a} / ${b}`
        }
      }
      if (why) { bad++; const k = why.slice(0, 40); kinds.set(k, (kinds.get(k) ?? 0) + 1); if (bad < 40) appendFileSync(OUT, `=== ${why}\nreads ${JSON.stringify({ nodes: reads.nodes.map((k) => net.nodes[k]), branches: reads.branches.map((k) => net.branches[k]!.id) })}\nq ${JSON.stringify(q)}\nnames: lifted ${(q.lifted ?? []).map((k) => net.branches[k]!.id)} added ${(q.added ?? []).map((a) => net.nodes[a.from] + '-' + net.nodes[a.to])} bridges ${(q.bridges ?? []).map((a) => net.nodes[a.from] + '-' + net.nodes[a.to])} instead ${(q.instead ?? []).map((a) => net.parts[a.part]!.id)} probes ${(q.probes ?? []).map((a) => net.nodes[a.into] + '-' + net.nodes[a.outOf])} series ${(q.series ?? []).map((a) => net.branches[a.branch]!.id)}\n${text}\n`) }
    }
  }
  appendFileSync(OUT, `nets ${nets} asked ${asked} both-problem ${both} bad ${bad}\n${[...kinds].map(([k, n]) => `${n} × ${k}`).join('\n')}\n`)
}, 300_000)
