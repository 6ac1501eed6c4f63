import { spawn } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { bookStore } from 'ringproof/host/book-store'
import { expect, test } from 'vitest'
import { folderWith } from './_folder.ts'
import { runnable } from './_runnable.ts'

/** Starts a writer, and kills it when its file is written and does not stand in its place yet. */
async function killedWhileWriting(store: string, folder: string): Promise<string | null> {
  const file = fileURLToPath(new URL('./_write-and-die.mjs', import.meta.url))
  const child = spawn(process.execPath, [file, pathToFileURL(store).href, folder])
  let said = ''
  child.stderr.on('data', (data) => {
    said += data
  })
  return new Promise((resolve, reject) => {
    child.stdout.once('data', () => child.kill('SIGKILL'))
    child.on('error', reject)
    child.on('exit', (code, signal) =>
      said === '' ? resolve(signal ?? String(code)) : reject(new Error(said)),
    )
  })
}

test('a writer that is killed between writing and renaming leaves no entry, and harms no later one', async () => {
  const store = await runnable('book-store')
  const folder = folderWith({})
  expect(await killedWhileWriting(store, folder)).toBe('SIGKILL')
  const left = readdirSync(folder)
  expect(left).toHaveLength(1)
  expect(left[0]).toMatch(/\.tmp$/)
  const again = bookStore(folder)
  expect(again.read('key')).toBeUndefined()
  again.write('key', Uint8Array.of(1, 2, 3))
  expect(again.read('key')).toEqual(Uint8Array.of(1, 2, 3))
  // and one that is killed over an entry leaves that as it was
  expect(await killedWhileWriting(store, folder)).toBe('SIGKILL')
  expect(again.read('key')).toEqual(Uint8Array.of(1, 2, 3))
})
