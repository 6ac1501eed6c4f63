import { fileURLToPath } from 'node:url'
import { defineConfig, type UserConfig } from 'vite'
import { pagePlugins, partsOfWorkers } from './vite.page.config.ts'

const root: string = fileURLToPath(new URL('../../', import.meta.url))

/** Modules of the library do nothing when they are loaded: what nobody asks of one is left out. */
const bare = [{ test: /[\\/]src[\\/](?!web[\\/])/, sideEffects: false }]

/** The page and its workers: files that any static server can hand out. */
const config: UserConfig = defineConfig({
  root: `${root}src/web`,
  base: './',
  publicDir: false,
  plugins: pagePlugins(root),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: {
    format: 'es',
    plugins: () => [partsOfWorkers],
    rolldownOptions: { treeshake: { moduleSideEffects: bare } },
  },
  build: {
    outDir: `${root}dist/web`,
    emptyOutDir: true,
    target: 'es2023',
    minify: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: true,
    rolldownOptions: { treeshake: { moduleSideEffects: bare } },
  },
})
export default config
