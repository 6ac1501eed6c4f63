import type { BookStore } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { jsonOf, ringproof } from './ringproof.ts'

const held = new Map<string, Uint8Array>()
const asked: boolean[] = []
/** One book for all runs of this file, as the cache folder would keep it. */
const store: BookStore = {
  read: (key) => held.get(key),
  write: (key, bytes) => {
    held.set(key, bytes)
  },
  remove: () => {},
}
const books = (keeps: boolean) => {
  asked.push(keeps)
  return keeps ? { store } : {}
}
/** A set alone has readings only, which is quick. */
const faults = (...argv: readonly string[]) => ringproof(['faults', 'sedge', ...argv], { books })

describe('ringproof faults', () => {
  test('prints the book, and keeps it for the next time', async () => {
    const first = await faults('--on', 'none')
    expect(first.code).toBe(0)
    expect(first.err).toBe('')
    expect(first.out).toContain('faults sedge on none instrument digital')
    expect(first.out).toMatch(/\n\d+ faults[^;]*; 0 symptoms and \d+ readings\s+looked at\n\n/)
    expect(held.size).toBeGreaterThan(0)
    const kept = held.size
    const again = await faults('--on', 'none')
    expect(again.out).toBe(first.out)
    expect(held.size).toBe(kept)
  })

  test('prints every fault in its line where the whole is asked for', async () => {
    const [short, whole] = [await faults('--on', 'none'), await faults('--on', 'none', '--whole')]
    expect(whole.code).toBe(0)
    expect(whole.out).toContain('told by')
    expect(whole.out.length).toBeGreaterThan(short.out.length)
    // JSON holds all of it in any case
    const { data, wrong } = jsonOf(await faults('--on', 'none', '--whole', '--json'))
    expect(wrong).toEqual([])
    expect(data).toMatchObject({ request: { whole: true } })
  })

  test('says a word before anything is laid out, and takes it away, on a terminal alone', async () => {
    const said: string[] = []
    const ran = await ringproof(['faults', 'sedge', '--on', 'none'], {
      books: () => {
        // the means are made before the set is read: nothing has been worked out yet
        expect(said).toEqual([expect.stringContaining('laying out')])
        return { store }
      },
      status: (text) => said.push(text),
    })
    expect(ran.code).toBe(0)
    expect(said.at(-1)).toBe('')
    // a set that is not there is said so, the line gone
    said.length = 0
    const none = await ringproof(['faults', 'sedgge'], { status: (text) => said.push(text) })
    expect(none.code).toBe(2)
    expect(said.at(-1) ?? '').toBe('')
  })

  test('prints JSON of its schema', async () => {
    const ran = await faults('--on', 'none', '--json')
    const { data, wrong } = jsonOf(ran)
    expect(wrong).toEqual([])
    expect(data.ringproof).toBe('faults/1')
    expect(ran.code).toBe(0)
  })

  test('says what it is working on where a person may watch, and keeps nothing when told so', async () => {
    const kept = held.size
    const ran = await faults('--on', 'none', '--no-cache', '--instrument', 'needle')
    expect(ran.code).toBe(0)
    expect(asked.at(-1)).toBe(false)
    expect(held.size).toBe(kept)
  })

  test.each([
    [['--symptom', 'ringz'], 2, 'perhaps `rings`'],
    [['--symptom', 'rings', '--on', 'none'], 2, 'no symptom, since the set is on no line'],
    [['--symptom'], 2, '`--symptom <words>`'],
    [['--instrument', 'digitl', '--on', 'none'], 2, 'perhaps `digital`'],
  ])('refuses %j', async (argv, code, says) => {
    const ran = await faults(...argv)
    expect(ran.code).toBe(code)
    expect(ran.out).toBe('')
    expect(ran.err.replace(/\s+/g, ' ')).toContain(says)
  })

  test('its help teaches, and warns', async () => {
    const { out } = await ringproof(['help', 'faults'])
    expect(out).toContain('ringproof faults fescue --symptom')
    expect(out).toContain('Caution: ')
  })
})
