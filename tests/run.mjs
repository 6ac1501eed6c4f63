#!/usr/bin/env node
// `npm test`: every step in order, a failing one does not stop the rest. The last line alone says the sum.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const scratch = mkdtempSync(join(tmpdir(), 'ringproof-test-'))
const bin = (name) => join(root, 'node_modules', '.bin', name)

/** What one step came to: how many of its tests, or of its single question, passed and failed. */
const whole = (ok) => ({ passed: ok ? 1 : 0, failed: ok ? 0 : 1 })

/** Runs one program with its output shown. True when it ended with 0. */
function run(program, args, env = {}) {
  const { status, error } = spawnSync(program, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  })
  if (error) console.error(`could not start ${program}: ${error.message}`)
  return status === 0
}

/** The newest change below a path, folders included: a deleted file changes its folder. */
function newest(path) {
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))))
}

/** True when all that `npm run build` makes is there and younger than all that it is made from. */
function buildIsFresh() {
  const made = [
    'dist/lib/index.js',
    'dist/cli/ringproof.js',
    'dist/cli/crew-worker.js',
    'dist/web/index.html',
    'dist/types/index.d.ts',
  ].map((file) => join(root, file))
  if (!made.every(existsSync)) return false
  const youngest = Math.max(
    ...['src', 'netlists', 'package.json', 'package-lock.json', 'tsconfig.json'].map((name) =>
      newest(join(root, name)),
    ),
  )
  return made.every((file) => statSync(file).mtimeMs > youngest)
}

/**
 * Runs the suite and counts its tests. A file that could not even be read holds no counted test, so it
 * counts as one failure; so does a run that ends badly although no test failed (a coverage miss, an
 * error outside any test, no report at all). That the run itself ended well counts as one passed.
 */
function suite(name, args, env) {
  const report = join(scratch, `${name}.json`)
  const ok = run(
    bin('vitest'),
    [
      'run',
      '-c',
      'tests/vitest.config.ts',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...args,
    ],
    env,
  )
  if (!existsSync(report)) return whole(false)
  const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'))
  const unread = testResults.filter(({ status, assertionResults }) => {
    return status === 'failed' && assertionResults.every((test) => test.status !== 'failed')
  }).length
  const failed = numFailedTests + unread
  if (failed > 0) return { passed: numPassedTests, failed }
  const { passed, failed: ended } = whole(ok && numPassedTests > 0)
  return { passed: numPassedTests + passed, failed: ended }
}

const steps = [
  [
    'types',
    () =>
      whole(
        [
          run(bin('tsc'), ['-p', '.']),
          run(bin('tsc'), ['-p', 'src/web']),
          run(bin('tsc'), ['-p', 'tests']),
        ].every(Boolean),
      ),
  ],
  ['lint and format', () => whole(run(bin('biome'), ['ci', '--error-on-warnings']))],
  ['tests on the sources, with coverage', () => suite('sources', ['--coverage'], {})],
  ['a fresh build', () => whole(buildIsFresh() || run('npm', ['run', 'build']))],
  [
    'the same tests on the build',
    () => suite('build', ['--coverage.enabled=false'], { RINGPROOF_BUILD: '1' }),
  ],
]

const sum = { passed: 0, failed: 0 }
const summary = []
for (const [name, step] of steps) {
  console.log(`\n== ${name}`)
  const { passed, failed } = step()
  sum.passed += passed
  sum.failed += failed
  summary.push(`${failed === 0 ? 'passed' : 'FAILED'}  ${name}: ${passed} passed, ${failed} failed`)
}
rmSync(scratch, { recursive: true, force: true })
console.log(`\n${summary.join('\n')}\n`)
console.log(`${sum.passed} passed, ${sum.failed} failed`)
process.exitCode = sum.failed === 0 ? 0 : 1
