/** The local server on its socket. */
import { randomBytes } from 'node:crypto'
import { createServer, type RequestListener, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { getRequestListener } from '@hono/node-server'
import { refuse } from '../problem.ts'
import { benchApp } from './bench-app.ts'
import { diskFolder } from './disk-folder.ts'
import { HEADERS } from './headers.ts'
import { pageFiles } from './page-files.ts'

/** This machine alone. */
const HERE = '127.0.0.1'

export interface OpenBench {
  /** With the view and the token in its fragment, which no browser sends. */
  readonly address: string
  readonly token: string
  readonly port: number
  close(): Promise<void>
}

/**
 * Opens the bench.
 *
 * @param folder sheets to read and write; none when undefined
 * @param port 0 for any that is free
 * @param page where the built page lies, when not in the package
 * @throws ProblemError `file-missing`, `request-wrong` where the port is taken, `ours` where the page is not built
 */
export async function openBench(
  folder: string | undefined,
  port: number = 0,
  page?: string,
): Promise<OpenBench> {
  const token = randomBytes(32).toString('base64url')
  let open = 0
  const app = benchApp({
    folder: folder === undefined ? undefined : diskFolder(folder),
    files: pageFiles(page),
    token,
    port: () => open,
  })
  const answer = getRequestListener(app.fetch)
  const hear: RequestListener = (request, response) => {
    // also on what is answered before the app is asked
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value)
    // a whole address would be taken at its word, whatever the host beside it; only proxies are asked so
    if (request.url?.startsWith('/') && request.headers.host !== undefined) void answer(request, response)
    else response.writeHead(400, { connection: 'close' }).end()
  }
  // without a host it is refused here, where the headers are known
  const times = { requestTimeout: 30_000, headersTimeout: 10_000, requireHostHeader: false }
  const server = createServer(times, hear)
  server.on('checkExpectation', (_request, response: ServerResponse) => {
    response.writeHead(417, { ...HEADERS, connection: 'close' }).end()
  })
  server.on('clientError', (_error, socket) => {
    if (!socket.writable) return
    const lines = Object.entries(HEADERS).map(([name, value]) => `${name}: ${value}\r\n`)
    socket.end(`HTTP/1.1 400 Bad Request\r\n${lines.join('')}content-length: 0\r\nconnection: close\r\n\r\n`)
  })
  open = await listening(server, port)
  return {
    address: `http://${HERE}:${open}/#view=bench&token=${token}`,
    token,
    port: open,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

/** @throws ProblemError where the port cannot be had */
function listening(server: Server, port: number): Promise<number> {
  return new Promise<number>((resolve, reject) => {
    server.once('error', reject)
    server.listen({ host: HERE, port, exclusive: true }, () => {
      server.off('error', reject)
      resolve((server.address() as AddressInfo).port)
    })
  }).catch((error: NodeJS.ErrnoException) =>
    refuse({
      code: 'request-wrong',
      found: `the port ${port}, which ${error.code === 'EADDRINUSE' ? 'is taken' : 'may not be used'}`,
      expected: 'a free port',
      mend: 'leave `--port` out: a free one is found',
    }),
  )
}
