import { test } from 'vitest'
import { writeFileSync } from 'node:fs'
import { compiled } from '../../support/compiled.ts'
import { solve } from 'ringproof/solver/solve'
import { currentIn } from 'ringproof/solver/solution'
import { ProblemError } from 'ringproof/problem'
const COND = { line: 'idle', sets: {} } as const
let seed = Number(process.env.RSEED ?? 1)
function rnd() { seed = (seed + 0x6d2b79f5) | 0; let t = Math.imul(seed ^ (seed >>> 15), 1 | seed); t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t; return ((t ^ (t >>> 14)) >>> 0) / 4294967296 }
const pick = <T,>(a: T[]) => a[Math.floor(rnd() * a.length)]!
const logu = (a: number, b: number) => Number(Math.exp(Math.log(a) + rnd() * Math.log(b / a)).toPrecision(3))
const VT = (1.380649e-23 / 1.602176634e-19) * 293.15
type El = { a: number; b: number; f: (v: number) => [number, number]; text: (a: string, b: string) => string; name: string }
// all elements: current from a to b as function of v, and slope. Double arithmetic; minimise co-content by Newton with line search
function make(k: number, a: number, b: number, mild: boolean): El {
  const name = `x${k}`
  const kind = pick(['r', 'r', 'd', 'd', 'v', 't', 'cr', 'j', 'e', 'bd'])
  const two = (kd: string, rest: string) => (p: string, q: string) => `${name}: {kind: ${kd}, from: ${p}, to: ${q}, ${rest}}`
  if (kind === 'r' || kind === 'bd') { const r = logu(1, 1e6); return { a, b, name, f: (v) => [v / r, 1 / r], text: two('resistor', `resistance: ${r} Ω`) } }
  if (kind === 'd') {
    const is = logu(1e-14, 1e-8), n = Number((1 + rnd()).toFixed(2)), u = n * VT
    return { a, b, name, f: (v) => v > 300 * u ? [is * Math.exp(300) * (1 + (v / u - 300)), is * Math.exp(300) / u] : [is * Math.expm1(v / u), is * Math.exp(v / u) / u], text: two('diode', `saturation current: ${is} A, emission: ${n}`) }
  }
  if (kind === 'v') {
    const v1 = logu(1, 300), al = Number((2 + rnd() * 28).toFixed(1))
    return { a, b, name, f: (v) => { const x = Math.abs(v) / v1; const i = x ** al; return [Math.sign(v) * i, x === 0 ? 0 : (al * i) / x / v1] }, text: two('varistor', `voltage at 1 A: ${v1} V, exponent: ${al}`) }
  }
  if (kind === 't') {
    const r = logu(50, 300), p = Number((rnd() * 0.8).toFixed(2)), i0 = 0.04
    const rh = r * (0.005 / i0) ** -p, vh = rh * 0.005
    return { a, b, name, f: (v) => { const s = Math.sign(v), x = Math.abs(v); if (x <= vh) return [v / rh, 1 / rh]; const i = i0 * (x / (r * i0)) ** (1 / (1 - p)); return [s * i, i / x / (1 - p)] }, text: two('transmitter', `resistance: ${r} Ω at 40 mA, falls with exponent: ${p}`) }
  }
  if (kind === 'cr') {
    const r = logu(5, 300), q = Number((rnd() * 4).toFixed(2)), i0 = 0.02
    const rh = r * 0.01 ** q, vh = rh * 0.01 * i0
    return { a, b, name, f: (v) => { const s = Math.sign(v), x = Math.abs(v); if (x <= vh) return [v / rh, 1 / rh]; const i = i0 * (x / (r * i0)) ** (1 / (1 + q)); return [s * i, i / x / (1 + q)] }, text: two('current-resistor', `resistance: ${r} Ω at 20 mA, rises with exponent: ${q}`) }
  }
  if (kind === 'j') { const j = Number(((rnd() - 0.5) * 0.1).toFixed(4)); const r = logu(100, 1e5); return { a, b, name, f: (v) => [j + v / r, 1 / r], text: (p, q) => `${name}: {kind: current-source, from: ${p}, to: ${q}, direct: ${j} A}\n  y${k}: {kind: resistor, from: ${p}, to: ${q}, resistance: ${r} Ω}` } }
  const e = Number(((rnd() - 0.5) * 120).toFixed(1)), r = logu(10, 1000) // source in series with a resistor
  return { a, b, name, f: (v) => [(v - e) / r, 1 / r], text: (p, q) => `${name}: {kind: voltage-source, from: ${p}, to: m${k}, direct: ${e} V}\n  y${k}: {kind: resistor, from: m${k}, to: ${q}, resistance: ${r} Ω}` }
}
function newton(n: number, els: El[], x: Float64Array): { x: Float64Array; res: number; steps: number } {
  const N = n // nodes 1..n, 0 earth
  const V = (x: Float64Array, k: number) => k === 0 ? 0 : x[k - 1]!
  const resid = (x: Float64Array) => { const f = new Float64Array(N), sc = new Float64Array(N); for (const e of els) { const [i] = e.f(V(x, e.a) - V(x, e.b)); if (e.a) { f[e.a - 1]! += i; sc[e.a - 1]! += Math.abs(i) } if (e.b) { f[e.b - 1]! -= i; sc[e.b - 1]! += Math.abs(i) } } return [f, sc] as const }
  let steps = 0
  for (; steps < 3000; steps++) {
    const [f, sc] = resid(x)
    let worst = 0; for (let k = 0; k < N; k++) worst = Math.max(worst, Math.abs(f[k]!) / (sc[k]! + 1e-18))
    const A = Array.from({ length: N }, () => new Float64Array(N + 1))
    for (const e of els) { const [, g0] = e.f(V(x, e.a) - V(x, e.b)); const g = g0 + 1e-18; const p = e.a - 1, q = e.b - 1; if (p >= 0) A[p]![p]! += g; if (q >= 0) A[q]![q]! += g; if (p >= 0 && q >= 0) { A[p]![q]! -= g; A[q]![p]! -= g } }
    for (let k = 0; k < N; k++) A[k]![N] = -f[k]!
    for (let c = 0; c < N; c++) { let m = c; for (let r = c; r < N; r++) if (Math.abs(A[r]![c]!) > Math.abs(A[m]![c]!)) m = r; [A[c], A[m]] = [A[m]!, A[c]!]; if (A[c]![c] === 0) return { x, res: worst, steps }; for (let r = 0; r < N; r++) if (r !== c) { const w = A[r]![c]! / A[c]![c]!; if (w) for (let k = c; k <= N; k++) A[r]![k]! -= w * A[c]![k]! } }
    const d = Float64Array.from({ length: N }, (_, k) => A[k]![N]! / A[k]![k]!)
    let big = 0; for (let k = 0; k < N; k++) big = Math.max(big, Math.abs(d[k]!) / (Math.abs(x[k]!) + 1e-9))
    if (big < 1e-13) return { x, res: worst, steps }
    // line search on f·d (co-content's slope along d must stay negative or shrink)
    let t = 1
    for (let h = 0; h < 60; h++) {
      const y = Float64Array.from(x, (v, k) => v + t * d[k]!); const [fy] = resid(y)
      let s = 0, s0 = 0; for (let k = 0; k < N; k++) { s += fy[k]! * d[k]!; s0 += f[k]! * d[k]! }
      if (Number.isFinite(s) && (s <= 0 || Math.abs(s) <= 0.9 * Math.abs(s0))) break
      t /= 2
    }
    let moved = false
    for (let k = 0; k < N; k++) { const y = x[k]! + t * d[k]!; if (y !== x[k]) moved = true; x[k] = y }
    if (!moved) return { x, res: worst, steps }
  }
  const [f, sc] = resid(x); let worst = 0; for (let k = 0; k < N; k++) worst = Math.max(worst, Math.abs(f[k]!) / (sc[k]! + 1e-18))
  return { x, res: worst, steps }
}
test('random', () => {
  const out: string[] = []
  const count: Record<string, number> = {}
  const bump = (k: string) => { count[k] = (count[k] ?? 0) + 1 }
  const t0 = Date.now()
  for (let trial = 0; trial < Number(process.env.RN ?? 3000); trial++) {
    const n = 2 + Math.floor(rnd() * 6)
    const m = n + 1 + Math.floor(rnd() * n)
    const els: El[] = []
    for (let k = 0; k < m; k++) { let a = Math.floor(rnd() * (n + 1)), b = Math.floor(rnd() * (n + 1)); if (k < n) { a = k + 1; b = Math.floor(rnd() * (k + 1)) } if (a === b) b = (a + 1) % (n + 1); if (rnd() < 0.5) [a, b] = [b, a]; els.push(make(k, a, b, true)) }
    const nm = (k: number) => k === 0 ? 'earth' : `n${k}`
    const lines = els.flatMap((e) => e.text(nm(e.a), nm(e.b)).split('\n').map((s) => s.trim()))
    let why = ''
    const ref = newton(n, els, new Float64Array(n))
    let sol: ReturnType<typeof solve> | undefined
    let net
    try { net = compiled(...lines); sol = solve(net, { analysis: 'direct', condition: COND }) } catch (e) { why = e instanceof ProblemError ? e.problems.map((p) => p.code + ' ' + p.found).join() : '!!! ' + (e as Error).stack?.slice(0, 300) }
    const refOk = ref.res < 1e-6
    if (sol === undefined) {
      bump('throws ' + why.split(' ')[0] + (refOk ? ' though ref converges' : ' ref fails too'))
      if (refOk && (count['printed ' + why.split(' ')[0]] ?? 0) < 25) { bump('printed ' + why.split(' ')[0]); out.push(`#${trial} THROWS ${why}; ref res ${ref.res} V ${[...ref.x].map((v) => v.toPrecision(6))}\n   ${lines.join('\n   ')}`) }
      continue
    }
    if (!refOk) { bump('ref fails'); continue }
    // compare currents; the largest of them gives scale
    let scale = 0; const cur = els.map((e) => { const [i] = e.f((e.a ? ref.x[e.a - 1]! : 0) - (e.b ? ref.x[e.b - 1]! : 0)); scale = Math.max(scale, Math.abs(i)); return i })
    let w = 0, wk = -1
    els.forEach((e, k) => { const id = `trial/${e.name}`; let got = currentIn(sol!, net!.branchIndex.get(id)!).re; const y = net!.branchIndex.get('trial/y' + e.name.slice(1)); if (y !== undefined && net!.branches[y]!.from === net!.branches[net!.branchIndex.get(id)!]!.from) got += currentIn(sol!, y).re; const d = Math.abs(got - cur[k]!) / (Math.abs(cur[k]!) + 1e-4 * scale + 1e-15); if (d > w) { w = d; wk = k } })
    // voltages
    let wv = 0, wn = -1
    for (let k = 1; k <= n; k++) { const id = net!.nodeIndex.get(`trial/n${k}`); if (id === undefined) continue; if (sol.island[id] !== sol.island[0]) { bump('undetermined nodes'); continue } const d = Math.abs(sol.voltages[2 * id]! - ref.x[k - 1]!) / (Math.abs(ref.x[k - 1]!) + 1); if (d > wv) { wv = d; wn = k } }
    if (w > 1e-6) { bump('current differs'); if (count['current differs']! < 25) out.push(`#${trial} current of ${els[wk]!.name} ${currentIn(sol, net!.branchIndex.get('trial/' + els[wk]!.name)!).re} ref ${cur[wk]} (${w.toPrecision(3)}); refres ${ref.res} V ${[...ref.x].map((v) => v.toPrecision(6))}\n   ${lines.join('\n   ')}`) }
    else if (wv > 1e-6) { bump('voltage differs'); if (count['voltage differs']! < 10) out.push(`#${trial} voltage n${wn} ${sol.voltages[2 * net!.nodeIndex.get(`trial/n${wn}`)!]} ref ${ref.x[wn - 1]}; refres ${ref.res}\n   ${lines.join('\n   ')}`) }
    else bump('agree')
    if (w <= 1e-6) count['worst agree e-12'] = Math.max(count['worst agree e-12'] ?? 0, w * 1e12)
  }
  out.unshift(JSON.stringify(count) + ` ${Date.now() - t0} ms`)
  writeFileSync('/tmp/review/random.txt', out.join('\n') + '\n')
}, 600000)
