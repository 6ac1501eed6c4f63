/**
 * The contract of kinds of part (src/parts/kind.ts): the laws of every kind are stated once a branch, are lawful,
 * agree with themselves from analysis to analysis, and its faults, its symbol and its row in the reference are there.
 */
import { Ajv2020 } from 'ajv/dist/2020.js'
import * as fc from 'fast-check'
import type { LawPoint, PartKind } from 'ringproof/parts/kind'
import { sheetJsonSchema } from 'ringproof/sheet/json-schema'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { assertClose, farApart } from '../support/close.ts'
import { SEED } from '../support/seed.ts'
import { shelfOf } from '../support/sheets.ts'
import { accepts, alternating, DIRECT, type Heard, spec as read } from '../unit/parts/_heard.ts'
import { directAt, lawsAt, onCurve, otherOf, type Subject, settled, slopeOf } from './_part-curve.ts'
import { elementsAt, plainly } from './_part-elements.ts'
import type { Traits, Written } from './_part-examples.ts'
import { powerTaken } from './_part-power.ts'

const OMEGAS = [2 * Math.PI * 25, 2 * Math.PI * 1000, 1e5].map((omega) => alternating(omega))
const GATES = ['closed', 'open'] as const
/** Points on both sides of every kink, none on one: volts for admittances, amperes for equations. */
const VOLTS = [1.7e-3, 0.11, 0.43, 0.71, 3.3, 19, 63, 240].flatMap((x) => [x, -x])
const AMPERES = [1.3e-6, 1.7e-4, 2.3e-3, 0.013, 0.047, 0.19].flatMap((x) => [x, -x])
const jsonSchema = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(sheetJsonSchema('circuit'))

/** Proves the contract for one part of a kind, as a sheet writes it. */
export function partKindContract(kind: PartKind, name: string, written: Written, traits: Traits): void {
  describe(`${written.kind}, ${name}`, () => {
    const subject: Subject = { law: kind, spec: read(written) }
    const plans = kind.branches(subject.spec)
    sheetContract(kind, written)
    planContract(subject, written)
    bendContract(subject, traits)
    alternatingContract(subject, traits)
    if (kind.elements !== undefined) elementsContract(subject)
    if (kind.modes !== undefined) modesContract(subject)
    outlineContract(
      subject,
      plans.flatMap(({ from, to }) => [from, to]),
    )
  })
}

function sheetContract(kind: PartKind, written: Written): void {
  test('is read by its own schema and by its JSON Schema, and an unknown key by neither', () => {
    const circuit = (part: object) => ({
      ringproof: 1,
      sheet: 'circuit',
      name: 'trial',
      parts: { one: part },
    })
    expect(accepts(written)).toBe(true)
    expect(jsonSchema(circuit(written)), JSON.stringify(jsonSchema.errors)).toBe(true)
    const strange = { ...written, 'no such key': '1 Ω' }
    expect(accepts(strange)).toBe(false)
    expect(jsonSchema(circuit(strange))).toBe(false)
  })

  test('is read from a sheet without complaint but for ends that nothing else meets', () => {
    const text = `ringproof: 1\nsheet: circuit\nname: trial\nparts:\n  one: ${JSON.stringify(written)}\n`
    const { sheet, problems } = readSheet({ file: 'trial.yaml', text }, shelfOf([]), 'circuit')
    expect(problems.filter(({ code }) => code !== 'end-dangling')).toEqual([])
    expect(sheet).toBeDefined()
    expect(kind.check?.(read(written)) ?? []).toEqual([])
  })
}

function planContract(subject: Subject, written: Written): void {
  const { law, spec } = subject
  const plans = law.branches(spec)

  test('plans branches between ends that its sheet names, each with a suffix of its own', () => {
    expect(plans.length).toBeGreaterThan(0)
    expect(new Set(plans.map(({ suffix }) => suffix)).size).toBe(plans.length)
    const words = JSON.stringify(written)
    for (const { from, to } of plans) for (const end of [from, to]) expect(words).toContain(`"${end}"`)
  })

  test('states every branch once in the planned form, and the same when asked again', () => {
    const points: LawPoint[] = [
      DIRECT,
      ...OMEGAS,
      { ...DIRECT, direct: () => ({ voltage: 30, current: 0.03 }) },
    ]
    for (const at of points) {
      for (const gate of GATES) {
        const laws = lawsAt(subject, at, gate)
        expect(Array.from(laws.branches, (heard) => heard?.form)).toEqual(plans.map(({ form }) => form))
        expect(lawsAt(subject, at, gate)).toEqual(laws)
        expect(numbersOf(laws).every(Number.isFinite), JSON.stringify(laws)).toBe(true)
      }
    }
  })

  test('couples its branches both ways alike', () => {
    for (const at of OMEGAS) {
      const { mutuals } = lawsAt(subject, at)
      for (const [pair, m] of Object.entries(mutuals)) {
        expect(mutuals[pair.split(',').reverse().join(',')]).toEqual(m)
      }
    }
  })

  test('states finite laws however far astray a point is', () => {
    for (const size of [0, 1e-300, 1e-9, 300, 1e5, 1e9]) {
      for (const side of [1, -1]) {
        const astray = { direct: () => ({ voltage: side * size, current: side * size }), swing: () => size }
        for (const at of [DIRECT, ...OMEGAS])
          expect(numbersOf(lawsAt(subject, { ...at, ...astray })).every(Number.isFinite)).toBe(true)
      }
    }
  })
}

function bendContract(subject: Subject, traits: Traits): void {
  const { law, spec } = subject
  const bent = law.bends?.(spec).includes('direct') ?? false

  test('gives as its tangent the slope that neighbouring points of its curve have', () => {
    for (const [branch, x] of points(subject)) {
      const here = onCurve(subject, branch, x)
      const [less, more] = [x - 1e-6 * Math.abs(x), x + 1e-6 * Math.abs(x)]
      const [below, above] = [onCurve(subject, branch, less), onCurve(subject, branch, more)]
      if (here === undefined || below === undefined || above === undefined) continue
      const heard = directAt(subject, branch, here)
      const rise = (otherOf(heard, above) - otherOf(heard, below)) / (more - less)
      const rounding = (8 * Number.EPSILON * Math.abs(otherOf(heard, here))) / (more - less)
      // a difference over ± 1e-6 is off by (1e-6 α)²/6 in a power of α, and by the rounding of its two values
      assertClose(slopeOf(heard), rise, { relative: 1e-8, absolute: rounding }, `${branch} at ${x}`)
    }
  })

  test('says that it bends exactly where its direct law depends on the point', () => {
    const rest = (branch: number): Heard => directAt(subject, branch, { voltage: 0, current: 0 })
    const depends = points(subject).some(([branch, x]) => {
      const there = directAt(subject, branch, { voltage: x * 1000, current: x })
      return JSON.stringify(there) !== JSON.stringify(rest(branch))
    })
    expect(depends).toBe(bent)
  })

  if (law.role !== 'source')
    test('takes power at every point of its curve and gives none', () => {
      for (const [branch, x] of points(subject)) {
        const here = onCurve(subject, branch, x)
        if (here !== undefined) expect(here.voltage * here.current).toBeGreaterThanOrEqual(0)
      }
    })

  if (law.settle !== undefined)
    test('holds no step back beyond what the tangent says, and none on its curve', () => {
      const held = traits.settles ?? 'voltage'
      const side = fc.double({ min: -400, max: 400, noNaN: true })
      const working = fc.record({ voltage: side, current: side })
      fc.assert(
        fc.property(working, working, (next, before) => {
          const got = law.settle?.(spec, 0, next, before) ?? next
          expect(Number.isFinite(got.voltage) && Number.isFinite(got.current)).toBe(true)
          expect(got[held]).toBeGreaterThanOrEqual(Math.min(next[held], before[held]))
          expect(got[held]).toBeLessThanOrEqual(Math.max(next[held], before[held]))
        }),
        { seed: SEED },
      )
      for (const [branch, x] of points(subject)) {
        const here = onCurve(subject, branch, x)
        if (here !== undefined) expect(law.settle?.(spec, branch, here, here)).toBe(here)
      }
    })

  if (bent)
    test('is found by Newton from rest in fewer than 30 steps, at a point of its curve', () => {
      for (const volts of [0.3, 50, 251, -0.3, -50, -251]) {
        for (const ohms of [0.01, 1, 1000, 1e6]) {
          const found = settled(subject, 0, volts, ohms)
          expect(found?.steps ?? Number.POSITIVE_INFINITY, `${volts} V behind ${ohms} Ω`).toBeLessThan(30)
          if (found === undefined) continue
          const { voltage, current } = found.working
          const heard = directAt(subject, 0, found.working)
          const lawful =
            heard.form === 'admittance'
              ? farApart(heard.y.re * voltage + heard.s.re, current, { relative: 1e-6, absolute: 1e-15 })
              : farApart(heard.z.re * current + heard.e.re, heard.a * voltage, {
                  relative: 1e-6,
                  absolute: heard.a === 0 ? 1e-12 : 1e-15,
                })
          expect(lawful).toBeNull()
          const source = { relative: 1e-9, absolute: 1e-9 * Math.abs(volts) }
          assertClose(voltage + ohms * current, volts, source, 'the loop')
        }
      }
    })
}

function alternatingContract(subject: Subject, { small = undefined }: Traits): void {
  const { law, spec } = subject
  const source = law.role === 'source'

  if (!source && small === undefined)
    test('is for small signals of no frequency what its tangent is', () => {
      for (const [branch, x] of points(subject)) {
        const here = onCurve(subject, branch, x)
        if (here === undefined) continue
        const direct = directAt(subject, branch, here)
        const at = {
          ...alternating(1e-9),
          direct: (k: number) => (k === branch ? here : { voltage: 0, current: 0 }),
        }
        const heard = lawsAt(subject, at).branches[branch]
        const value = (one: Heard | undefined) => (one?.form === 'admittance' ? one.y : one?.z)
        // 1e-9 rad/s leaves 12 H and 1 kF a part in 1e8 of an ohm and of a microsiemens
        const allowed = { relative: 1e-12, absolute: 2e-8 }
        assertClose(value(heard), value(direct) ?? { re: 0, im: 0 }, allowed, `branch ${branch} at ${x}`)
      }
    })

  if (small === 'chord')
    test('is for small signals the chord at its direct current', () => {
      for (const [branch, x] of points(subject)) {
        const here = onCurve(subject, branch, x)
        if (here === undefined) throw new Error('open')
        const heard = lawsAt(subject, { ...alternating(6000), direct: () => here }).branches[branch]
        if (heard?.form !== 'equation') throw new Error('no equation')
        assertClose(heard.z, here.voltage / here.current, { relative: 1e-12 }, `chord at ${x}`)
      }
    })

  if (!source)
    test('takes power from alternating current and gives none, at any point', () => {
      const number = fc.double({ min: -1, max: 1, noNaN: true })
      const drive = fc.array(fc.record({ re: number, im: number }), { minLength: 12, maxLength: 12 })
      const inputs = fc.record({
        drive,
        x: fc.double({ min: -300, max: 300, noNaN: true }),
        which: fc.nat(2),
      })
      fc.assert(
        fc.property(inputs, ({ drive, x, which }) => {
          const working = { voltage: x, current: x / 1000 }
          const at = { ...(OMEGAS[which] ?? DIRECT), direct: () => working, swing: () => Math.abs(x) }
          for (const gate of GATES) {
            const laws = lawsAt(subject, at, gate)
            const { power, size } = powerTaken(laws, drive)
            expect(power).toBeGreaterThanOrEqual(-1e-13 * size)
            for (const heard of laws.branches)
              expect(heard.form === 'admittance' ? heard.s : heard.e).toEqual({ re: 0, im: 0 })
          }
        }),
        { seed: SEED },
      )
    })

  test('says that it hangs on the size of an alternating voltage exactly where its law does', () => {
    const [at = DIRECT] = OMEGAS
    const depends = [1, 30, 200].some(
      (size) =>
        JSON.stringify(lawsAt(subject, { ...at, swing: () => size })) !== JSON.stringify(lawsAt(subject, at)),
    )
    expect(depends).toBe(law.bends?.(spec).includes('swing') ?? false)
  })
}

function elementsContract(subject: Subject): void {
  test('is the same as plain elements, to the last digits', () => {
    for (const at of [DIRECT, ...OMEGAS]) {
      for (const gate of GATES) {
        const laws = lawsAt(subject, at, gate)
        const elements = elementsAt(subject, at, gate)
        expect(elements?.branches).toHaveLength(laws.branches.length)
        laws.branches.forEach((heard, k) => {
          const other = elements?.branches[k]
          if (other === undefined) throw new Error(`branch ${k} is no element`)
          expectAlike(plainly(other), plainly(heard))
        })
        const felt = Object.entries(laws.mutuals).filter(([, { re, im }]) => re !== 0 || im !== 0)
        const coupled = Object.entries(elements?.mutuals ?? {}).filter(([, { im }]) => im !== 0)
        expectAlike(Object.fromEntries(coupled), Object.fromEntries(felt))
      }
    }
  })
}

function modesContract(subject: Subject): void {
  const { law, spec } = subject
  const modes = law.modes?.(spec) ?? []

  test('goes wrong in ways that have a name of their own, a sign, a weight and a source', () => {
    expect(modes.length).toBeGreaterThan(0)
    expect(new Set(modes.map(({ mode }) => mode)).size).toBe(modes.length)
    for (const one of modes) {
      expect(one.mode).toMatch(/^[a-z]+(-[a-z0-9]+)*$/)
      expect(one.weight).toBeGreaterThan(0)
      expect(one.weight).toBeLessThan(1000)
      for (const text of [one.says, one.sign, one.source]) expect(text.trim()).toMatch(/^\S.*[^.]$/)
      if (one.branch !== undefined) expect(law.branches(spec)[one.branch]).toBeDefined()
    }
  })

  test.each(modes.map((one) => [one.mode, one] as const))('is lawful when %s', (_, { change }) => {
    if ('open' in change) expect(change.open).toBe(true)
    else if ('across' in change) expect(change.across).toBeGreaterThan(0)
    else if ('within' in change) expect(change.within).toBeGreaterThan(0)
    else {
      const faulty: Subject = { law, spec: change.instead }
      expect(change.instead.kind).toBe(spec.kind)
      expect(JSON.stringify(change.instead)).not.toBe(JSON.stringify(spec))
      expect(law.branches(faulty.spec)).toEqual(law.branches(spec))
      for (const at of [DIRECT, ...OMEGAS])
        expect(numbersOf(lawsAt(faulty, at)).every(Number.isFinite)).toBe(true)
    }
  })
}

function outlineContract({ law, spec }: Subject, ends: readonly string[]): void {
  test('has a symbol with a pin on its border for every end, and strokes inside it', () => {
    const outline = law.outline?.(spec)
    if (outline === undefined) throw new Error('no symbol')
    const { width, height, pins, strokes } = outline
    expect(Object.keys(pins).sort()).toEqual([...new Set(ends)].sort())
    for (const [x, y] of Object.values(pins)) {
      expect(x === 0 || x === width || y === 0 || y === height).toBe(true)
      expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true)
    }
    const reached = strokes.flatMap((stroke) => {
      if ('line' in stroke) return stroke.line
      if ('dot' in stroke) return [stroke.dot]
      if ('at' in stroke) return [stroke.at]
      const [x, y, r, from, to] = stroke.arc
      const steps = Array.from({ length: 9 }, (_, k) => ((from + ((to - from) * k) / 8) * Math.PI) / 180)
      return steps.map((angle) => [x + r * Math.cos(angle), y + r * Math.sin(angle)] as const)
    })
    for (const [x, y] of reached) {
      expect(x).toBeGreaterThanOrEqual(-1e-12)
      expect(x).toBeLessThanOrEqual(width + 1e-12)
      expect(y).toBeGreaterThanOrEqual(-1e-12)
      expect(y).toBeLessThanOrEqual(height + 1e-12)
    }
    for (const [x, y] of Object.values(pins))
      expect(
        reached.some(([px, py]) => px === x && py === y),
        `a lead to ${x}, ${y}`,
      ).toBe(true)
  })
}

/** Branches with points to try, in the coordinate of their form. */
function points(subject: Subject): readonly (readonly [branch: number, x: number])[] {
  return subject.law
    .branches(subject.spec)
    .flatMap(({ form }, k) => (form === 'admittance' ? VOLTS : AMPERES).map((x) => [k, x] as const))
}

function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersOf)
}

/** The same shape, and numbers apart by no more than a few roundings. */
function expectAlike(found: unknown, expected: unknown): void {
  if (typeof expected === 'number') {
    expect(farApart(found, expected, { relative: 1e-15 })).toBeNull()
    return
  }
  if (typeof expected !== 'object' || expected === null) {
    expect(found).toBe(expected)
    return
  }
  expect(Object.keys(found as object).sort()).toEqual(Object.keys(expected).sort())
  for (const [key, value] of Object.entries(expected))
    expectAlike((found as Record<string, unknown>)[key], value)
}
