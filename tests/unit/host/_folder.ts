import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { onTestFinished } from 'vitest'

/** A folder with these files, gone when the test has ended. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'ringproof-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  for (const [file, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true })
    writeFileSync(join(folder, file), content)
  }
  return folder
}
