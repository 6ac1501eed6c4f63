import {
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { request } from 'node:http'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { chromiumHere } from './support/chromium.ts'
import { type BenchSite, benchSite, staticSite } from './support/site.ts'

const chromium = chromiumHere()
let site: BenchSite
let outside: string

/** Every file below a folder with its bytes, its sort and its time: what an attack may not change. */
function listing(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .map((path) => {
      const status = lstatSync(join(folder, path))
      const bytes = status.isFile() ? readFileSync(join(folder, path)).toString('base64') : ''
      return `${path} ${status.mode} ${status.mtimeMs} ${bytes}`
    })
}

beforeAll(async () => {
  site = await benchSite(['sets/fescue.yaml'])
  outside = mkdtempSync(join(tmpdir(), 'ringproof-outside-'))
  writeFileSync(join(outside, 'secret.yaml'), 'secret: 1\n')
  symlinkSync(outside, join(site.folder, 'way-out'))
  symlinkSync(join(outside, 'secret.yaml'), join(site.folder, 'link.yaml'))
  symlinkSync(join(outside, 'not-there.yaml'), join(site.folder, 'dangling.yaml'))
  for (const inner of ['.hidden', 'node_modules', 'inner']) mkdirSync(join(site.folder, inner))
  symlinkSync(join(site.folder, '.hidden'), join(site.folder, 'inner', 'to-hidden'))
  writeFileSync(join(site.folder, '.hidden', 'kept.yaml'), 'kept: 1\n')
  linkSync(join(outside, 'secret.yaml'), join(site.folder, 'inner', 'twin.yaml'))
})
afterAll(async () => {
  await site?.close()
  rmSync(outside, { recursive: true, force: true })
})

let before: string[]
const all = (): string[] => [...listing(site.folder), ...listing(outside)]
beforeEach(() => {
  before = all()
})
afterEach(() => {
  expect(all()).toEqual(before)
})

interface Came {
  readonly status: number
  readonly headers: Readonly<Record<string, unknown>>
  readonly body: string
}

const SAVE = JSON.stringify({ text: 'evil: 1\n', mark: null })

/** One request as written: the path is sent as it stands, and any header may be set. */
function ask(
  method: string,
  path: string,
  headers: Record<string, string | undefined> = {},
  body?: string | Buffer,
): Promise<Came> {
  const sent = Object.entries({
    'x-ringproof-token': site.token,
    ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    ...headers,
  }).filter(([, value]) => value !== undefined)
  return new Promise((resolve, reject) => {
    const asking = request(
      { agent: false, host: '127.0.0.1', port: site.port, method, path, headers: Object.fromEntries(sent) },
      (response) => {
        let text = ''
        response.setEncoding('utf8').on('data', (piece) => {
          text += piece
        })
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
        )
      },
    )
    asking.on('error', reject)
    asking.end(body)
  })
}

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; worker-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'"

function expectGuarded({ headers }: Came): void {
  expect(headers).toMatchObject({
    'content-security-policy': POLICY,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
  })
  expect(Object.keys(headers).filter((name) => name.startsWith('access-control-'))).toEqual([])
}

describe('a request is refused, and writes nothing,', () => {
  test.each<[what: string, headers: Record<string, string | undefined>, status: number]>([
    ['to a foreign host', { host: 'evil.test' }, 421],
    ['to a foreign host with the right port', { host: 'evil.test:PORT' }, 421],
    ['to a host with the wrong port', { host: '127.0.0.1:1' }, 421],
    ['from a foreign origin', { origin: 'http://evil.test' }, 403],
    ['from the origin of nobody', { origin: 'null' }, 403],
    ['from the same host by another port', { origin: 'http://127.0.0.1:1' }, 403],
    ['that the browser says is of another site', { 'sec-fetch-site': 'cross-site' }, 403],
    ['that the browser says is of a sister site', { 'sec-fetch-site': 'same-site' }, 403],
    ['without a token', { 'x-ringproof-token': undefined }, 401],
    ['with another token of the same length', { 'x-ringproof-token': 'A'.repeat(43) }, 401],
    ['with an empty token', { 'x-ringproof-token': '' }, 401],
    ['with another sort of body', { 'content-type': 'text/plain' }, 415],
    ['with a body that was packed', { 'content-encoding': 'gzip' }, 415],
    ['with the body of a form', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
  ])('%s', async (_what, headers, status) => {
    const meant = Object.fromEntries(
      Object.entries(headers).map(([name, value]) => [name, value?.replace('PORT', String(site.port))]),
    )
    const came = await ask('PUT', '/sheets/new.yaml', meant, SAVE)
    expect(came.status).toBe(status)
    expect(JSON.parse(came.body).problems).toMatchObject([{ severity: 'error' }])
    expectGuarded(came)
    if (status === 415) return
    const read = await ask('GET', '/sheets', meant)
    expect(read.status).toBe(status)
    expect(read.body).not.toContain('fescue')
  })

  test.each([
    ['..', '/sheets/../new.yaml'],
    ['.. further down', '/sheets/inner/../../new.yaml'],
    ['.. encoded', '/sheets/%2e%2e/new.yaml'],
    ['.. with an encoded slash', '/sheets/..%2fnew.yaml'],
    ['.. encoded twice', '/sheets/%252e%252e%252fnew.yaml'],
    ['.. with a backslash', '/sheets/..%5cnew.yaml'],
    ['.. overlong', '/sheets/%c0%ae%c0%ae/new.yaml'],
    ['the root', '/sheets//etc/new.yaml'],
    ['the root encoded', '/sheets/%2ftmp%2fnew.yaml'],
    ['a drive', '/sheets/c:new.yaml'],
    ['a NUL', '/sheets/new.yaml%00.yaml'],
    ['a NUL before another ending', '/sheets/new.txt%00.yaml'],
    ['a line end', '/sheets/new%0a.yaml'],
    ['another ending', '/sheets/new.js'],
    ['no ending', '/sheets/new'],
    ['nothing', '/sheets/'],
    ['a hidden folder', '/sheets/.hidden/new.yaml'],
    ['a hidden file', '/sheets/.new.yaml'],
    ['node_modules', '/sheets/node_modules/new.yaml'],
    ['a link to a folder outside', '/sheets/way-out/new.yaml'],
    ['a link to a hidden folder', '/sheets/inner/to-hidden/new.yaml'],
    ['a folder that is not there', '/sheets/none/new.yaml'],
    ['a file for a folder', '/sheets/fescue.yaml/new.yaml'],
    ['a folder too deep', '/sheets/a/b/c/d/new.yaml'],
    ['a name that is too long', `/sheets/${'a'.repeat(300)}.yaml`],
  ])('to write by %s', async (_what, path) => {
    const came = await ask('PUT', path, {}, SAVE)
    expect([400, 403, 404, 405]).toContain(came.status)
    expect(JSON.parse(came.body).problems).toHaveLength(1)
    expectGuarded(came)
  })

  test.each([
    ['a link to a sheet outside', '/sheets/link.yaml'],
    ['a link to nothing', '/sheets/dangling.yaml'],
    ['a link to a folder outside', '/sheets/way-out/secret.yaml'],
    ['a link to a hidden folder', '/sheets/inner/to-hidden/kept.yaml'],
    ['a hidden folder', '/sheets/.hidden/kept.yaml'],
  ])('to read or write by %s', async (_what, path) => {
    const read = await ask('GET', path)
    expect([400, 403]).toContain(read.status)
    expect(read.body).not.toMatch(/secret: 1|kept: 1/)
    expect([400, 403]).toContain((await ask('PUT', path, {}, SAVE)).status)
  })

  test('when its body is huge, said or not said', async () => {
    const huge = JSON.stringify({ text: 'x'.repeat(8 << 20), mark: null })
    // whoever goes on sending is cut off, and may see that before the answer
    const cut = () => ({ status: 413 })
    expect((await ask('PUT', '/sheets/new.yaml', {}, huge).catch(cut)).status).toBe(413)
    const unsaid = { 'transfer-encoding': 'chunked' }
    expect((await ask('PUT', '/sheets/new.yaml', unsaid, huge).catch(cut)).status).toBe(413)
    const long = JSON.stringify({ text: 'x'.repeat((1 << 20) + 1), mark: null })
    expect((await ask('PUT', '/sheets/new.yaml', {}, long)).status).toBe(413)
  })

  test.each([
    ['no JSON', '{'],
    ['a list', '[]'],
    ['no mark', '{"text":"a"}'],
    ['a strange mark', '{"text":"a","mark":"x"}'],
    ['another key', '{"text":"a","mark":null,"path":"../x"}'],
    ['half a character', '{"text":"\\ud800","mark":null}'],
    ['no UTF-8', Buffer.from([0x7b, 0xff, 0x7d])],
  ])('when its body is %s', async (_what, body) => {
    expect((await ask('PUT', '/sheets/new.yaml', {}, body)).status).toBe(400)
  })

  test.each(['POST', 'DELETE', 'PATCH', 'OPTIONS'])('by %s', async (method) => {
    const came = await ask(method, '/sheets/fescue.yaml')
    expect(came.status).toBe(405)
    expectGuarded(came)
  })

  test('when a sheet has become another, or is already there', async () => {
    const taken = await ask('PUT', '/sheets/fescue.yaml', {}, SAVE)
    expect(taken.status).toBe(409)
    const { text, mark } = JSON.parse(taken.body)
    expect(text).toBe(readFileSync(join(site.folder, 'fescue.yaml'), 'utf8'))
    expect(mark).toMatch(/^[0-9a-f]{64}$/)
    const stale = JSON.stringify({ text: 'evil: 1\n', mark: 'a'.repeat(64) })
    expect((await ask('PUT', '/sheets/fescue.yaml', {}, stale)).status).toBe(409)
  })

  test('that is no HTTP at all', async () => {
    const came = await new Promise<string>((resolve) => {
      const socket = connect(site.port, '127.0.0.1', () => socket.write('GET\0/ nonsense\r\n\r\n'))
      let text = ''
      socket.on('data', (piece) => {
        text += piece
      })
      socket.on('close', () => resolve(text))
    })
    expect(came).toMatch(/^HTTP\/1\.1 400 /)
    expect(came).toContain("default-src 'none'")
  })
})

test('what lies outside or is hidden is not listed either', async () => {
  const { body } = await ask('GET', '/sheets')
  const { sheets, problems } = JSON.parse(body)
  expect(sheets.map(({ file }: { file: string }) => file)).toEqual(['fescue.yaml', 'inner/twin.yaml'])
  expect(JSON.stringify(problems)).toContain('link.yaml')
})

test('another page in the same browser can neither read nor write, nor frame the bench', async () => {
  const other = await staticSite()
  const person = await chromium.person()
  try {
    const page = await person.newPage()
    await page.goto(`${other.address}licences.txt`)
    const came = await page.evaluate(
      async ([origin, token, body]) => {
        const outcomes: string[] = []
        const attempts: [string, RequestInit][] = [
          ['/sheets', { headers: { 'x-ringproof-token': token } }],
          ['/sheets/new.yaml', { method: 'PUT', headers: { 'x-ringproof-token': token }, body }],
          ['/sheets/new.yaml', { method: 'POST', mode: 'no-cors', body }],
        ]
        for (const [path, how] of attempts) {
          const text = await fetch(origin + path, how)
            .then((response) => response.text())
            .catch(() => 'refused')
          outcomes.push(text)
        }
        const frame = document.createElement('iframe')
        frame.src = origin
        document.body.append(frame)
        await new Promise((resolve) => frame.addEventListener('load', resolve))
        outcomes.push(frame.contentDocument === null ? 'refused' : 'framed')
        return outcomes
      },
      [site.origin, site.token, SAVE] as const,
    )
    expect(came.filter((one) => one !== 'refused' && one !== '')).toEqual([])
  } finally {
    await person.close()
    await other.close()
  }
})
