/** Where the page comes from: the built command with a folder, or plain files from a plain server. */
import { spawn } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { extname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT: string = fileURLToPath(new URL('../../../', import.meta.url))
const COMMAND = process.env.RINGPROOF_COMMAND ?? `${ROOT}dist/cli/ringproof.js`
export const PAGE: string = process.env.RINGPROOF_PAGE ?? `${ROOT}dist/web`

export interface Site {
  /** What a person opens. */
  readonly address: string
  /** Without path and fragment. */
  readonly origin: string
  close(): Promise<void>
}

export interface BenchSite extends Site {
  readonly port: number
  readonly token: string
  /** The folder of sheets. */
  readonly folder: string
  /** Stops it as Ctrl-C does; the exit code. */
  stop(): Promise<number | null>
}

/** An empty folder that is thrown away with `close`. */
export const scratchFolder = (): string => mkdtempSync(join(tmpdir(), 'ringproof-bench-'))

/** Starts `ringproof bench` on a folder with copies of these sheets of the package. */
export async function benchSite(sheets: readonly string[] = []): Promise<BenchSite> {
  const folder = scratchFolder()
  for (const sheet of sheets) cpSync(`${ROOT}netlists/${sheet}`, join(folder, sheet.replace(/.*\//, '')))
  const child = spawn(process.execPath, [COMMAND, 'bench', folder, '--port', '0'], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let [out, err] = ['', '']
  const ended = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)))
  child.stderr.on('data', (piece) => {
    err += piece
  })
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (piece) => {
      out += piece
      if (out.includes('\n')) resolve()
    })
    child.once('exit', (code) => reject(new Error(`the bench ended with ${code}: ${err}`)))
  })
  const address = out.trim()
  const { origin, port, hash } = new URL(address)
  const token = new URLSearchParams(hash.slice(1)).get('token') ?? ''
  const stop = async (): Promise<number | null> => {
    child.kill('SIGINT')
    return ended
  }
  return {
    address,
    origin,
    port: Number(port),
    token,
    folder,
    stop,
    async close() {
      await stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
}

/** Any static server with the page in a folder of its own, as a person may have one; it knows nothing of Ringproof. */
export async function staticSite(page: string = PAGE, below: string = '/old/phones/'): Promise<Site> {
  const server = createServer(({ url = '/' }, response) => {
    const path = normalize(decodeURIComponent(new URL(url, 'http://any').pathname))
    const file = join(page, path.slice(below.length), path.endsWith('/') ? 'index.html' : '')
    if (!path.startsWith(below) || statSync(file, { throwIfNoEntry: false })?.isFile() !== true) {
      response.writeHead(404).end()
      return
    }
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'text/plain' }).end(readFileSync(file))
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  return {
    address: `${origin}${below}`,
    origin,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
