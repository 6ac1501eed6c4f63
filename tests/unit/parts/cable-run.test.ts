import { NetlistBuilder } from 'ringproof/netlist/builder'
import type { Netlist } from 'ringproof/netlist/netlist'
import { cable } from 'ringproof/parts/cable'
import { type CableRunSpec, cableModes, cableOutline, cableRun } from 'ringproof/parts/cable-run'
import { CABLE_TYPES, cableConstants } from 'ringproof/parts/cable-types'
import { copperResistance } from 'ringproof/parts/copper'
import { PARTS } from 'ringproof/parts/index'
import { type Complex, voltageBetween } from 'ringproof/solver/solution'
import { solve } from 'ringproof/solver/solve'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { spec as read } from './_heard.ts'

const ON_HOOK = { line: 'idle', sets: {} } as const
const AC = (frequency: number) => ({ analysis: 'alternating' as const, frequency, condition: ON_HOOK })

/** One wire's R, L and what lies between each two, of the whole length. */
const OHMS = 60
const HENRIES = 2e-3
const FARADS = 0.2e-6
const SIEMENS = 2e-6

const SOURCES: readonly string[] = [
  'e: {kind: voltage-source, from: a0, to: earth, alternating: 1 V}',
  'f: {kind: voltage-source, from: r0, to: earth, alternating: 2 V at 70°}',
  'back: {kind: resistor, from: b0, to: earth, resistance: 100 Ω}',
  'load-ab: {kind: resistor, from: a1, to: b1, resistance: 600 Ω}',
  'load-ar: {kind: resistor, from: a1, to: r1, resistance: 4 kΩ}',
  'load-br: {kind: capacitor, from: b1, to: r1, capacitance: 0.5 µF}',
]
const WIRES = ['a', 'b', 'r'] as const
const PAIRS = [
  ['a', 'b'],
  ['a', 'r'],
  ['b', 'r'],
] as const

/** The three wires as one π of theirs. */
function exact(): Netlist {
  const builder = new NetlistBuilder()
  const node = (end: string): string => (end === 'earth' ? end : `trial/${end}`)
  for (const text of SOURCES) {
    const [name = '', kind] = text.split(/: (.*)/s)
    const rest = Object.fromEntries(
      (kind ?? '')
        .slice(1, -1)
        .split(', ')
        .map((pair) => pair.split(/: (.*)/s).slice(0, 2) as [string, string]),
    )
    const spec = read(rest as never)
    builder.add(PARTS.get(spec.kind) as never, spec, { place: 'trial', name, sort: 'part', node })
  }
  const spec: CableRunSpec = {
    kind: 'cable-run',
    wires: Object.fromEntries(WIRES.map((w) => [w, { from: `${w}0`, to: `${w}1` }])),
    resistance: OHMS,
    inductance: HENRIES,
    capacitance: FARADS,
    leakance: SIEMENS,
  }
  builder.add(cableRun as never, spec, { place: 'trial', name: 'cable', sort: 'cable', node })
  return builder.close('trial')
}

/** The three wires as n π sections of resistors, inductors and capacitors. */
function lumped(n: number): Netlist {
  const at = (wire: string, k: number): string =>
    k === 0 ? `${wire}0` : k === n ? `${wire}1` : `${wire}-${k}`
  const parts = Array.from({ length: n }, (_, k) => [
    ...WIRES.map(
      (w) =>
        `s-${w}-${k}: {kind: inductor, from: ${at(w, k)}, to: ${at(w, k + 1)}, inductance: ${HENRIES / n} H, resistance: ${OHMS / n} Ω}`,
    ),
    ...[k, k + 1].flatMap((end, side) =>
      PAIRS.map(
        ([p, q]) =>
          `c-${p}-${q}-${k}-${side}: {kind: capacitor, from: ${at(p, end)}, to: ${at(q, end)}, capacitance: ${FARADS / n / 2} F, leakage: ${(2 * n) / SIEMENS} Ω}`,
      ),
    ),
  ]).flat()
  return compiled(...SOURCES, ...parts)
}

function farVoltages(net: Netlist, frequency: number): readonly (Complex | undefined)[] {
  const solution = solve(net, AC(frequency))
  return PAIRS.map(([p, q]) => {
    const node = (name: string): number => net.nodeIndex.get(`trial/${name}1`) ?? -1
    return voltageBetween(solution, node(p), node(q))
  })
}

describe('three wires that lie alike', () => {
  test('are the limit of many short sections with capacitors between each two', () => {
    // at 3 kHz: 12 km of house wire, a third of a wave; the error of n sections falls with n²
    const one = farVoltages(exact(), 3000)
    const apart = (n: number): number => {
      const many = farVoltages(lumped(n), 3000)
      return Math.max(
        ...one.map((v, k) =>
          Math.hypot((v?.re ?? 0) - (many[k]?.re ?? 9), (v?.im ?? 0) - (many[k]?.im ?? 9)),
        ),
      )
    }
    const [eight, sixteen, thirtyTwo] = [apart(8), apart(16), apart(32)]
    expect(thirtyTwo).toBeLessThan(2e-3)
    assertClose(sixteen / thirtyTwo, 4, { relative: 0.05 }, 'halving the sections')
    assertClose(eight / sixteen, 4, { relative: 0.1 }, 'halving the sections')
  })
})

describe('types of cable', () => {
  test('have the resistance of their copper and no leakage of direct current', () => {
    for (const type of ['twin', 'house-pair', 'house-three'] as const) {
      const constants = cableConstants(type, 2, 0.0005, 1000, 40)
      expect(constants.resistance).toBe(copperResistance(0.0005, 1000, 40))
      expect(constants.leakance).toBe(0)
    }
    // 189.423 Ω/km of loop: 0.5 mm at 40 °C by IEC 60028, derived
    const { resistance } = cableConstants('twin', 2, 0.0005, 1000, 40)
    assertClose(2 * resistance, 189.423, { relative: 0, absolute: 5e-4 }, '0.5 mm at 40 °C')
  })

  test('of three wires have between two of them what the third adds while it leads nowhere', () => {
    const row = CABLE_TYPES['house-three']
    const two = cableConstants('house-three', 2, 0.0005, 1000)
    expect(cableConstants('house-three', 3, 0.0005, 1000).capacitance).toBe(row.capacitance)
    assertClose(two.capacitance, row.capacitance * 1.5, { relative: 1e-14 }, 'C + C/2')
    assertClose(
      two.capacitance,
      cableConstants('house-pair', 2, 0.0005, 1000).capacitance,
      { relative: 1e-14 },
      'pair',
    )
    for (const { source } of Object.values(CABLE_TYPES)) expect(source).not.toBe('')
  })
})

const KIND = {
  kind: 'cable',
  'from a': 'p',
  'from b': 'earth',
  'to a': 'q',
  'to b': 's',
  length: '5 km',
  'resistance per km': '168 Ω',
  'capacitance per km': '50 nF',
}

describe('a cable on a sheet', () => {
  test('has a branch for each wire and a shunt at each end', () => {
    expect(cable.branches(read(KIND) as never)).toEqual([
      { suffix: 'a', from: 'p', to: 'q', form: 'equation' },
      { suffix: 'b', from: 'earth', to: 's', form: 'equation' },
      { suffix: 'near-a-b', from: 'p', to: 'earth', form: 'admittance' },
      { suffix: 'far-a-b', from: 'q', to: 's', form: 'admittance' },
    ])
  })

  test('is solved at any length up to three thousand kilometres and beyond, in finite numbers', () => {
    for (const kilometres of [0, 1e-6, 1, 10, 30, 80, 100, 150, 175, 180, 185, 200, 240, 300, 3000, 10_000]) {
      const net = compiled(
        'e: {kind: voltage-source, from: p, to: earth, direct: 50 V, alternating: 1 V}',
        `line: {kind: cable, from a: p, from b: earth, to a: q, to b: s, length: ${kilometres} km, resistance per km: 168 Ω, capacitance per km: 50 nF, inductance per km: 0.7 mH, leakance per km: 1 µS}`,
        'load: {kind: resistor, from: q, to: s, resistance: 600 Ω}',
      )
      for (const question of [AC(1000), { analysis: 'direct' as const, condition: ON_HOOK }]) {
        const solution = solve(net, question)
        for (const x of [...solution.voltages, ...solution.currents]) expect(Number.isFinite(x)).toBe(true)
      }
    }
  })
})

describe('the far end of a long cable', () => {
  test('has what is left: 1/cosh γl of the voltage at the near end, down to a hundred millionth of a millionth', () => {
    for (const kilometres of [1, 10, 80, 150, 175]) {
      const net = compiled(
        'e: {kind: voltage-source, from: p, to: earth, alternating: 1 V}',
        `line: {kind: cable, from a: p, from b: earth, to a: q, to b: s, length: ${kilometres} km, resistance per km: 168 Ω, capacitance per km: 50 nF}`,
      )
      const left = voltageBetween(
        solve(net, AC(1000)),
        net.nodeIndex.get('trial/q') ?? -1,
        net.nodeIndex.get('trial/s') ?? -1,
      )
      // √(jωRC)·l = (1 + j)·√(ωRC/2)·l, closed form; |cosh(x + jx)|² = sinh² x + cos² x
      const x = Math.sqrt(Math.PI * 1000 * 168 * 50e-9) * kilometres
      const size = 1 / Math.sqrt(Math.sinh(x) ** 2 + Math.cos(x) ** 2)
      assertClose(Math.hypot(left?.re ?? 0, left?.im ?? 0), size, { relative: 1e-9 }, `${kilometres} km`)
    }
  })
})

describe('a cable that goes wrong', () => {
  test('breaks by wire, and touches or is damp between any two', () => {
    const modes = cableModes(['a', 'b', 'ringing'])
    expect(modes.map(({ mode }) => mode)).toEqual([
      'open-a',
      'bad-joint-a',
      'open-b',
      'bad-joint-b',
      'open-ringing',
      'bad-joint-ringing',
      'shorted-a-b',
      'leaky-a-b',
      'shorted-a-ringing',
      'leaky-a-ringing',
      'shorted-b-ringing',
      'leaky-b-ringing',
    ])
    const wires = Object.fromEntries(['a', 'b', 'ringing'].map((w) => [w, { from: `${w}0`, to: `${w}1` }]))
    const constants = cableConstants('house-three', 3, 0.0005, 12)
    const plans = cableRun.branches({ kind: 'cable-run', wires, ...constants })
    const damp = modes.find(({ mode }) => mode === 'leaky-b-ringing')
    expect(plans[damp?.branch ?? -1]).toMatchObject({ suffix: 'far-b-ringing', from: 'b1', to: 'ringing1' })
    expect(new Set(modes.map(({ mode }) => mode)).size).toBe(modes.length)
  })

  test('is drawn with a pin for each end', () => {
    const outline = cableOutline([
      { from: 'p', to: 'q' },
      { from: 'r', to: 's' },
    ])
    expect(Object.keys(outline.pins)).toEqual(['p', 'q', 'r', 's'])
    for (const [x, y] of Object.values(outline.pins)) {
      expect([0, outline.width]).toContain(x)
      expect(y).toBeLessThan(outline.height)
    }
  })
})
