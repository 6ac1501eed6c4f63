#!/usr/bin/env node
// `npm run mutate`: small changes of the source that some test must notice; outside CI. `npm run mutate -- solver` for
// one folder, `-- src/algebra/definite.ts` for one file, `-- --share 0.1` for a drawn tenth of the lines, whose seed is
// printed (`--seed 7` draws the same again). What survived is printed and kept in dist/mutate/.
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { Stryker } from '@stryker-mutator/core'
import { FOLDERS, suitesOf } from './suites.mjs'

process.chdir(fileURLToPath(new URL('../..', import.meta.url)))

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    share: { type: 'string', default: '1' },
    seed: { type: 'string', default: String(Math.floor(Date.now() / 1000)) },
  },
})
/** Lines that are drawn together. */
const WINDOW = 12
let state = Number(values.seed) >>> 0

/** A number from 0 to 1, the same for the same seed. */
function random() {
  state = (state + 0x9e3779b9) >>> 0
  let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b)
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32
}

/** Every source below a folder. */
function below(folder) {
  return readdirSync(folder, { recursive: true })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name}`)
    .sort()
}

/** A file, or the windows of it that were drawn. */
function drawn(file) {
  const share = Number(values.share)
  if (share >= 1) return [file]
  const lines = readFileSync(file, 'utf8').split('\n').length
  const windows = Array.from({ length: Math.ceil(lines / WINDOW) }, (_, k) => k * WINDOW + 1)
  return windows
    .filter(() => random() < share)
    .map((first) => `${file}:${first}-${Math.min(lines, first + WINDOW - 1)}`)
}

const sums = { noticed: 0, counted: 0 }
const wanted = positionals.length > 0 ? positionals : FOLDERS
if (Number(values.share) < 1) console.log(`lines drawn with seed ${values.seed}`)
for (const one of wanted) {
  const files = one.endsWith('.ts') ? [one] : below(`src/${one}`)
  const mutate = files.flatMap(drawn)
  if (mutate.length === 0) continue
  process.env.RINGPROOF_SUITES = suitesOf(one).join(',')
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
    clearTextReporter: { logTests: false, allowColor: false, reportScoreTable: false },
    jsonReporter: { fileName: `dist/mutate/${one.replaceAll('/', '-')}.json` },
    logLevel: 'warn',
    timeoutMS: 20_000,
  }).runMutationTest()
  const noticed = results.filter(({ status }) => status === 'Killed' || status === 'Timeout').length
  const counted =
    noticed + results.filter(({ status }) => status === 'Survived' || status === 'NoCoverage').length
  sums.noticed += noticed
  sums.counted += counted
  console.log(`${one}: ${score(noticed, counted)}`)
}
console.log(`all: ${score(sums.noticed, sums.counted)}`)

function score(noticed, counted) {
  const share = counted === 0 ? '-' : `${((100 * noticed) / counted).toFixed(1)} %`
  return `${noticed} of ${counted} changes noticed, ${share}`
}
