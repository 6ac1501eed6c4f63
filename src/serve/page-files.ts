/** The files of the page as the server hands them out: all read at the start, by an explicit list. */
import { readFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { builtPage } from './built-page.ts'

export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly type: string
  /** Its name changes with its content. */
  readonly lasting: boolean
}

/** Files by the path of their address. */
export type PageFiles = ReadonlyMap<string, PageFile>

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
}

/** What only a page without this server needs. */
const ELSEWHERE = new Set(['service-worker.js', 'manifest.webmanifest'])

/** @throws ProblemError `ours` where the page is not built */
export function pageFiles(folder?: string): PageFiles {
  const built = builtPage(folder)
  const found = new Map<string, PageFile>()
  for (const path of Object.keys(built.files)) {
    const type = TYPES[extname(path)]
    if (type === undefined || ELSEWHERE.has(path)) continue
    const bytes = Uint8Array.from(readFileSync(join(built.folder, path)))
    found.set(`/${path}`, { bytes, type, lasting: path.startsWith('assets/') })
  }
  const index = found.get('/index.html')
  if (index !== undefined) found.set('/', index)
  return found
}
