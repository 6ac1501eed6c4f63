import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { folderWith } from './_folder.ts'

const root = fileURLToPath(new URL('../../../', import.meta.url))

/** A module of `host` as a file that node runs by itself: the build's, else one that is made of the sources for a test. */
export async function runnable(module: string): Promise<string> {
  if (process.env.RINGPROOF_BUILD === '1') return join(root, `dist/lib/host/${module}.js`)
  const outDir = folderWith({})
  await build({
    configFile: false,
    root,
    publicDir: false,
    logLevel: 'silent',
    ssr: { noExternal: true, external: ['mathjs'] },
    build: {
      ssr: true,
      outDir,
      rolldownOptions: {
        input: join(root, `src/host/${module}.ts`),
        output: { entryFileNames: `${module}.mjs`, codeSplitting: false },
      },
    },
  })
  return join(outDir, `${module}.mjs`)
}
