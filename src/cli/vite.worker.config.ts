import { fileURLToPath } from 'node:url'
import { defineConfig, type UserConfig } from 'vite'

const root: string = fileURLToPath(new URL('../../', import.meta.url))

/**
 * The thread of a crew as one file beside the command, which starts it by its name. It is built after the command,
 * whose build empties the folder. What only the command needs is left out of it.
 */
const config: UserConfig = defineConfig({
  root,
  publicDir: false,
  ssr: { noExternal: true, external: ['mathjs'], target: 'node' },
  build: {
    outDir: 'dist/cli',
    emptyOutDir: false,
    target: 'node20',
    minify: true,
    reportCompressedSize: false,
    ssr: true,
    rolldownOptions: {
      input: `${root}src/host/crew-worker.ts`,
      output: { entryFileNames: 'crew-worker.js', codeSplitting: false },
    },
  },
})
export default config
