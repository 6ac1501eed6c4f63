import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { SEED } from './support/seed.ts'

const root = fileURLToPath(new URL('..', import.meta.url))

/** `RINGPROOF_BUILD=1` proves the build with the very same suite. */
const onTheBuild = process.env.RINGPROOF_BUILD === '1'
const place = onTheBuild ? 'dist/lib' : 'src'
const ending = onTheBuild ? 'js' : 'ts'

/** Tests of the packed library: once is enough, and only a build can be packed. So it is with the built threads. */
const onlyOnTheBuild = [
  'tests/faces/pack.test.ts',
  'tests/unit/host/crew-built.test.ts',
  'tests/scenario/trial-built.test.ts',
  // the built page in a real browser
  'tests/browser/**',
]

/** Of the page only what the browser loads is built; its pure parts are tested on the sources alone. */
const onlyOnTheSources = ['tests/unit/web/**']

const strict = { lines: 95, branches: 90 }
const elsewhere = { lines: 85, branches: 85 }
const STRICT = ['algebra', 'solver', 'sheet', 'figures', 'checks']

export default defineConfig({
  root,
  resolve: {
    alias: [
      { find: /^ringproof$/, replacement: `${root}${place}/index.${ending}` },
      { find: /^ringproof\/(.+)$/, replacement: `${root}${place}/$1.${ending}` },
    ],
  },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: onTheBuild ? onlyOnTheSources : onlyOnTheBuild,
    setupFiles: ['tests/support/no-console.ts'],
    sequence: { shuffle: true, seed: SEED },
    retry: 0,
    allowOnly: false,
    testTimeout: 30_000,
    // every core works; by itself one of two would idle
    maxWorkers: '100%',
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      // what runs in a browser is tested there
      exclude: ['src/**/vite*.config.ts', 'src/web/**', 'src/layout/worker.ts'],
      reporter: ['text'],
      thresholds: {
        ...Object.fromEntries(STRICT.map((folder) => [`src/${folder}/**/*.ts`, strict])),
        [`src/{*.ts,!(${STRICT.join('|')})/**/*.ts}`]: elsewhere,
      },
    },
  },
})
