import { readFileSync } from 'node:fs'
import { layOut } from 'ringproof/answer/book-order'
import { tableVariants } from 'ringproof/figures/table-variants'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import { describe, expect, test } from 'vitest'
// biome-ignore lint/correctness/useImportExtensions: the declaration beside it is no module to import
import { dice } from '../trial/draw.mjs'
// biome-ignore lint/correctness/useImportExtensions: the declaration beside it is no module to import
import { layTrialOut, trySingles } from '../trial/one-set.mjs'

const laws = JSON.parse(readFileSync(new URL('../trial/laws.json', import.meta.url), 'utf8'))

test('normal draws have the mean, the deviation and the tails of a normal law', () => {
  const roll = dice(7)
  const drawn = Array.from({ length: 20_000 }, () => roll.normal())
  const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length
  const variance = drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length
  expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(20_000))
  expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / 20_000))
  // Abramowitz and Stegun, table 26.1: P(|x| > 1.96) = 0.05
  const tails = drawn.filter((x) => Math.abs(x) > 1.96).length / drawn.length
  expect(Math.abs(tails - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 20_000))
})

describe('a small trial of one set', () => {
  const laidOut = layOut({ target: 'sedge', on: laws.premises }, folderShelf([], packagedFolder()))
  const set = layTrialOut(laidOut, tableVariants, false)
  const few = { ...laws, singles: 12 }
  const tried = trySingles(set, few, 42)

  test('comes out the same again', () => {
    expect(trySingles(set, few, 42)).toEqual(tried)
  })

  test('draws other faults by another seed', () => {
    expect(trySingles(set, few, 43).map(({ truth }) => truth)).not.toEqual(tried.map(({ truth }) => truth))
  })

  test('takes stock after the symptoms and after every number of readings of the laws', () => {
    for (const { stages } of tried) expect(stages.map(({ readings }) => readings)).toEqual(laws.readings)
  })

  test('asks for readings one after the other, none twice', () => {
    for (const { asked } of tried) expect(new Set(asked).size).toBe(asked.length)
  })

  test('finds some of them, and says what it believes in place of the others', () => {
    const last = tried.filter(({ unseen }) => !unseen).flatMap(({ stages }) => stages.slice(-1))
    expect(last.some(({ first }) => first)).toBe(true)
    for (const { leading } of last) expect(leading).not.toBe('')
  })
})
