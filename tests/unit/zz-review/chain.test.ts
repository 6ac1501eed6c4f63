import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { compiled } from '../../support/compiled.ts'
import { solve } from 'ringproof/solver/solve'
import { currentIn } from 'ringproof/solver/solution'
import { ProblemError } from 'ringproof/problem'
const COND = { line: 'idle', sets: {} } as const
const VT = (1.380649e-23 / 1.602176634e-19) * 293.15
type P = { text: (a: string, b: string, n: string) => string; v: (i: number) => number; label: string }
const diode = (is: number, n: number): P => ({ label: `D(${is},${n})`, text: (a, b, k) => `${k}: {kind: diode, from: ${a}, to: ${b}, saturation current: ${is} A, emission: ${n}}`, v: (i) => n * VT * Math.log1p(i / is) })
const varis = (v1: number, al: number): P => ({ label: `V(${v1},${al})`, text: (a, b, k) => `${k}: {kind: varistor, from: ${a}, to: ${b}, voltage at 1 A: ${v1} V, exponent: ${al}}`, v: (i) => v1 * i ** (1 / al) })
test('chain', () => {
  const out: string[] = []
  let n = 0, bad = 0, thrown = 0
  const try1 = (e: number, r: number, ps: P[], par?: number) => {
    // bisect in log i
    const f = (i: number) => i * r + ps.reduce((s, p) => s + p.v(i), 0) - e
    let lo = 1e-40, hi = e / r
    for (let k = 0; k < 300; k++) { const m = Math.sqrt(lo * hi); if (f(m) > 0) hi = m; else lo = m }
    const ref = hi
    const lines = [`e: {kind: voltage-source, from: n0, to: earth, direct: ${e} V}`, `r: {kind: resistor, from: n0, to: n1, resistance: ${r} Ω}`]
    ps.forEach((p, k) => lines.push(p.text(`n${k + 1}`, k === ps.length - 1 ? 'earth' : `n${k + 2}`, `x${k}`)))
    if (par) lines.push(`par: {kind: resistor, from: n1, to: earth, resistance: ${par} Ω}`)
    n++
    try {
      const net = compiled(...lines)
      const s = solve(net, { analysis: 'direct', condition: COND })
      const i = currentIn(s, net.branchIndex.get('trial/r')!).re
      if (!(Math.abs(i - ref) <= 1e-6 * ref + 1e-9)) { bad++; if (true) out.push(`WRONG ${e} V ${r} Ω ${ps.map((p) => p.label).join(' ')} par ${par}: got ${i} ref ${ref}`) }
    } catch (x) { thrown++; if (true) out.push(`THROWS ${x instanceof ProblemError ? x.problems.map((p) => p.code + p.found) : (x as Error).stack?.slice(0, 200)} ${e} V ${r} Ω ${ps.map((p) => p.label).join(' ')}; ref ${ref}`) }
  }
  const kinds = [diode(1e-14, 1), diode(2.5e-9, 1.8), diode(8e-22, 1.8 ), diode(1e-17, 1.2), varis(60, 4), varis(1.2, 5), varis(2.2, 28), varis(30, 30), varis(200, 25)].filter((k) => !k.label.startsWith('D(8e-22'))
  for (const e of [1, 5, 24, 50, 300]) for (const r of [10, 400, 10000])
    for (const p of kinds) { try1(e, r, [p]); for (const q of kinds) { try1(e, r, [p, q]); for (const s of kinds) try1(e, r, [p, q, s]) } }
  out.unshift(`${n} tried, ${bad} wrong, ${thrown} thrown`)
  writeFileSync('/tmp/review/chain.txt', out.join('\n') + '\n')
}, 300000)
