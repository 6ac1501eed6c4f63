import { createHash } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
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

test('each start has a token of its own, and a port that is taken is refused', async () => {
  const open = await openBench(undefined, 0, page)
  const other = await openBench(undefined, 0, page)
  expect(other.token).not.toBe(open.token)
  await other.close()
  await expect(openBench(undefined, open.port, page)).rejects.toThrow(/is taken/)
  await open.close()
})

test('what is no HTTP is answered with the policy too', async () => {
  const open = await openBench(undefined, 0, page)
  const came = await new Promise<string>((resolve) => {
    const socket = connect(open.port, '127.0.0.1', () => socket.write('nonsense\r\n\r\n'))
    let text = ''
    socket.on('data', (piece) => {
      text += piece
    })
    socket.on('close', () => resolve(text))
  })
  expect(came).toContain("default-src 'none'")
  await open.close()
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
