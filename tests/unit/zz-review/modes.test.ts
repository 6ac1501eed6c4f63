import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { DEMO, besides } from '../../support/bench.ts'
import { stand } from 'ringproof/answer/standing'
import { solve } from 'ringproof/solver/solve'
import { readCondition } from 'ringproof/netlist/condition'
import { ProblemError } from 'ringproof/problem'
const L = (name: string, feed: string, ringing: string, cable = '') => `ringproof: 1\nsheet: line\nname: ${name}\nfeed: ${feed}\n${ringing}\n${cable}\nspeech: {impedance: [600 Ω]}\n`
const LINES = [
  L('limited', '{voltage: 48 V, current limit: 20 mA}', 'ringing: {voltage: 40 V, frequency: 25 Hz, wave: {trapezoid: 1.25}, source: 200 Ω, sent to: b wire}'),
  L('limited-r', '{voltage: 21 V, resistance: 300 Ω, current limit: 18 mA, negative: a wire}', 'ringing: {voltage: 45 V, frequency: 20 Hz, wave: sine, source: 1 kΩ, sent to: a wire, over battery: 21 V}', 'cable: {type: twin, gauge: 0.4 mm, length: 6 km}'),
  L('bare', '{voltage: 24 V, resistance: 0 Ω, earth: none}', 'ringing: {voltage: 75 V, frequency: 50 Hz, wave: sine, source: 0 Ω, sent to: b wire}', 'cable: {type: twin, gauge: 0.5 mm, length: 0 m}'),
]
const HOUSE = (line: string) => `ringproof: 1
sheet: premises
name: house
line: ${line}
sockets:
  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ, gas tube: 250 V}
  hall:  {is: secondary, fed from: front, over: {type: house-three, gauge: 0.5 mm, length: 12 m}}
  porch: {is: secondary, fed from: hall, over: {type: house-pair, gauge: 0.5 mm, length: 8 m}, ringing lead: no}
sets:
  office:  {set: fescue, in: front, condition: off-hook}
  kitchen: {set: sedge-as-found, in: hall, rewire: sedge-converted, reversed: yes}
  tone: {set: toney, in: hall}
`
const TONEY = `ringproof: 1
sheet: set
name: toney
title: tone set
strips: {A: 6}
contacts:
  hook: {from: A3, to: A4, closed when: off-hook}
parts:
  br: {kind: bridge, first: A1, second: A2, plus: A3, minus: A5, drop: 0.7 V at 10 mA}
  tr: {kind: resistor, from: A4, to: A5, resistance: 150 Ω}
  led: {kind: diode, from: A4, to: A6, drop: 1.8 V at 10 mA}
  ledr: {kind: resistor, from: A6, to: A5, resistance: 1 kΩ}
  ringer: {kind: tone-ringer, from: A1, to: A2, threshold: 20 V, load: 5 kΩ, resistance: 1 kΩ, capacitance: 1 µF, rings from: 2 mA at 25 Hz}
  vr: {kind: varistor, from: A1, to: A2, voltage at 1 A: 200 V, exponent: 20}
cords:
  line: {ends in: plug, cores: {a: {lands: A1}, b: {lands: A2}}}
plug: {numbered by: wiring, contacts: {5: a, 2: b}}
`
const shelf = besides(...LINES, TONEY, ...['depot-exchange', 'limited', 'limited-r', 'bare'].map((l) => HOUSE(l).replace('name: house', `name: house-${l}`)))
const words = ['on-hook', 'on-hook/ringing', 'on-hook/speech', 'off-hook', 'off-hook/speech', 'off-hook/make', 'off-hook/break', 'off-hook/key', 'off-hook/ringing', 'on-hook/make', 'on-hook/break']
test('modes', () => {
  const out: string[] = []
  const seen = new Map<string, number>()
  let n = 0
  const t0 = Date.now()
  const targets: [string, string | undefined][] = []
  for (const s of ['fescue', 'sedge', 'fescue-as-found', 'sedge-as-found', 'toney', 'sedge-converted', 'fescue-reversed-at-cord', 'fescue-unit-left-out', 'fescue-without-ringing-lead', 'sedge-converted-as-fescue', 'sedge-cores-joined-harmless', 'sedge-with-strap']) for (const on of [undefined, 'line/limited', 'line/limited-r', 'line/bare']) targets.push([s, on])
  for (const l of ['depot-exchange', 'limited', 'limited-r', 'bare']) targets.push([`house-${l}`, undefined])
  const only = process.env.ONLY
  for (const [target, on] of targets) {
    if (only && !target.includes(only)) continue
    const where = { target, ...(on === undefined ? {} : { on }) }
    let s
    try { s = stand(where, shelf) } catch (e) { out.push(`STAND ${target} ${on}: ${e instanceof ProblemError ? JSON.stringify(e.problems[0]) : (e as Error).stack}`.slice(0, 400)); continue }
    const { net, places } = s
    const changes: [string, any][] = [['none', {}]]
    net.parts.forEach((part, index) => {
      for (const m of part.law.modes?.(part.spec) ?? []) {
        const c = m.change, bs = m.branch === undefined ? Array.from({ length: part.count }, (_, k) => part.first + k) : [part.first + m.branch]
        const q: any = 'open' in c ? { lifted: bs } : 'across' in c ? { bridges: bs.map((k) => ({ from: net.branches[k]!.from, to: net.branches[k]!.to, ohms: c.across })) } : 'within' in c ? { within: bs.map((branch) => ({ branch, ohms: c.within })) } : { instead: [{ part: index, spec: c.instead }] }
        changes.push([`${part.id} ${m.mode}`, q])
      }
    })
    const heavy = target.startsWith('house')
    for (const w of heavy ? ['on-hook', 'on-hook/ringing', 'off-hook', 'off-hook/make', 'off-hook/ringing', 'off-hook/speech'] : words) {
      const c = readCondition(w)!
      const condition = { line: c.line, sets: { ...net.rest, ...Object.fromEntries(places.map((p) => [p, { hook: c.hook, dial: c.dial, key: c.key }])) } }
      for (const [name, q] of changes) for (const a of [{ analysis: 'direct' }, { analysis: 'direct', sources: 'none' }, { analysis: 'alternating', frequency: net.line?.ringingFrequency ?? 25 }, { analysis: 'alternating', frequency: 1000 }] as any[]) {
        n++
        try {
          const sol = solve(net, { ...a, condition, ...q })
          let badn = false
          for (const v of sol.voltages) if (!Number.isFinite(v)) badn = true
          for (const v of sol.currents) if (!Number.isFinite(v)) badn = true
          if (badn) throw new Error('NOT FINITE')
          if (!(sol.residual < 1e4)) throw new Error('RESIDUAL ' + sol.residual.toPrecision(1))
        } catch (e) {
          const why = e instanceof ProblemError ? e.problems.map((p) => p.code + ': ' + p.found).join() : '!!! ' + (e as Error).message + (e as Error).stack?.split('\n')[1]
          const key = why.slice(0, 160)
          const k = (seen.get(key) ?? 0) + 1
          seen.set(key, k)
          if (k <= 3) out.push(`${target} on ${on} ${w} ${a.analysis}${a.frequency ?? ''}${a.sources ?? ''} [${name}]: ${why}`.slice(0, 330))
        }
      }
    }
  }
  out.unshift(`${n} questions ${Date.now() - t0} ms`, ...[...seen].map(([k, v]) => `${v} × ${k}`), '')
  writeFileSync('/tmp/review/modes.txt', out.join('\n') + '\n')
}, 900000)
