import { fileURLToPath } from 'node:url'
import { defineConfig, mergeConfig } from 'vitest/config'
import usual from '../vitest.config.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The usual suite under mutation: the tests that `run.mjs` names, in their own order, without coverage of their own. */
const { test: _, ...rest } = usual

export default mergeConfig(
  rest,
  defineConfig({
    root,
    test: {
      include: (process.env.RINGPROOF_SUITES ?? 'tests/unit/**/*.test.ts').split(','),
      setupFiles: ['tests/support/no-console.ts'],
      testTimeout: 60_000,
      coverage: { enabled: false },
    },
  }),
)
