import { createHash } from 'node:crypto'
import { benchApp } from 'ringproof/serve/bench-app'
import { checkFrom } from 'ringproof/serve/gate'
import { POLICY } from 'ringproof/serve/headers'
import type { SheetFolder } from 'ringproof/serve/sheet-folder'
import { describe, expect, test } from 'vitest'

const markOf = (text: string): string => createHash('sha256').update(text).digest('hex')
const PORT = 4321
const HOST = `127.0.0.1:${PORT}`

/** A folder in memory. */
function folderOf(texts: Record<string, string>): SheetFolder {
  const sheet = (file: string) => {
    const text = texts[file]
    return text === undefined ? undefined : { file, text, mark: markOf(text) }
  }
  return {
    name: 'box',
    list: () => ({ sheets: Object.keys(texts).flatMap((file) => sheet(file) ?? []), problems: [] }),
    read: (file) => {
      const found = sheet(file)
      if (found === undefined) throw new TypeError('a mistake of ours')
      return found
    },
    save: (file, text, mark) => {
      if ((sheet(file)?.mark ?? null) !== mark) return { now: sheet(file) }
      texts[file] = text
      return { mark: markOf(text) }
    },
  }
}

const files = new Map(
  (['/', '/assets/a-1.js'] as const).map((path) => [
    path,
    { bytes: new TextEncoder().encode(path), type: 'text/plain', lasting: path !== '/' },
  ]),
)

function bench(texts: Record<string, string> | undefined) {
  const folder = texts === undefined ? undefined : folderOf(texts)
  const app = benchApp({ files, folder, token: 'word', port: () => PORT })
  return async (
    path: string,
    { headers, ...rest }: RequestInit & { headers?: Record<string, string> } = {},
  ) => {
    const all = { host: HOST, 'x-ringproof-token': 'word', ...headers }
    const response = await app.fetch(new Request(`http://${HOST}${path}`, { ...rest, headers: all }))
    expect(response.headers.get('content-security-policy')).toBe(POLICY)
    expect(response.headers.get('x-content-type-options')).toBe('nosniff')
    return response
  }
}

const put = (body: unknown) => ({
  method: 'PUT',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})

describe('the local server', () => {
  test('lists, reads and saves sheets, and says their marks', async () => {
    const texts: Record<string, string> = { 'a.yaml': 'one' }
    const ask = bench(texts)
    const listed = await ask('/sheets')
    expect(listed.headers.get('cache-control')).toBe('no-store')
    expect(await listed.json()).toEqual({
      folder: 'box',
      sheets: [{ file: 'a.yaml', text: 'one', mark: markOf('one') }],
      problems: [],
    })
    const saved = await ask('/sheets/a.yaml', put({ text: 'two', mark: markOf('one') }))
    expect(await saved.json()).toEqual({ file: 'a.yaml', mark: markOf('two') })
    expect(await (await ask('/sheets/a.yaml')).json()).toMatchObject({ text: 'two' })
    const fresh = await ask('/sheets/sub%20folder/b.yaml', put({ text: 'x', mark: null }))
    expect(fresh.status).toBe(200)
    expect(texts['sub folder/b.yaml']).toBe('x')
  })

  test('answers a save of what has become another by what it is now', async () => {
    const ask = bench({ 'a.yaml': 'theirs' })
    const changed = await ask('/sheets/a.yaml', put({ text: 'mine', mark: markOf('before') }))
    expect(changed.status).toBe(409)
    expect(await changed.json()).toMatchObject({ text: 'theirs', mark: markOf('theirs') })
    const gone = await ask('/sheets/b.yaml', put({ text: 'mine', mark: markOf('before') }))
    expect(gone.status).toBe(409)
    expect(await gone.json()).toMatchObject({ text: null, mark: null })
  })

  test('without a folder lists none, and has no sheet', async () => {
    const ask = bench(undefined)
    expect(await (await ask('/sheets')).json()).toEqual({ folder: null, sheets: [], problems: [] })
    expect((await ask('/sheets/a.yaml')).status).toBe(404)
  })

  test('hands out the page to whoever opens it, and only its files', async () => {
    const ask = bench({})
    const page = await ask('/', { headers: { 'x-ringproof-token': '' } })
    expect(await page.text()).toBe('/')
    expect(page.headers.get('cache-control')).toBe('no-cache')
    expect((await ask('/assets/a-1.js')).headers.get('cache-control')).toContain('immutable')
    expect((await ask('/assets/../package.json')).status).toBe(404)
    const linked = {
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
      'sec-fetch-dest': 'document',
    }
    expect((await ask('/', { headers: linked })).status).toBe(200)
    expect((await ask('/', { headers: { ...linked, 'sec-fetch-dest': 'iframe' } })).status).toBe(403)
  })

  test.each([
    [{ 'x-ringproof-token': 'wore' }, 401],
    [{ 'x-ringproof-token': 'word and more' }, 401],
    [{ host: 'evil.test' }, 421],
    [{ origin: 'http://evil.test' }, 403],
    [{ origin: `http://localhost:${PORT}` }, 403],
    [{ 'sec-fetch-site': 'cross-site' }, 403],
    [{ host: `localhost:${PORT}`, origin: `http://localhost:${PORT}`, 'sec-fetch-site': 'same-origin' }, 200],
  ] as const)('asks who comes: %o gets %i', async (headers, status) => {
    const response = await bench({ 'a.yaml': 'one' })('/sheets', { headers })
    expect(response.status).toBe(status)
    if (status !== 200) expect(await response.text()).not.toContain('"text"')
  })

  test('at the usual port browsers name none', () => {
    const from = (host: string, port: number) => () =>
      checkFrom(new Headers({ host, origin: `http://${host}` }), port)
    expect(from('127.0.0.1', 80)).not.toThrow()
    expect(from('localhost', 80)).not.toThrow()
    expect(from('127.0.0.1', PORT)).toThrow(/^421/)
    expect(from('evil.test', 80)).toThrow(/^421/)
  })

  test('takes a body as it is, and no packed one', async () => {
    const texts: Record<string, string> = {}
    const { headers, ...rest } = put({ text: 'x', mark: null })
    const packed = { ...rest, headers: { ...headers, 'content-encoding': 'gzip' } }
    expect((await bench(texts)('/sheets/a.yaml', packed)).status).toBe(415)
    expect(texts).toEqual({})
  })

  test.each([
    ['no JSON', '{', 400],
    ['a list', '[]', 400],
    ['nothing', 'null', 400],
    ['no mark', '{"text":"a"}', 400],
    ['a text that is none', '{"text":1,"mark":null}', 400],
    ['a strange mark', '{"text":"a","mark":"x"}', 400],
    ['another key', '{"text":"a","mark":null,"__proto__":{}}', 400],
    ['half a character', '{"text":"\\ud800","mark":null}', 400],
    ['no UTF-8', new Uint8Array([0x7b, 0xff, 0x7d]), 400],
    ['what is said to be too long', ' '.repeat(7 << 20), 413],
  ])('a body that is %s is refused', async (_what, body, status) => {
    const texts: Record<string, string> = {}
    const { headers } = put({})
    const long = typeof body === 'string' ? { 'content-length': String(body.length) } : {}
    const init = { method: 'PUT', headers: { ...headers, ...long }, body }
    expect((await bench(texts)('/sheets/a.yaml', init)).status).toBe(status)
    expect(texts).toEqual({})
  })

  test('a body of another type is refused', async () => {
    const init = { ...put({ text: 'a', mark: null }), headers: { 'content-type': 'text/plain' } }
    expect((await bench({})('/sheets/a.yaml', init)).status).toBe(415)
  })

  test.each([
    ['POST', '/', 405],
    ['PUT', '/sheets', 405],
    ['DELETE', '/sheets/a.yaml', 405],
    ['GET', '/sheets/', 400],
    ['GET', '/%73heets', 404],
    ['GET', '/Sheets', 404],
  ])('%s %s is refused with %i', async (method, path, status) => {
    const response = await bench({ 'a.yaml': 'one' })(path, { method })
    expect(response.status).toBe(status)
    expect(response.headers.has('allow')).toBe(status === 405)
  })

  test('says of a mistake of its own that it is one, and no more', async () => {
    const response = await bench({})('/sheets/none.yaml')
    expect(response.status).toBe(500)
    const text = await response.text()
    expect(JSON.parse(text).problems).toMatchObject([{ code: 'ours' }])
    expect(text).not.toContain('a mistake of ours')
  })

  test('counts a body while it comes, and takes a text of exactly 1 MiB', async () => {
    const ask = bench({})
    const most = 'x\n'.repeat(1 << 19)
    expect((await ask('/sheets/a.yaml', put({ text: most, mark: null }))).status).toBe(200)
    expect((await ask('/sheets/b.yaml', put({ text: `${most}x`, mark: null }))).status).toBe(413)
    // a tool may write every letter beyond ASCII as its number
    const escaped = `{"text":"${'\\u00e9'.repeat(1 << 19)}","mark":null}`
    const { headers } = put({})
    expect((await ask('/sheets/d.yaml', { method: 'PUT', headers, body: escaped })).status).toBe(200)
    let given = 0
    const endless = new ReadableStream({
      pull(controller) {
        given += 1
        controller.enqueue(new Uint8Array(1 << 16).fill(32))
      },
    })
    const init = {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: endless,
      duplex: 'half',
    }
    expect(
      (await ask('/sheets/c.yaml', init as RequestInit & { headers: Record<string, string> })).status,
    ).toBe(413)
    expect(given).toBeLessThan(120)
  })
})
