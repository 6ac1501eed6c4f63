import { chmodSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin, type UserConfig } from 'vite'

const root: string = fileURLToPath(new URL('../../', import.meta.url))
const command = 'ringproof.js'

/** Lets the built file be started by its name: a first line that names node, and the right to run. */
const executable: Plugin = {
  name: 'executable',
  generateBundle(_options, bundle) {
    const built = bundle[command]
    if (built?.type !== 'chunk') throw new Error(`the build made no ${command}`)
    if (!built.code.startsWith('#!')) built.code = `#!/usr/bin/env node\n${built.code}`
  },
  writeBundle(options) {
    chmodSync(`${options.dir}/${command}`, 0o755)
  },
}

/**
 * The command line as one file with all its dependencies inside: it starts in half the time of the
 * same modules read one by one. mathjs stays outside, a dependency that is installed beside it: only a second
 * opinion loads it, and inside the file every start would pay for reading it. Names are kept short for the same reason.
 */
const config: UserConfig = defineConfig({
  root,
  publicDir: false,
  ssr: { noExternal: true, external: ['mathjs'], target: 'node' },
  plugins: [executable],
  build: {
    outDir: 'dist/cli',
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    reportCompressedSize: false,
    ssr: true,
    rolldownOptions: {
      input: `${root}src/cli/main.ts`,
      output: { entryFileNames: command, codeSplitting: false },
    },
  },
})
export default config
