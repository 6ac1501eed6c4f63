import { describe, expect, test } from 'vitest'
import { cycles } from './check-cycles.ts'
import { floorViolations } from './check-floors.ts'
import { FLOORS } from './floors.ts'
import { planted, readSources } from './sources.ts'

const sources = readSources()
const standing = floorViolations(sources)

/** The real text of a file with one line put before it. */
function withLine(path: string, line: string) {
  const text = sources.get(path)
  if (text === undefined) throw new Error(`src/${path} is gone: name another file here`)
  return planted(sources, path, `${line}\n${text}`)
}

describe('the table of floors', () => {
  test('lets every place import only from below', () => {
    const floorOf = new Map(FLOORS.map(({ place, floor }) => [place, floor]))
    for (const { place, floor, values, types } of FLOORS) {
      for (const below of [...values, ...types]) {
        expect(floorOf.get(below), `${place} may import ${below}`).toBeLessThan(floor)
      }
    }
  })

  test('names each place once', () => {
    const places = FLOORS.map(({ place }) => place)
    expect(places).toEqual([...new Set(places)])
  })
})

describe('src', () => {
  test('has files to look at', () => {
    expect(sources.has('problem.ts')).toBe(true)
    expect(sources.size).toBeGreaterThan(10)
  })

  test('keeps the floors', () => {
    expect(standing).toEqual([])
  })

  test('has no circle of imports, types included', () => {
    expect(cycles(sources)).toEqual([])
  })
})

describe('the floors bite when', () => {
  const upward: [string, string, string][] = [
    ['of a value', 'problem.ts', "import { nothing } from './parts/kind.ts'"],
    ['of a type', 'algebra/system.ts', "import type { Nothing } from '../problem.ts'"],
    ['of a type beside its name', 'parts/kind.ts', "import { type Nothing } from '../sheet/model.ts'"],
    ['of a type in passing', 'parts/kind.ts', "export type Nothing = import('../sheet/model.ts').Nothing"],
    ['at run time', 'parts/kind.ts', "export const late = () => import('../sheet/model.ts')"],
    ['by passing on', 'parts/kind.ts', "export * from '../sheet/model.ts'"],
  ]
  test.each(upward)('one upward import %s is added to a real file', (_how, path, line) => {
    const fresh = floorViolations(withLine(path, line)).filter((it) => !standing.includes(it))
    expect(fresh).toHaveLength(1)
    expect(fresh[0]).toMatch(/^\S+:1 imports .* may not import from/)
  })

  const reporting = (line: string) =>
    floorViolations(planted(planted(new Map(), 'solver/x.ts', ''), 'report/y.ts', line))

  test('a report takes a value where it may take only types', () => {
    expect(reporting("import type { X } from '../solver/x.ts'")).toEqual([])
    expect(reporting("import { type X } from '../solver/x.ts'")).toEqual([])
    expect(reporting("import { X } from '../solver/x.ts'")).toEqual([
      'report/y.ts:1 imports solver/x.ts: report may take only types from solver',
    ])
    expect(reporting("import { X, type Y } from '../solver/x.ts'")).toHaveLength(1)
    expect(reporting("export { X } from '../solver/x.ts'")).toHaveLength(1)
    expect(reporting("import '../solver/x.ts'")).toHaveLength(1)
  })

  test('an unknown folder appears', () => {
    expect(floorViolations(new Map([['attic/box.ts', '']]))).toEqual([
      'attic/box.ts: attic has no line in the table of floors',
    ])
  })

  test('an import leads nowhere, is computed, leaves the house or goes through the front door', () => {
    const judged = (line: string) => floorViolations(new Map([['cli/a.ts', line]]))
    expect(judged("import '../gone.ts'")).toHaveLength(1)
    expect(judged("import '../../tests/run.mjs'")).toHaveLength(1)
    expect(judged("import { x } from 'ringproof/parts/kind'")).toHaveLength(1)
    expect(judged('await import(name)')).toHaveLength(1)
    expect(judged("import manifest from '../../package.json' with { type: 'json' }")).toEqual([])
  })

  test('a circle of two or three files is closed, by types alone or not', () => {
    expect(
      cycles(
        new Map([
          ['parts/a.ts', "import type { B } from './b.ts'"],
          ['parts/b.ts', "import { C } from './c.ts'"],
          ['parts/c.ts', "export type D = import('./a.ts').A"],
          ['parts/d.ts', "import './a.ts'\nimport './c.ts'"],
        ]),
      ),
    ).toEqual(['parts/a.ts → parts/b.ts → parts/c.ts → parts/a.ts'])
  })

  test('a circle is closed in a real file', () => {
    expect(cycles(withLine('problem.ts', "import type { Nothing } from './problem.ts'"))).toContain(
      'problem.ts → problem.ts',
    )
  })
})
