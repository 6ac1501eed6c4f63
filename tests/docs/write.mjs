#!/usr/bin/env node
// `npm run docs`: writes the JSON Schemas and the reference of the sheets from the built library; a folder
// behind it is written into in place of the repository.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
// biome-ignore lint/correctness/useImportExtensions: node runs this file, the declaration is for the tests
import { generate } from './generate.mjs'

const root = fileURLToPath(new URL('../../', import.meta.url))
const into = process.argv[2] ?? root
const built = (module) => import(new URL(`../../dist/lib/${module}.js`, import.meta.url).href)
const modules = await Promise.all(
  ['sheet/json-schema', 'sheet/schema', 'report/json-answers', 'parts/index', 'quantities/units'].map(built),
)
const library = Object.assign({}, ...modules)
const files = generate(library, (path) => readFileSync(join(root, path), 'utf8'))
for (const [path, text] of Object.entries(files)) {
  mkdirSync(dirname(join(into, path)), { recursive: true })
  writeFileSync(join(into, path), text)
  console.log(path)
}
