#!/usr/bin/env node
// `npm run speed`: what the built library takes, beside others in the same run. A subject a file, with `rows(outside)`
// for the table and `measure()` for a fresh process. Ends with 1 where a goal is missed; `-- small` runs one subject.
import * as allocation from './allocation.mjs'
import * as bench from './bench.mjs'
import * as book from './book.mjs'
import * as building from './building.mjs'
import { buildIfStale } from './built.mjs'
import * as checks from './checks.mjs'
import { openOutside } from './outside.mjs'
import * as page from './page.mjs'
import * as small from './small.mjs'
import { machine, table } from './table.mjs'
import * as threads from './threads.mjs'
import * as variants from './variants.mjs'

const subjects = { small, building, allocation, variants, book, threads, checks, bench, page }

const wanted = process.argv.slice(2)
const unknown = wanted.filter((name) => !(name in subjects))
if (unknown.length > 0) {
  console.error(`no subject ${unknown.join(', ')}; there are ${Object.keys(subjects).join(', ')}`)
  process.exit(2)
}
buildIfStale()
console.log(machine())
const outside = openOutside()
try {
  const rows = []
  for (const [name, subject] of Object.entries(subjects)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue
    rows.push(...(await subject.rows(outside)))
  }
  console.log(table(rows))
  if (rows.some(({ met }) => met === false)) process.exitCode = 1
} finally {
  outside.close()
}
