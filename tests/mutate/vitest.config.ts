import { fileURLToPath } from 'node:url'
import { defineConfig, mergeConfig } from 'vitest/config'
import usual from '../vitest.config.ts'

/** Suites that judge arithmetic in the process; those that start programs or read documents notice little of it. */
const SUITES = ['unit', 'contracts', 'laws', 'oracles', 'library', 'scenario', 'regression']

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The suite under mutation: the usual one without order by chance and without coverage of its own. */
const { test: _, ...rest } = usual

export default mergeConfig(
  rest,
  defineConfig({
    root,
    test: {
      include: SUITES.map((suite) => `tests/${suite}/**/*.test.ts`),
      setupFiles: ['tests/support/no-console.ts'],
      testTimeout: 60_000,
      coverage: { enabled: false },
    },
  }),
)
