/** What the workers are told of the sheets, and when. */
import type { ShelfAsk } from 'ringproof/web/talk/protocol'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'

let told: { readonly who: string; readonly ask: ShelfAsk }[]
let state: typeof import('ringproof/web/state/shelf')
const FLEET = [{ file: 'a.yaml', text: 'sheet: set' }]
const MINE = [{ file: 'b.yaml', text: 'sheet: set', mark: '1' }]

beforeEach(async () => {
  told = []
  vi.resetModules()
  const asker = (who: string): unknown => ({
    ask: async (_what: string, ask: ShelfAsk) => {
      told.push({ who, ask })
      return ask.texts.map(({ file }) => ({ name: file, file, own: true, problems: 0 }))
    },
  })
  vi.doMock('ringproof/web/talk/solver', () => ({ bench: asker('bench'), study: asker('study') }))
  state = await import('ringproof/web/state/shelf')
  vi.stubGlobal('fetch', async () => new Response(JSON.stringify(FLEET)))
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.doUnmock('ringproof/web/talk/solver')
})

test('both workers are told, the same not twice, and what has changed again', async () => {
  await Promise.all([state.setOwn([]), state.setOwn([])])
  expect(state.shelfState.value).toBe('ready')
  expect(told.map(({ who }) => who)).toEqual(['bench', 'study'])
  const rows = state.shelf.value
  await state.setOwn([])
  expect(state.shelf.value).toBe(rows)
  await state.setOwn(MINE)
  expect(told.slice(2).map(({ ask }) => ask)).toEqual(
    [0, 1].map(() => ({ packaged: FLEET, texts: [{ file: 'b.yaml', text: 'sheet: set' }] })),
  )
  expect(state.shelf.value).not.toBe(rows)
  expect(state.ownSheets.value).toBe(MINE)
})

test('of two calls before the demo sheets came only the newest is told', async () => {
  await Promise.all([state.setOwn([]), state.setOwn(MINE)])
  expect(told.map(({ ask }) => ask.texts.length)).toEqual([1, 1])
  expect(state.shelf.value).toHaveLength(1)
})

test('without the demo sheets nobody waits for ever, and the next call tries again', async () => {
  vi.stubGlobal('fetch', async () => new Response('', { status: 503 }))
  await state.setOwn([])
  expect([state.shelfState.value, told.map(({ ask }) => ask.packaged.length)]).toEqual(['broken', [0, 0]])
  expect(state.shelfWord.value).toContain('did not come (503)')
  vi.stubGlobal('fetch', async () => new Response(JSON.stringify(FLEET)))
  await state.setOwn([])
  expect([state.shelfState.value, told.length]).toEqual(['ready', 4])
})
