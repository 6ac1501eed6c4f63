import { hasKeys, remembered } from 'ringproof/web/state/remembered'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'

const kept = new Map<string, string>()
const store = {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, text: string) => void kept.set(key, text),
  removeItem: (key: string) => void kept.delete(key),
}

beforeEach(() => {
  kept.clear()
  vi.stubGlobal('sessionStorage', store)
})
afterEach(() => {
  vi.unstubAllGlobals()
})

const fits = (read: unknown): boolean => hasKeys(read, 'steps')

test('what was there is there again', () => {
  remembered('dialogue', { steps: ['one'] }, fits).value = { steps: ['one', 'two'] }
  expect(remembered('dialogue', { steps: [] as string[] }, fits).value).toEqual({ steps: ['one', 'two'] })
})

test('each has a place of its own', () => {
  remembered('one', { steps: [1] }, fits)
  expect(remembered('other', { steps: [] as number[] }, fits).value).toEqual({ steps: [] })
})

test.each([
  ['of another shape', '{"other": 1}'],
  ['no JSON', '{"steps": ['],
  ['nothing', 'null'],
  ['a number', '3'],
  ['with the key inherited only', '{"__proto__": {"steps": []}}'],
])('what is %s is begun anew', (_, text) => {
  kept.set('ringproof/view/dialogue', text)
  expect(remembered('dialogue', { steps: ['fresh'] }, fits).value).toEqual({ steps: ['fresh'] })
})

test('undefined is forgotten', () => {
  const one = remembered<{ steps: number[] } | undefined>('dialogue', { steps: [1] }, fits)
  expect(kept.size).toBe(1)
  one.value = undefined
  expect(kept.size).toBe(0)
})

test('a store that refuses everything keeps the page working', () => {
  const shut = (): never => {
    throw new DOMException('shut', 'SecurityError')
  }
  vi.stubGlobal('sessionStorage', { getItem: shut, setItem: shut, removeItem: shut })
  const one = remembered('dialogue', { steps: [1] }, fits)
  one.value = { steps: [2] }
  expect(one.value).toEqual({ steps: [2] })
})
