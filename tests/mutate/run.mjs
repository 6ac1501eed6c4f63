#!/usr/bin/env node
// `npm run mutate`: small changes of the source that some test must notice; outside CI. `npm run mutate -- solver` for
// one folder, `-- src/algebra/definite.ts` for one file. The score and what survived are printed and kept in dist/.
import { fileURLToPath } from 'node:url'
import { Stryker } from '@stryker-mutator/core'

const root = fileURLToPath(new URL('../..', import.meta.url))
process.chdir(root)

const FOLDERS = ['algebra', 'solver', 'figures', 'checks']
const asked = process.argv.slice(2)
const mutate = (asked.length > 0 ? asked : FOLDERS).map((one) =>
  one.endsWith('.ts') ? one : `src/${one}/**/*.ts`,
)

const results = await new Stryker({
  mutate,
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutate/vitest.config.ts' },
  coverageAnalysis: 'perTest',
  concurrency: 2,
  ignoreStatic: true,
  // its rewriting of tsconfig.json asks TypeScript 7 for what only older ones have; vitest needs none
  tsconfigFile: 'none.json',
  tempDirName: 'dist/mutate/sandbox',
  ignorePatterns: ['dist', 'coverage', '.git'],
  reporters: ['clear-text', 'json'],
  clearTextReporter: { logTests: false, allowColor: false },
  jsonReporter: { fileName: 'dist/mutate/report.json' },
  logLevel: 'warn',
  timeoutMS: 20_000,
}).runMutationTest()

const noticed = results.filter(({ status }) => status === 'Killed' || status === 'Timeout').length
const counted = results.filter(({ status }) =>
  ['Killed', 'Timeout', 'Survived', 'NoCoverage'].includes(status),
).length
console.log(`${noticed} of ${counted} changes noticed: ${((100 * noticed) / counted).toFixed(1)} %`)
