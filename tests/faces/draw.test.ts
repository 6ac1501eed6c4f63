import { readdirSync, readFileSync } from 'node:fs'
import { PICTURES } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { wellFormed } from '../support/well-formed.ts'
import { jsonOf, ringproof } from './ringproof.ts'

const named = (folder: string): readonly string[] =>
  readdirSync(new URL(`../../netlists/${folder}`, import.meta.url)).map((file) => file.replace('.yaml', ''))

const sheetOf = (set: string): string =>
  readFileSync(new URL(`../../netlists/sets/${set}.yaml`, import.meta.url), 'utf8')

const TARGETS = [...named('sets'), ...named('rewires')]

/** Sets that stand on no other: each of the others differs from one of these in a few lines. */
const ORIGINALS = named('sets').filter((set) => !/^based on:/m.test(sheetOf(set)))

describe('ringproof draw', () => {
  test('draws the terminals of every set and rewire of the demo', async () => {
    for (const target of TARGETS) {
      const { code, out } = await ringproof(['draw', target])
      expect([target, code]).toEqual([target, 0])
      expect(out).not.toContain('style=')
      expect(wellFormed(out)).toBeUndefined()
      expect(out).toContain('data-thing="terminal:')
    }
  })

  describe.each(ORIGINALS)('of %s', (target) => {
    test.each([
      ['circuit', /class="wire flow-/],
      ['curves', /class="[^"]*curve/],
    ])('draws the %s', async (picture, shown) => {
      const { code, out } = await ringproof(['draw', target, '--picture', picture, '--condition', 'off-hook'])
      expect(code).toBe(0)
      expect(out).not.toContain('style=')
      expect(out).not.toMatch(/NaN|undefined|Infinity/)
      expect(wellFormed(out)).toBeUndefined()
      expect(out).toMatch(shown)
    })
  })

  test.each(PICTURES)(
    'draws %s, and gives the data of it as JSON that its schema allows',
    async (picture) => {
      const asked = ['draw', 'sedge-converted', '--picture', picture, '--condition', 'off-hook']
      const drawn = await ringproof(asked)
      expect(drawn.code).toBe(0)
      expect(drawn.out).toMatch(/^<\?xml[^\n]*\n<svg xmlns=/)
      expect(drawn.out).not.toContain('style=')
      expect(wellFormed(drawn.out)).toBeUndefined()
      const { data, wrong } = jsonOf(await ringproof([...asked, '--json']))
      expect(wrong).toEqual([])
      expect(data.ringproof).toBe('draw/1')
    },
  )

  test('shows currents where a condition is asked for', async () => {
    const still = await ringproof(['draw', 'fescue'])
    const lifted = await ringproof(['draw', 'fescue', '--condition', 'off-hook'])
    expect(still.out).not.toMatch(/carries [\d.]+ mA/)
    expect(lifted.out).toMatch(
      /hook, contact[^<]*carries [\d.]+ mA from A1 to A2|hook, contact[^<]*carries [\d.]+ mA from A2 to A1/,
    )
  })

  test('shows what moves changed, and the set as found when asked', async () => {
    const after = await ringproof(['draw', 'sedge-converted'])
    const before = await ringproof(['draw', 'sedge-converted', '--found'])
    expect(after.out).toContain('moved, was parked')
    expect(after.out).toContain('taken-out')
    expect(before.out).toContain('Parked cores, on nothing')
    expect(before.out).not.toMatch(/class="[^"]*(changed|taken-out)/)
  })

  test('draws one set of premises, and asks which where there are several', async () => {
    const which = await ringproof(['draw', 'station-house'])
    expect(which.code).toBe(2)
    const [, place = ''] = /write `--at ([^`]+)`/.exec(which.err) ?? []
    expect(place).not.toBe('')
    const one = await ringproof(['draw', 'station-house', '--at', place])
    expect([one.code, one.err]).toEqual([0, ''])
    const none = await ringproof(['draw', 'station-house', '--at', 'nowhere'])
    expect(none.code).toBe(2)
    expect(none.err).toContain('the place `nowhere`')
  })

  test('draws a circuit sheet, and refuses its terminals', async () => {
    expect((await ringproof(['draw', 'two-meshes', '--picture', 'circuit'])).code).toBe(0)
    expect((await ringproof(['draw', 'two-meshes'])).code).toBe(2)
  })

  test('refuses a picture that there is not, and names the nearest', async () => {
    const { code, err } = await ringproof(['draw', 'fescue', '--picture', 'curve'])
    expect(code).toBe(2)
    expect(err).toContain('perhaps `curves`')
  })
})
