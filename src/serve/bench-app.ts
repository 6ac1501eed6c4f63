/** The local server as a function of a request. */
import { type Context, Hono } from 'hono'
import { saveAsked } from './body.ts'
import { checkFrom, checkToken } from './gate.ts'
import { HEADERS } from './headers.ts'
import type { PageFiles } from './page-files.ts'
import { quoted, Refusal } from './refusal.ts'
import type { SheetFolder } from './sheet-folder.ts'
import { sheetNameOf } from './sheet-name.ts'

/** What a server is made of. */
export interface BenchParts {
  readonly files: PageFiles
  /** Undefined where the demo fleet alone is shown. */
  readonly folder: SheetFolder | undefined
  readonly token: string
  /** Known once it listens. */
  readonly port: () => number
}

/** Answers requests. Nothing that it refuses has changed anything. */
export function benchApp({ files, folder, token, port }: BenchParts): {
  readonly fetch: (request: Request) => Promise<Response>
} {
  const app = new Hono()
  app.use('*', async (context, next) => {
    checkFrom(context.req.raw.headers, port())
    await next()
  })
  // by the address as it was written: what the router makes of it decides nothing
  app.all('*', async (context) => {
    const { pathname } = new URL(context.req.url)
    if (pathname === '/sheets' || pathname.startsWith('/sheets/')) {
      context.header('cache-control', 'no-store')
      checkToken(context.req.raw.headers, token)
      return pathname === '/sheets'
        ? listed(context, folder)
        : sheet(context, folder, pathname.slice('/sheets/'.length))
    }
    return pageFile(context, files, pathname)
  })
  app.onError((error, context) => {
    const refusal = error instanceof Refusal ? error : broke(error)
    context.header('cache-control', 'no-store')
    return context.json({ ...refusal.more, problems: [refusal.problem] }, refusal.status)
  })
  return {
    fetch: async (request) => {
      const response = await app.fetch(request)
      for (const [name, value] of Object.entries(HEADERS)) response.headers.set(name, value)
      return response
    },
  }
}

function listed(context: Context, folder: SheetFolder | undefined): Response {
  allow(context, 'GET')
  if (folder === undefined) return context.json({ folder: null, sheets: [], problems: [] })
  return context.json({ folder: folder.name, ...folder.list() })
}

async function sheet(context: Context, folder: SheetFolder | undefined, encoded: string): Promise<Response> {
  allow(context, 'GET', 'PUT')
  const file = sheetNameOf(encoded)
  if (folder === undefined) {
    throw new Refusal(404, {
      found: 'a bench without a folder',
      expected: 'a folder to read and write',
      mend: 'start it again as `ringproof bench <folder>`',
    })
  }
  if (context.req.method !== 'PUT') return context.json(folder.read(file))
  const { text, mark } = await saveAsked(context.req.raw)
  const saved = folder.save(file, text, mark)
  if ('mark' in saved) return context.json({ file, mark: saved.mark })
  throw new Refusal(
    409,
    {
      found: `${quoted(file)}, which ${saved.now === undefined ? 'is gone' : 'is another than was read'}`,
      expected: 'the file as it was read',
      mend: 'look at both texts, then save again or under another name',
    },
    { text: saved.now?.text ?? null, mark: saved.now?.mark ?? null },
  )
}

function pageFile(context: Context, files: PageFiles, pathname: string): Response {
  allow(context, 'GET', 'HEAD')
  const file = files.get(pathname)
  if (file === undefined) {
    throw new Refusal(404, {
      code: 'file-missing',
      found: quoted(pathname),
      expected: 'a file of the page, or `/sheets`',
    })
  }
  const cache = file.lasting ? 'private, max-age=31536000, immutable' : 'no-cache'
  return context.body(file.bytes, 200, { 'content-type': file.type, 'cache-control': cache })
}

/** @throws Refusal 405 */
function allow(context: Context, ...methods: readonly string[]): void {
  if (methods.includes(context.req.method)) return
  context.header('allow', methods.join(', '))
  throw new Refusal(405, {
    found: `the method ${quoted(context.req.method)}`,
    expected: methods.join(' or '),
  })
}

/** What is none of ours to expect; the details stay here. */
const broke = (error: Error): Refusal =>
  new Refusal(500, {
    code: 'ours',
    found: `\`${error.name}\``,
    expected: 'an answer',
    mend: 'this is a mistake of the program: please report it',
  })
