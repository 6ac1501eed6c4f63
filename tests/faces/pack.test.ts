import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))

/** Someone else's file: what a reader of docs/library.md would write first. */
const CONSUMER = `import { type Problem, ProblemError, type SolveAnswer, solveCircuit } from 'ringproof'

export function voltageAt(sheet: string, node: string): number | string {
  try {
    const answer: SolveAnswer = solveCircuit(sheet)
    const volts = answer.voltages[node]
    return typeof volts === 'number' ? volts : (answer.states[node] ?? 'no such node')
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    return error.problems.map(({ code, place }: Problem) => \`\${place?.line}: \${code}\`).join()
  }
}
`

const COMPILER = ['--noEmit', '--strict', '--exactOptionalPropertyTypes', '--target', 'es2023', '--types', '']

describe('the packed library, installed in an empty folder', () => {
  const scratch = mkdtempSync(join(tmpdir(), 'ringproof-pack-'))
  const home = join(scratch, 'consumer')
  /** Runs a program in the consumer's folder; a failure carries what the program printed. */
  const run = (program: string, args: string[], cwd = home): string => {
    try {
      return execFileSync(program, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] })
    } catch (error) {
      const { stdout, stderr } = error as { stdout?: string; stderr?: string }
      throw new Error(`${program} ${args.join(' ')}\n${stdout}\n${stderr}`)
    }
  }
  const tsc = (...args: string[]) =>
    run(join(root, 'node_modules/.bin/tsc'), [...COMPILER, '--skipLibCheck', 'false', ...args, 'consumer.ts'])

  beforeAll(() => {
    mkdirSync(home)
    writeFileSync(join(home, 'package.json'), '{ "private": true, "type": "module" }')
    writeFileSync(join(home, 'consumer.ts'), CONSUMER)
    run('npm', ['pack', '--ignore-scripts', '--pack-destination', scratch], root)
    const tarball = join(scratch, `${manifest.name}-${manifest.version}.tgz`)
    run('npm', ['install', '--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund', tarball])
  }, 120_000)
  afterAll(() => rmSync(scratch, { recursive: true, force: true }))

  test('type-checks for a consumer under node', () => {
    expect(tsc('--module', 'nodenext')).toBe('')
  })

  test('type-checks for a consumer with a bundler', () => {
    expect(tsc('--module', 'preserve', '--moduleResolution', 'bundler')).toBe('')
  })

  test('is really looked at: a consumer who takes what is not there is refused', () => {
    writeFileSync(
      join(home, 'wrong.ts'),
      "import { nothingOfTheKind } from 'ringproof'\nnothingOfTheKind()\n",
    )
    expect(() => tsc('--module', 'nodenext', 'wrong.ts')).toThrow('nothingOfTheKind')
  })

  test('is loaded by node', () => {
    const code = "import('ringproof').then((library) => console.log(Object.keys(library).length))"
    expect(Number(run(process.execPath, ['-e', code]))).toBeGreaterThan(0)
  })

  test('solves for its consumer', () => {
    const sheet =
      'ringproof: 1\\nsheet: circuit\\nname: one\\nparts:\\n' +
      '  e: {kind: voltage-source, from: p, to: earth, direct: 12 V}\\n' +
      '  r: {kind: resistor, from: p, to: q, resistance: 4 Ω}\\n  s: {kind: resistor, from: q, to: earth, resistance: 2 Ω}\\n'
    const code = `import('ringproof').then((r) => console.log(r.solveCircuit('${sheet}').voltages['one/q']))`
    expect(Number(run(process.execPath, ['-e', code]))).toBe(4)
  })

  test('brings the demo, which tells its story to the end', () => {
    expect(run(join(home, 'node_modules/.bin/ringproof'), ['demo'])).toContain(
      'handset.t2 – B4 – B3 – handset.r2',
    )
  })

  test('brings the command', () => {
    expect(run(join(home, 'node_modules/.bin/ringproof'), ['--version']).trim()).toBe(manifest.version)
  })
})
