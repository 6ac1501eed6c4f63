import { sheetsInReach, unitsInReach } from 'ringproof/answer/identify-sheets'
import { knownSets } from 'ringproof/identify/known'
import { describe, expect, test } from 'vitest'
import { besides, DEMO } from '../../support/bench.ts'
import { KNOWN, knownSet } from './_bench.ts'

describe('the sets that may lie on the bench', () => {
  test('are every sheet, and each state of a slot by itself', () => {
    const names = KNOWN.map(({ name }) => name)
    for (const set of DEMO.names('set')) expect(names).toContain(set)
    expect(names).toContain('fescue without a unit')
    expect(names).toContain('fescue with clover')
    expect(names).not.toContain('sedge without a unit')
    expect(new Set(names).size).toBe(names.length)
  })

  test('are equally likely by sheet, the states of a slot sharing', () => {
    expect(KNOWN.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
    expect(knownSet('sedge').share).toBeCloseTo(3 * knownSet('fescue').share, 12)
  })

  test('have equal wirings where they differ in cords or inductance of the handset alone', () => {
    expect(knownSet('melick-new-cord').wiring).toBe(knownSet('melick').wiring)
    expect(knownSet('fescue-mirrored-plug').wiring).toBe(knownSet('fescue').wiring)
    expect(knownSet('fescue without a unit').wiring).not.toBe(knownSet('fescue').wiring)
    expect(knownSet('sedge').wiring).not.toBe(knownSet('fescue').wiring)
  })

  test('have no cords: no core and no part of the handset is left in the network', () => {
    for (const { net } of KNOWN) {
      expect(net.parts.filter(({ sort }) => sort === 'core' || sort === 'handset')).toEqual([])
    }
  })

  test('come from rewires too where that is asked for', () => {
    const all = knownSets(sheetsInReach(DEMO, true).sheets, unitsInReach(DEMO))
    expect(all.map(({ name }) => name)).toContain('sedge-converted')
    expect(all.find(({ name }) => name === 'sedge-converted')?.rewire).toBe('sedge-converted')
    expect(all.length).toBeGreaterThan(KNOWN.length)
  })

  test('leave out a sheet that cannot be read, and say so', () => {
    const shelf = besides('ringproof: 1\nsheet: set\nname: spoilt\nstrips: {A: none}\n')
    const { sheets, problems } = sheetsInReach(shelf, false)
    expect(sheets.map(({ sheet }) => sheet.name)).not.toContain('spoilt')
    expect(problems.length).toBeGreaterThan(0)
    expect(problems.every(({ severity }) => severity === 'warning')).toBe(true)
  })
})
