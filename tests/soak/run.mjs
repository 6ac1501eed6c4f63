#!/usr/bin/env node
// `npm run soak`: random circuits with new seeds, which are printed; outside CI. What it finds becomes a fixture in
// tests/regression. `-- --seeds 20` for fewer, `-- --first 7` to begin with a seed that was printed.
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { createServer, createServerModuleRunner } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { values } = parseArgs({
  options: {
    seeds: { type: 'string', default: '1000' },
    first: { type: 'string', default: String(Math.floor(Date.now() / 1000)) },
    wide: { type: 'string', default: '1000' },
  },
})
const [seeds, first, wide] = [values.seeds, values.first, values.wide].map(Number)
if (![seeds, first, wide].every(Number.isSafeInteger)) {
  console.error('--seeds, --first and --wide take whole numbers')
  process.exit(2)
}
const server = await createServer({
  root,
  configFile: false,
  logLevel: 'error',
  server: { middlewareMode: true, watch: null, hmr: false },
  optimizeDeps: { noDiscovery: true },
  resolve: {
    alias: [
      { find: /^ringproof$/, replacement: `${root}src/index.ts` },
      { find: /^ringproof\/(.+)$/, replacement: `${root}src/$1.ts` },
    ],
  },
})
const runner = createServerModuleRunner(server.environments.ssr)
try {
  const { soak } = await runner.import(`${root}tests/soak/soak.ts`)
  const findings = await soak({ seeds, first, wide }, (line) => console.log(line))
  process.exitCode = findings === 0 ? 0 : 1
} finally {
  await runner.close()
  await server.close()
}
