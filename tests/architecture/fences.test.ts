import { describe, expect, test } from 'vitest'
import { demoNameViolations } from './check-demo-names.ts'
import { kindViolations } from './check-kinds.ts'
import { fenceViolations } from './fences.ts'
import { readSources, readTree } from './sources.ts'

const sources = readSources()

/**
 * The names of the demo scenario, of sheets made already or later, with those of the files that stand in
 * `netlists`. Circuits are left out: textbooks name them with everyday words.
 */
const DEMO = ['fescue', 'sedge', 'vetch', 'melick', 'foxtail', 'darnel', 'brome', 'marram', 'workshop']
const files = [
  ...readTree('netlists', (path) => /^(sets|units|lines|premises|rewires)\/.*\.yaml$/.test(path)).keys(),
]
const sheets = [...new Set([...DEMO, ...files.map((path) => path.replace(/^.*\/|\.yaml$/g, ''))])]

describe('src', () => {
  test('imports each package only inside its fence', () => {
    expect(fenceViolations(sources)).toEqual([])
  })

  test('asks no part for its kind outside parts', () => {
    expect(kindViolations(sources)).toEqual([])
  })

  test('names no demo sheet but in the demo', () => {
    expect(demoNameViolations(sources, sheets)).toEqual([])
  })
})

describe('the fence around packages', () => {
  const judged = (path: string, target: string) => fenceViolations(new Map([[path, `import '${target}'`]]))

  const outside = [
    ['solver/a.ts', 'zod/mini'],
    ['report/text.ts', 'zod/mini'],
    ['sheet/a.ts', 'zod'],
    ['parts/a.ts', 'yaml'],
    ['rewire/planner.ts', 'yaml'],
    ['solver/a.ts', 'graphology'],
    ['report/a.ts', 'graphology-types'],
    ['index.ts', 'mathjs'],
    ['solver/a.ts', 'mathjs'],
    ['solver/a.ts', 'graphology-components'],
    ['quantities/a.ts', 'node:fs'],
    ['cli/main.ts', 'fs'],
    ['host/a.ts', 'commander'],
    ['report/text.ts', 'picocolors'],
    ['cli/main.ts', 'vite'],
    ['sheet/a.ts', 'vitest'],
  ] as const
  test.each(outside)('keeps %s from importing %s', (path, target) => {
    expect(judged(path, target)).toHaveLength(1)
  })

  const inside = [
    ['parts/resistor.ts', 'zod/mini'],
    ['report/json.ts', 'zod/mini'],
    ['report/json-envelope.ts', 'zod/mini'],
    ['rewire/moves.ts', 'yaml'],
    ['meter/instruments.ts', 'zod/mini'],
    ['netlist/compile.ts', 'graphology-components/weakly-connected.js'],
    ['host/files.ts', 'node:fs/promises'],
    ['cli/main.ts', 'picocolors'],
    ['cli/vite.config.ts', 'vite'],
  ] as const
  test.each(inside)('lets %s import %s', (path, target) => {
    expect(judged(path, target)).toEqual([])
  })

  test('lets the second opinion load mathjs late, and no other way', () => {
    const opinion = (line: string) => fenceViolations(new Map([['opinion/a.ts', line]]))
    expect(opinion("const late = () => import('mathjs')")).toEqual([])
    expect(opinion("import type { MathType } from 'mathjs'")).toEqual([])
    expect(opinion("import { create } from 'mathjs'")).toEqual([
      'opinion/a.ts:1 imports mathjs before it is needed',
    ])
    expect(opinion("export { create } from 'mathjs'")).toHaveLength(1)
    expect(fenceViolations(new Map([['cli/a.ts', "await import('mathjs')"]]))).toHaveLength(1)
  })

  test('counts types, passing on and run-time imports', () => {
    const lines = [
      "import type { Graph } from 'graphology'",
      "export type { Graph } from 'graphology'",
      "type Graph = import('graphology').default",
      "await import('graphology')",
    ]
    expect(fenceViolations(new Map([['solver/a.ts', lines.join('\n')]]))).toHaveLength(4)
  })
})

describe('the fence around kinds', () => {
  const judged = (text: string, path = 'netlist/a.ts') => kindViolations(new Map([[path, text]]))

  test.each([
    "part.kind === 'bell'",
    "'bell' !== part.kind",
    "part?.kind == 'bell'",
    'part.kind != `bell`',
    "part['kind'] === 'bell'",
    "(part.kind as string) === 'bell'",
    "const { kind } = part; kind === 'bell'",
    "switch (part.kind) { case 'bell': break }",
    'const TABLE = { bell: 1 } as const; TABLE[part.kind]',
    '({ bell: 1 })[part.kind]',
    'const TABLE = Object.freeze({ bell: 1 }); part.kind in TABLE',
    "const BELLS = new Set(['bell']); BELLS.has(part.kind)",
    "const BELLS = new Map([['bell', 1]]); BELLS.get(part.kind)",
    "['bell', 'buzzer'].includes(part.kind)",
  ])('refuses %s', (text) => {
    expect(judged(text)).toHaveLength(1)
  })

  test.each([
    "sheet.sheet === 'set'",
    'a.kind === b.kind',
    'registry.get(part.kind)',
    'byKind[part.kind]',
    "const made = { kind: 'bell' }",
    "// part.kind === 'bell'",
    "const text = `part.kind === 'bell'`",
    "part.role === 'sounder'",
  ])('lets %s pass', (text) => {
    expect(judged(text)).toEqual([])
  })

  test('ends at parts', () => {
    expect(judged("part.kind === 'bell'", 'parts/kind.ts')).toEqual([])
  })

  test('says where', () => {
    expect(judged("let x\nx = part.kind === 'bell'")).toEqual(['netlist/a.ts:2 compares a kind with a word'])
  })
})

describe('the fence around demo names', () => {
  const judged = (path: string, text: string) => demoNameViolations(new Map([[path, text]]), sheets)

  test('refuses a sheet in a string or a template, however it is wrapped', () => {
    expect(judged('cli/check.ts', "const a = 'netlists/sets/sedge.yaml'")).toEqual([
      'cli/check.ts:1 names the demo sheet sedge',
    ])
    expect(judged('report/a.ts', 'const a = `the Fescue of ${owner}`')).toHaveLength(1)
    expect(judged('report/a.ts', "const a = 'workshop'")).toHaveLength(1)
  })

  test('lets the demo name all and the answers their default premises alone', () => {
    expect(judged('cli/demo.ts', "const a = 'sedge'")).toEqual([])
    expect(judged('answer/a.ts', "const a = 'workshop'")).toEqual([])
    expect(judged('answer/a.ts', "const a = 'sedge'")).toHaveLength(1)
  })

  test('lets comments and longer words pass', () => {
    expect(judged('report/a.ts', "// sedge\nconst a = 'sedges'")).toEqual([])
  })
})
