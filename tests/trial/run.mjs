#!/usr/bin/env node
// `npm run trial [-- set …]`: how often the diagnosis finds what is wrong, by the laws of `laws.json`; without sets
// named, all of them, and the tables go to docs/trial.md.
import { readFileSync, writeFileSync } from 'node:fs'
import { layOut } from '../../dist/lib/answer/book-order.js'
import { tableVariants } from '../../dist/lib/figures/table-variants.js'
import { packagedFolder } from '../../dist/lib/host/packaged.js'
import { folderShelf } from '../../dist/lib/host/shelf.js'
// biome-ignore lint/correctness/useImportExtensions: the declaration beside it is no module to import
import { layTrialOut, tryPairs, trySingles } from './one-set.mjs'
import { trialPage } from './page.mjs'

const laws = JSON.parse(readFileSync(new URL('laws.json', import.meta.url), 'utf8'))
const named = process.argv.slice(2)
const sets = named.length === 0 ? laws.sets : named
const shelf = folderShelf([], packagedFolder())

const results = []
for (const name of sets) {
  const since = performance.now()
  const laidOut = layOut({ target: name, on: laws.premises }, shelf)
  // seeded, so that the updates that are compared with fresh solves are the same ones every time
  const supply = (net, plans, changes) => tableVariants(net, plans, changes, { seed: laws.seeds.book })
  const alone = layTrialOut(laidOut, supply, false)
  const singles = trySingles(alone, laws, laws.seeds.singles)
  const together = layTrialOut(laidOut, supply, true)
  const pairs = tryPairs(together, laws, laws.seeds.pairs)
  results.push({ name, book: alone.book, singles, pairs })
  console.error(
    `${name}: ${singles.length} singles, ${pairs.length} pairs, ${Math.round((performance.now() - since) / 1000)} s`,
  )
}

const page = trialPage(results, laws)
console.log(page)
if (named.length === 0) writeFileSync(new URL('../../docs/trial.md', import.meta.url), `${page}\n`)
