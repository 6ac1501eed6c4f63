import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { expect, test } from 'vitest'
import { folderWith } from './_folder.ts'
import { runnable } from './_runnable.ts'

/** Keeps an entry in a folder, in a process of its own: a folder that would hang it hangs no test. */
function kept(store: string, folder: string): { readonly ended: boolean; readonly found: unknown } {
  const file = fileURLToPath(new URL('./_write-and-end.mjs', import.meta.url))
  const { status, stdout, stderr } = spawnSync(process.execPath, [file, pathToFileURL(store).href, folder], {
    encoding: 'utf8',
    timeout: 20_000,
    killSignal: 'SIGKILL',
  })
  if (stderr !== '') throw new Error(stderr)
  return { ended: status === 0, found: stdout === '' ? undefined : JSON.parse(stdout) }
}

test('a folder that the system refuses to make, in whatever way, is a store that keeps nothing', async () => {
  const store = await runnable('book-store')
  const there = folderWith({ file: 'no folder' })
  const NOTHING = { ended: true, found: [] }
  // where the kernel shows itself as files it answers "not there" to every folder that is to be made
  if (existsSync('/proc/self')) expect(kept(store, '/proc/nope/ringproof')).toEqual(NOTHING)
  expect(kept(store, join(there, 'file'))).toEqual(NOTHING)
  expect(kept(store, join(there, 'file', 'ringproof'))).toEqual(NOTHING)
  // a name longer than any system takes
  expect(kept(store, join(there, 'n'.repeat(5000), 'ringproof'))).toEqual(NOTHING)
  mkdirSync(join(there, 'half'))
  expect(kept(store, join(there, 'half', 'a', 'b'))).toEqual({ ended: true, found: [1, 2, 3] })
})
