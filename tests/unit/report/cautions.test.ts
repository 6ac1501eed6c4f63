import { readFileSync } from 'node:fs'
import { CAUTIONS, cautionText } from 'ringproof'
import { LIVE, OPEN_AND_LIVE, UNPLUG } from 'ringproof/meter/cautions'
import { describe, expect, test } from 'vitest'
import { ringproof } from '../../faces/ringproof.ts'

const flowing = (text: string) => text.replace(/\s+/g, ' ')
const README = flowing(readFileSync(new URL('../../../README.md', import.meta.url), 'utf8'))

// common practice, no source; the line side of the master socket from memory
describe('the cautions', () => {
  test('say what a hand near a line must know', () => {
    const all = cautionText()
    for (const word of ['can hurt', 'any moment', 'Unplug', 'Local codes', 'licensed', 'master socket'])
      expect(all).toContain(word)
  })

  test('stand in the README, each in its own words', () => {
    for (const { says } of CAUTIONS) expect(README).toContain(`**${says}`)
  })

  test.each([
    ['check', 'fescue'],
    ['check', 'lodge'],
    ['compare', 'sedge-converted'],
    ['figures', 'fescue', 'ringing'],
    ['follow', 'fescue', '--condition', 'on-hook/ringing', '--frequency', '25 Hz'],
    ['solve', 'fescue'],
    ['--help'],
    ...['check', 'compare', 'figures', 'follow', 'solve', 'meter'].map((command) => ['help', command]),
  ])('end or stand in what %s %s shows, all of them', async (...argv) => {
    const { out } = await ringproof(argv)
    expect(flowing(out)).toContain(`Caution: ${cautionText()}`)
  })

  test('are what the meter says before it reads, of a set by itself and on a line', () => {
    expect(UNPLUG).toContain(cautionText('opening', 'ringing', 'burst'))
    expect(LIVE).toContain(cautionText('ringing', 'burst', 'line-side', 'codes'))
    expect(OPEN_AND_LIVE).toContain(cautionText('codes'))
  })

  test('are not said where nobody is led to a wire', async () => {
    for (const argv of [
      ['list', 'sets'],
      ['solve', 'two-meshes'],
      ['help', 'list'],
    ])
      expect((await ringproof(argv)).out).not.toContain('Caution')
  })
})
