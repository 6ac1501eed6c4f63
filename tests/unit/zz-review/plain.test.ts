import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { compiled } from '../../support/compiled.ts'
import { solve } from 'ringproof/solver/solve'
import { currentIn, voltageBetween } from 'ringproof/solver/solution'
import { ProblemError } from 'ringproof/problem'
const COND = { line: 'idle', sets: {} } as const
const out: string[] = []
function go(name: string, parts: string[], show: string[], more: any = {}) {
  try {
    const net = compiled(...parts)
    const q = { analysis: 'direct', condition: COND, ...more }
    if (more.byName) Object.assign(q, more.byName(net))
    delete q.byName
    const s = solve(net, q)
    const line = show.map((id0) => { const id = id0.startsWith('trial/') ? id0 : 'trial/' + id0

      if (net.branchIndex.has(id) && !(net.nodeIndex.has(id))) { const c = currentIn(s, net.branchIndex.get(id)!); return `I(${id})=${c.re}${c.im ? '+j' + c.im : ''}` }
      const n = net.nodeIndex.get(id)
      if (n === undefined) return `?${id} among ${[...net.branchIndex.keys()]} ${[...net.nodeIndex.keys()]}`
      const v = voltageBetween(s, n, 0)
      return `V(${id})=${v === undefined ? 'undetermined' : v.re + (v.im ? '+j' + v.im : '')}`
    }).join('  ')
    out.push(`${name}: ${line} residual ${s.residual.toPrecision(3)} standIns ${[...s.standIns.keys()].join('|')}`)
  } catch (e) {
    if (e instanceof ProblemError) out.push(`${name}: THROWS ${e.problems.map((p) => p.code + ': ' + p.found).join(' / ')}`)
    else out.push(`${name}: !!! ${(e as Error).stack?.split('\n').slice(0, 4).join(' | ')}`)
  }
}
const src = (v: string, ac = '') => `e: {kind: voltage-source, from: p, to: earth, direct: ${v}${ac}}`
const res = (n: string, a: string, b: string, r: string) => `${n}: {kind: resistor, from: ${a}, to: ${b}, resistance: ${r}}`
test('plain', () => {
  const T='/'
  const led = (n: string, a: string, b: string, drop = '2 V at 10 mA') => `${n}: {kind: diode, from: ${a}, to: ${b}, drop: ${drop}}`
  go('one led', [src('5 V'), res('r', 'p', 'a', '300 Ω'), led('d1', 'a', 'earth')], ['trial/r', 'trial/a','a','r'])
  go('two leds', [src('5 V'), res('r', 'p', 'a', '100 Ω'), led('d1', 'a', 'b'), led('d2', 'b', 'earth')], ['trial/r', 'trial/a', 'trial/b'])
  go('three leds', [src('12 V'), res('r', 'p', 'a', '100 Ω'), led('d1', 'a', 'b'), led('d2', 'b', 'c'), led('d3', 'c', 'earth')], ['trial/r', 'trial/a', 'trial/b'])
  go('led+diode', [src('5 V'), res('r', 'p', 'a', '100 Ω'), led('d1', 'a', 'b'), led('d2', 'b', 'earth', '0.7 V at 10 mA')], ['trial/r', 'trial/a', 'trial/b'])
  go('two small Is', [src('5 V'), res('r', 'p', 'a', '100 Ω'), `d1: {kind: diode, from: a, to: b, saturation current: 1e-17 A, emission: 1}`, `d2: {kind: diode, from: b, to: earth, saturation current: 1e-17 A, emission: 1}`], ['trial/r', 'trial/a', 'trial/b'])
  go('led bridge + led', [src('24 V'), res('r', 'p', 'a', '1 kΩ'), `br: {kind: bridge, first: a, second: earth, plus: u, minus: v, drop: 0.7 V at 10 mA, emission: 1}`, led('d2', 'u', 'v')], ['trial/r', 'trial/a', 'trial/u', 'trial/v'])
  go('led backwards pair', [src('-5 V'), res('r', 'p', 'a', '100 Ω'), led('d1', 'a', 'b'), led('d2', 'b', 'earth')], ['trial/r', 'trial/a', 'trial/b'])
  go('led antiparallel', [src('5 V'), res('r', 'p', 'a', '100 Ω'), led('d1', 'a', 'b'), led('d2', 'b', 'a'), res('r2', 'b', 'earth', '100 Ω')], ['trial/r'])
  go('reverse chain unlike', [src('50 V'), res('r', 'p', 'a', '1 kΩ'), `d1: {kind: diode, from: b, to: a, saturation current: 1e-14 A}`, `d2: {kind: diode, from: earth, to: b, saturation current: 1e-9 A}`], ['trial/r', 'trial/b'])
  go('reverse chain alike', [src('50 V'), res('r', 'p', 'a', '1 kΩ'), `d1: {kind: diode, from: b, to: a, saturation current: 1e-9 A}`, `d2: {kind: diode, from: earth, to: b, saturation current: 1e-9 A}`], ['trial/r', 'trial/b', 'd1', 'd2'])
  go('reverse chain temp', [src('50 V'), res('r', 'p', 'a', '1 kΩ'), `d1: {kind: diode, from: b, to: a, saturation current: 1e-9 A, temperature: 60 °C}`, `d2: {kind: diode, from: earth, to: b, saturation current: 1e-9 A}`], ['trial/r', 'trial/b', 'd1', 'd2'])
  go('reverse chain near alike', [src('50 V'), res('r', 'p', 'a', '1 kΩ'), `d1: {kind: diode, from: b, to: a, saturation current: 1.0001e-9 A}`, `d2: {kind: diode, from: earth, to: b, saturation current: 1e-9 A}`], ['trial/r', 'trial/b', 'd1', 'd2'])
  go('contradiction masked', [src('5 V'), `e2: {kind: voltage-source, from: p, to: earth, direct: 6 V}`, led('d1', 'p', 'b'), res('r', 'b', 'earth', '1 kΩ')], ['r'])
  go('current source open + diode', [`j: {kind: current-source, from: earth, to: p, direct: 1 A}`, `c: {kind: capacitor, from: p, to: earth, capacitance: 1 µF}`, src('5 V').replace('p', 'w'), led('d1', 'w', 'b'), res('r', 'b', 'earth', '1 kΩ')], ['r'])
  go('current source backward in diode', [`j: {kind: current-source, from: earth, to: p, direct: -1 mA}`, `d: {kind: diode, from: p, to: earth, saturation current: 1e-9 A}`], ['d', 'p'])
  go('gas+varistor 600V', [src('600 V'), res('r', 'p', 'a', '1 kΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V}`, `v: {kind: varistor, from: a, to: earth, voltage at 1 A: 200 V, exponent: 25}`], ['a', 'g', 'v'])
  go('gas+varistor 5 kV', [src('5 kV'), res('r', 'p', 'a', '1 kΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V}`, `v: {kind: varistor, from: a, to: earth, voltage at 1 A: 150 V, exponent: 50}`], ['a', 'g', 'v'])
  go('gas+4 diodes 300V', [src('300 V'), res('r', 'p', 'a', '100 Ω'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V}`, led('d1', 'a', 'b', '0.7 V at 10 mA'), led('d2', 'b', 'c', '0.7 V at 10 mA'), led('d3', 'c', 'd', '0.7 V at 10 mA'), led('d4', 'd', 'f', '0.7 V at 10 mA'), res('r2', 'f', 'earth', '100 Ω')], ['a', 'g', 'r2'])
  go('gas tiny', [src('300 V'), res('r', 'p', 'a', '999 GΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V}`], ['a', 'g'])
  go('gas + 10 GΩ', [src('300 V'), res('r', 'p', 'a', '10 GΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V}`], ['a', 'g'])
  go('gas in series of two', [src('300 V'), res('r', 'p', 'a', '1 kΩ'), `g: {kind: gas-tube, from: a, to: b, holds off: 230 V}`, `g2: {kind: gas-tube, from: b, to: earth, holds off: 230 V}`], ['a', 'g', 'b'])
  go('gas in series of two 600', [src('600 V'), res('r', 'p', 'a', '1 kΩ'), `g: {kind: gas-tube, from: a, to: b, holds off: 230 V}`, `g2: {kind: gas-tube, from: b, to: earth, holds off: 230 V}`], ['a', 'g', 'b'])
  go('gas hold = source', [src('230 V'), res('r', 'p', 'a', '1 kΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V}`], ['a', 'g'])
  go('gas divided below arc', [src('300 V'), res('r', 'p', 'a', '100 kΩ'), res('r2', 'a', 'earth', '2 kΩ'), `g: {kind: gas-tube, from: p, to: b, holds off: 230 V}`, res('r3', 'b', 'earth', '1 MΩ')], ['a', 'g', 'b'])
  go('gas whose arc would go out', [src('300 V'), res('r', 'p', 'a', '10 kΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 230 V, arc: 200 V}`, res('r2', 'a', 'earth', '40 kΩ')], ['a', 'g'])
  go('gas oscillator', [src('300 V'), res('r', 'p', 'a', '10 kΩ'), `g: {kind: gas-tube, from: a, to: b, holds off: 230 V}`, `v: {kind: varistor, from: b, to: earth, voltage at 1 A: 400 V, exponent: 40}`], ['a', 'g'])
  go('varistor alone 50V', [src('50 V'), res('r', 'p', 'a', '400 Ω'), `v: {kind: varistor, from: a, to: earth, voltage at 1 A: 60 V, exponent: 4}`], ['a', 'v'])
  go('varistor straight on 50V', [src('50 V'), `v: {kind: varistor, from: p, to: earth, voltage at 1 A: 1 V, exponent: 60}`], ['v'])
  go('two varistors in series', [src('50 V'), `v: {kind: varistor, from: p, to: b, voltage at 1 A: 60 V, exponent: 60}`, `w: {kind: varistor, from: b, to: earth, voltage at 1 A: 60 V, exponent: 3}`], ['v', 'b'])
  go('varistor with diode', [src('50 V'), `v: {kind: varistor, from: p, to: b, voltage at 1 A: 600 V, exponent: 60}`, led('d', 'b', 'earth', '0.7 V at 10 mA')], ['v', 'b'])
  go('varistor to floating diode reversed', [src('50 V'), `v: {kind: varistor, from: p, to: b, voltage at 1 A: 600 V, exponent: 60}`, led('d', 'earth', 'b', '0.7 V at 10 mA')], ['v', 'b'])
  go('floating battery', [`e: {kind: voltage-source, from: a, to: b, direct: 50 V}`, led('d', 'b', 'a', '0.7 V at 10 mA')], ['e', 'a'])
  go('floating battery tiny', [`e: {kind: voltage-source, from: a, to: b, direct: 50 V}`, `v: {kind: varistor, from: a, to: b, voltage at 1 A: 600 V, exponent: 30}`], ['e', 'a'])
  go('floating battery alone', [`e: {kind: voltage-source, from: a, to: b, direct: 50 V}`, res('r','a','c','1 kΩ')], ['e', 'a'])
  go('transmitter without feed', [`t: {kind: transmitter, from: a, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.8}`, res('r', 'a', 'earth', '1 kΩ')], ['t', 'a'])
  go('transmitter 5mA', [`j: {kind: current-source, from: earth, to: a, direct: 5 mA}`, `t: {kind: transmitter, from: a, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.8}`], ['t', 'a'])
  go('transmitter 5.0001mA divided', [`j: {kind: current-source, from: earth, to: a, direct: 10 mA}`, `t: {kind: transmitter, from: a, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.8}`, `t2: {kind: transmitter, from: a, to: earth, resistance: 150 Ω at 40 mA, falls with exponent: 0.8}`], ['t', 't2', 'a'])
  go('transmitter zero', [src('5 V'), res('r', 'p', 'a', '1 kΩ'), `t: {kind: transmitter, from: a, to: earth, resistance: 0 Ω at 40 mA, falls with exponent: 0.8}`], ['t', 'a'])
  go('current-resistor zero', [src('5 V'), res('r', 'p', 'a', '1 kΩ'), `t: {kind: current-resistor, from: a, to: earth, resistance: 0 Ω at 40 mA, rises with exponent: 0.8}`], ['t', 'a'])
  go('current-resistor straight on source', [src('50 V'), `t: {kind: current-resistor, from: p, to: earth, resistance: 20 Ω at 20 mA, rises with exponent: 4}`], ['t'])
  go('gas AC 200 V rms', [`e: {kind: voltage-source, from: p, to: earth, alternating: 300 V at 0°}`, res('r', 'p', 'a', '1 kΩ'), `g: {kind: gas-tube, from: a, to: earth, holds off: 60 V}`], ['a', 'g'], { analysis: 'alternating', frequency: 25 })
  go('varistor AC 75 V rms', [`e: {kind: voltage-source, from: p, to: earth, alternating: 75 V at 0°}`, res('r', 'p', 'a', '1 kΩ'), `g: {kind: varistor, from: a, to: earth, voltage at 1 A: 10 V, exponent: 4}`], ['a', 'g'], { analysis: 'alternating', frequency: 25 })
  go('diode biased AC 75 V rms', [`e: {kind: voltage-source, from: p, to: earth, alternating: 75 V at 0°, direct: 50 V}`, res('r', 'p', 'a', '1 kΩ'), led('d', 'a', 'earth', '0.7 V at 10 mA')], ['a', 'd'], { analysis: 'alternating', frequency: 25 })
  go('series LC resonance lossless', [`e: {kind: voltage-source, from: p, to: earth, alternating: 1 V at 0°}`, `l: {kind: inductor, from: p, to: a, inductance: 1 H}`, `c: {kind: capacitor, from: a, to: earth, capacitance: 1 µF}`], ['a', 'l'], { analysis: 'alternating', frequency: 1000 / (2 * Math.PI) })
  go('parallel LC resonance lossless', [`e: {kind: current-source, from: earth, to: a, alternating: 1 A at 0°}`, `l: {kind: inductor, from: a, to: earth, inductance: 1 H}`, `c: {kind: capacitor, from: a, to: earth, capacitance: 1 µF}`], ['a', 'l'], { analysis: 'alternating', frequency: 1000 / (2 * Math.PI) })
  writeFileSync('/tmp/review/plain.txt', out.join('\n') + '\n')
})
