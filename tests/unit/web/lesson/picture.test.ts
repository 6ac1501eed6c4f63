import { markText } from 'ringproof'
import { housePicture } from 'ringproof/web/lesson/picture/house-picture'
import { STEPS } from 'ringproof/web/lesson/steps/steps'
import { describe, expect, test } from 'vitest'
import { solvedHouse } from './solved-house.ts'

const table = (place: string) => ({ place, set: 'table' }) as const

describe('the picture of a house', () => {
  test('names each set with its solved current and says whether it rings', () => {
    const house = { sets: [table('hall'), { ...table('kitchen'), parked: true }] }
    const text = markText(housePicture(house, solvedHouse(house)))
    expect(text).toMatch(/aria-label="[^"]*hall: [\d.]+ mA, rings\. kitchen: nothing, silent\./)
    // attributes and classes only
    expect(text).not.toMatch(/style=|<style/)
  })

  test('shows more current by more weight', () => {
    const widest = (capacitance: string): number => {
      const house = { sets: [table('hall')], capacitance }
      const text = markText(housePicture(house, solvedHouse(house)))
      return Math.max(...[...text.matchAll(/stroke-width="([\d.]+)"/g)].map(([, width]) => Number(width)))
    }
    expect(widest('1.8 µF')).toBeGreaterThan(widest('0.5 µF'))
  })

  test('has arrows where current goes, and none without', () => {
    const house = { sets: [table('hall')] }
    const arrows = (text: string): number => text.split('lesson-arrow').length - 1
    expect(arrows(markText(housePicture(house, undefined)))).toBe(0)
    expect(arrows(markText(housePicture(house, solvedHouse(house))))).toBeGreaterThan(3)
  })

  test('is drawn for every state that decides a step', () => {
    for (const step of STEPS)
      for (const state of Object.values(step.needs))
        expect(markText(housePicture(step.house(state), undefined))).toContain('<svg')
  })
})
