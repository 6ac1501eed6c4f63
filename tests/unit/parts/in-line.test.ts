import { type ConverterSpec, converter } from 'ringproof/parts/converter'
import { type FilterSpec, filter } from 'ringproof/parts/filter'
import { describe, expect, test } from 'vitest'
import { alternating, DIRECT, hear } from './_heard.ts'

const wires = { a: { from: 'p', to: 'q' }, b: { from: 'r', to: 's' } }
const CONVERTER: ConverterSpec = { kind: 'converter', wires, resistance: 40, load: 100e3 }
const FILTER: FilterSpec = { kind: 'filter', wires, resistance: 10, inductance: 5e-3, capacitance: 22e-9 }
const OPEN = { form: 'equation', a: 0, z: { re: 1, im: 0 }, e: { re: 0, im: 0 } }
const series = (re: number, im = 0) => ({ form: 'equation', a: 1, z: { re, im }, e: { re: 0, im: 0 } })
const across = (re: number, im = 0) => ({ form: 'admittance', y: { re, im }, s: { re: 0, im: 0 } })

describe('apparatus in the pair', () => {
  test('a converter is half of its resistance in each wire and its load across the pair', () => {
    const at = (spec: ConverterSpec, gate: 'open' | 'closed') =>
      [DIRECT, alternating(1000)].map(
        (point) => hear((sink) => converter.law(spec, point, gate, sink)).branches,
      )
    expect(at(CONVERTER, 'closed')).toEqual([
      [series(20), series(20), across(1e-5)],
      [series(20), series(20), across(1e-5)],
    ])
    expect(at(CONVERTER, 'open')[0]).toEqual([OPEN, OPEN, across(0)])
    const { load: _, ...light } = CONVERTER
    expect(at(light, 'closed')[1]).toEqual([series(20), series(20), across(0)])
  })

  test('a filter is a coil in each wire and a capacitor across the pair', () => {
    const at = (point: typeof DIRECT, gate: 'open' | 'closed' = 'closed') =>
      hear((sink) => filter.law(FILTER, point, gate, sink)).branches
    expect(at(DIRECT)).toEqual([series(10), series(10), across(0)])
    expect(at(alternating(1000))).toEqual([series(10, 5), series(10, 5), across(0, 22e-6)])
    expect(at(alternating(1000), 'open')).toEqual([OPEN, OPEN, across(0)])
  })

  test('says the same as elements', () => {
    const heard: unknown[] = []
    const sink = {
      open: (...all: unknown[]) => heard.push(['open', ...all]),
      series: (...all: unknown[]) => heard.push(['series', ...all]),
      beside: (...all: unknown[]) => heard.push(['beside', ...all]),
      coupled: (...all: unknown[]) => heard.push(['coupled', ...all]),
    }
    converter.elements?.(CONVERTER, DIRECT, 'closed', sink)
    converter.elements?.(CONVERTER, DIRECT, 'open', sink)
    filter.elements?.(FILTER, DIRECT, 'closed', sink)
    filter.elements?.(FILTER, DIRECT, 'open', sink)
    const opened = [0, 1, 2].map((branch) => ['open', branch])
    expect(heard).toEqual([
      ['series', 0, 20, 0],
      ['series', 1, 20, 0],
      ['beside', 2, 100e3, 0],
      ...opened,
      ['series', 0, 10, 5e-3],
      ['series', 1, 10, 5e-3],
      ['beside', 2, Number.POSITIVE_INFINITY, 22e-9],
      ...opened,
    ])
  })

  test('goes wrong in its wires and across the pair, each way once, and has a pin for each end', () => {
    for (const [law, spec] of [
      [converter, CONVERTER],
      [filter, FILTER],
    ] as const) {
      const modes = law.modes?.(spec as never) ?? []
      expect(modes.length).toBeGreaterThan(3)
      expect(new Set(modes.map(({ mode }) => mode)).size).toBe(modes.length)
      for (const { branch } of modes) expect(law.branches(spec as never)[branch ?? -1]).toBeDefined()
      expect(Object.keys(law.outline?.(spec as never).pins ?? {}).sort()).toEqual(['p', 'q', 'r', 's'])
    }
  })
})
