import { afterEach, beforeEach, expect, test, vi } from 'vitest'

let fleet: typeof import('ringproof/web/state/shelf').fleet
beforeEach(async () => {
  // it remembers what came
  vi.resetModules()
  fleet = (await import('ringproof/web/state/shelf')).fleet
})

afterEach(() => vi.unstubAllGlobals())

const answers = (text: string, status = 200): void => {
  vi.stubGlobal('fetch', async () => new Response(text, { status }))
}

test.each(['null', '{}', '[null]', '[{"file":1,"text":"x"}]', '[{"file":"a.yaml"}]', 'no JSON', ''])(
  'demo sheets that came as %j are told in plain words',
  async (text) => {
    answers(text)
    await expect(fleet()).rejects.toThrow('did not come whole')
  },
)

test('what does not come is told too, and asked for again', async () => {
  answers('', 503)
  await expect(fleet()).rejects.toThrow('did not come (503)')
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('Failed to fetch')))
  await expect(fleet()).rejects.toThrow('no answer')
  answers('[{"file":"a.yaml","text":"sheet: set"}]')
  expect(await fleet()).toEqual([{ file: 'a.yaml', text: 'sheet: set' }])
  answers('', 503)
  expect(await fleet()).toHaveLength(1)
})
