import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { portOf } from 'ringproof/cli/bench'
import { openBench } from 'ringproof/serve/bench-server'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { ringproof } from '../../faces/ringproof.ts'

let page: string
let folder: string
beforeAll(() => {
  page = mkdtempSync(join(tmpdir(), 'ringproof-page-'))
  folder = mkdtempSync(join(tmpdir(), 'ringproof-sheets-'))
  writeFileSync(join(page, 'index.html'), 'page')
  const files = { 'index.html': createHash('sha256').update('page').digest('hex') }
  writeFileSync(join(page, 'files.json'), JSON.stringify({ ringproof: 'page/1', files }))
})
afterAll(() => {
  for (const one of [page, folder]) rmSync(one, { recursive: true, force: true })
})

test('the bench is opened on a real socket, saves with its token, and closes', async () => {
  const open = await openBench(folder, 0, page)
  const { origin } = new URL(open.address)
  expect(open.address).toBe(`http://127.0.0.1:${open.port}/#view=bench&token=${open.token}`)
  expect(Buffer.from(open.token, 'base64url')).toHaveLength(32)
  expect(await (await fetch(origin)).text()).toBe('page')
  expect((await fetch(`${origin}/sheets`)).status).toBe(401)
  const headers = { 'x-ringproof-token': open.token, 'content-type': 'application/json' }
  const body = JSON.stringify({ text: 'one', mark: null })
  const saved = await fetch(`${origin}/sheets/a.yaml`, { method: 'PUT', headers, body })
  expect(saved.status).toBe(200)
  expect(await (await fetch(`${origin}/sheets/a.yaml`, { headers })).json()).toMatchObject({ text: 'one' })
  await open.close()
  await expect(fetch(origin)).rejects.toThrow()
})

test('of two that save at once one does, and the other is told', async () => {
  const open = await openBench(folder, 0, page)
  const headers = { 'x-ringproof-token': open.token, 'content-type': 'application/json' }
  const save = async (text: string): Promise<number> => {
    const body = JSON.stringify({ text, mark: null })
    const address = `http://127.0.0.1:${open.port}/sheets/both.yaml`
    return (await fetch(address, { method: 'PUT', headers, body })).status
  }
  const statuses = await Promise.all(['one', 'two', 'three', 'four'].map(save))
  expect(statuses.toSorted()).toEqual([200, 409, 409, 409])
  const [written] = ['one', 'two', 'three', 'four'].filter((_, k) => statuses[k] === 200)
  expect(readFileSync(join(folder, 'both.yaml'), 'utf8')).toBe(written)
  await open.close()
})

test.each([[['bench', '']], [['bench', '--write=']]])('an empty name is no folder: %j', async (words) => {
  expect((await ringproof(words)).code).toBe(2)
})

test('each start has a token of its own, and a port that is taken is refused', async () => {
  const open = await openBench(undefined, 0, page)
  const other = await openBench(undefined, 0, page)
  expect(other.token).not.toBe(open.token)
  await other.close()
  await expect(openBench(undefined, open.port, page)).rejects.toThrow(/is taken/)
  await open.close()
})

/** Sends bytes as they stand; all that comes until the server closes. */
const sent = (port: number, text: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text))
    let came = ''
    socket.setEncoding('utf8').on('data', (piece) => {
      came += piece
    })
    socket.on('error', reject).on('close', () => resolve(came))
  })

test.each<[string, (host: string) => string, number]>([
  ['no HTTP', () => 'nonsense\r\n\r\n', 400],
  ['a request without a host', () => 'GET / HTTP/1.1\r\n\r\n', 400],
  ['an old request without a host', () => 'GET / HTTP/1.0\r\n\r\n', 400],
  [
    'a whole address of another host',
    (host) => `GET http://evil.test/sheets HTTP/1.1\r\nHost: ${host}\r\n`,
    400,
  ],
  ['a whole address of its own', (host) => `GET http://${host}/sheets HTTP/1.1\r\nHost: ${host}\r\n`, 400],
  ['no address', (host) => `OPTIONS * HTTP/1.1\r\nHost: ${host}\r\n`, 400],
  ['an odd expectation', (host) => `GET / HTTP/1.1\r\nHost: ${host}\r\nExpect: tea\r\n`, 417],
  ['two hosts', (host) => `GET /sheets HTTP/1.1\r\nHost: ${host}\r\nHost: evil.test\r\n`, 421],
  ['two tokens', (host) => `GET /sheets HTTP/1.1\r\nHost: ${host}\r\nX-Ringproof-Token: no\r\n`, 401],
  ['a length that lies', (host) => `GET / HTTP/1.1\r\nHost: ${host}\r\nContent-Length: x\r\n`, 400],
  ['an echo', (host) => `TRACE / HTTP/1.1\r\nHost: ${host}\r\n`, 405],
])('%s is refused, with the policy', async (_what, text, status) => {
  const open = await openBench(folder, 0, page)
  const rest = `X-Ringproof-Token: ${open.token}\r\nConnection: close\r\n\r\n`
  const came = await sent(open.port, text(`127.0.0.1:${open.port}`) + rest)
  expect(came).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `))
  expect(came).toContain("default-src 'none'")
  expect(came).not.toContain('"sheets"')
  await open.close()
})

test('it closes while bodies are still to come and connections stand idle', async () => {
  const open = await openBench(folder, 0, page)
  const host = `127.0.0.1:${open.port}`
  const half = `PUT /sheets/half.yaml HTTP/1.1\r\nHost: ${host}\r\nX-Ringproof-Token: ${open.token}\r\n`
  const slow = sent(open.port, `${half}Content-Type: application/json\r\nContent-Length: 500\r\n\r\n{"text"`)
  const idle = Array.from({ length: 50 }, () => sent(open.port, '').catch(() => ''))
  await sent(open.port, 'nonsense\r\n\r\n')
  await open.close()
  expect(await slow.catch(() => '')).toBe('')
  await Promise.all(idle)
  expect(readdirSync(folder)).not.toContain('half.yaml')
})

test.each(['x', '-1', '65536', '1.5'])('the port %s is refused', async (port) => {
  expect(() => portOf(port)).toThrow('request-wrong')
  expect((await ringproof(['bench', `--port=${port}`])).code).toBe(2)
})

test('a port and a folder to open do not go with `--write`', async () => {
  expect(portOf('8642')).toBe(8642)
  const { code, err } = await ringproof(['bench', 'sheets', '--write', join(folder, 'page')])
  expect(code).toBe(2)
  expect(err).toContain('--write')
})
