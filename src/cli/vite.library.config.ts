import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig, type UserConfig } from 'vite'

const root: string = fileURLToPath(new URL('../../', import.meta.url))
const manifest: { dependencies: Record<string, string> } = JSON.parse(
  readFileSync(`${root}package.json`, 'utf8'),
)
const dependencies: string[] = Object.keys(manifest.dependencies)

/** Every module of `src` as an entry of its own, the page and these configurations left out. */
function entries(): Record<string, string> {
  const files = readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.ts') && !/^web\/|(^|\/)vite\.[^/]*config\.ts$/.test(file))
    .sort()
  return Object.fromEntries(files.map((file) => [file.slice(0, -'.ts'.length), `${root}src/${file}`]))
}

/**
 * The library: `dist/lib` mirrors `src`, one output file a source file, so that the tests can be
 * pointed at either. Dependencies stay outside; nothing is minified.
 */
const config: UserConfig = defineConfig({
  root,
  publicDir: false,
  build: {
    outDir: 'dist/lib',
    emptyOutDir: true,
    target: 'es2023',
    minify: false,
    sourcemap: true,
    reportCompressedSize: false,
    ssr: true,
    rolldownOptions: {
      input: entries(),
      external: (id) =>
        id.startsWith('node:') || dependencies.some((name) => id === name || id.startsWith(`${name}/`)),
      preserveEntrySignatures: 'strict',
      output: { preserveModules: true, preserveModulesRoot: 'src', entryFileNames: '[name].js' },
    },
  },
})
export default config
