import { markText } from 'ringproof'
import { housePicture } from 'ringproof/web/lesson/picture/house-picture'
import { pieceMarks } from 'ringproof/web/lesson/picture/piece'
import { housePieces } from 'ringproof/web/lesson/picture/pieces'
import type { Control, State } from 'ringproof/web/lesson/steps/step'
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

/** Every state that the controls of a step can be brought to. */
function statesOf(controls: readonly Control[]): readonly State[] {
  return controls.reduce<readonly State[]>(
    (states, control) => {
      const values =
        control.sort === 'choice'
          ? control.options.map(({ value }) => value)
          : Array.from({ length: control.most - control.least + 1 }, (_, k) => String(control.least + k))
      return states.flatMap((state) => values.map((value) => ({ ...state, [control.id]: value })))
    },
    [{}],
  )
}

/** The house's cables lead this much past the picture, from wire to wire, A; and the socket's resistor its part. */
const UNSEEN = 0.7e-3

describe('what is drawn adds up', () => {
  test.each(STEPS.map((step) => [step.id, step] as const))(
    'in every state of %s, where wires meet as much comes as goes (Kirchhoff)',
    (_, step) => {
      for (const state of statesOf(step.controls)) {
        const house = step.house(state)
        const nodes = new Map<string, { re: number; im: number }>()
        for (const { points, current } of housePieces(house, solvedHouse(house)))
          for (const [point, sign] of [
            [points[0], -1],
            [points.at(-1), 1],
          ] as const) {
            const key = String(point)
            const node = nodes.get(key) ?? { re: 0, im: 0 }
            nodes.set(key, {
              re: node.re + sign * current.re,
              im: node.im + sign * current.im,
            })
          }
        for (const [at, { re, im }] of nodes)
          expect(Math.hypot(re, im), `${JSON.stringify(state)} at ${at}`).toBeLessThan(UNSEEN)
      }
    },
  )

  test('an arrow points the way that its current is counted, or back, at the moment shown', () => {
    const house = { sets: [table('hall')] }
    const reading = solvedHouse(house)
    const tipOf = (re: number): number => {
      const whole = reading.currents.get('box/cable.b') ?? { re: 1, im: 0 }
      const current = { re: re * whole.re, im: re * whole.im }
      const marks = pieceMarks(
        {
          points: [
            [0, 0],
            [100, 0],
          ],
          current,
          tip: [50, 0],
        },
        reading,
      )
      return Number(/M([\d.]+) /.exec(markText(marks[1] ?? never()))?.[1])
    }
    expect(tipOf(1)).toBeGreaterThan(50)
    expect(tipOf(-1)).toBeLessThan(50)
  })

  test('a touch on the b wire feeds both bells alike: their arrows point the same way', () => {
    const house = { sets: [table('hall'), { ...table('kitchen'), touches: 'b' as const }] }
    const reading = solvedHouse(house)
    const bells = housePieces(house, reading).filter(({ points: [from, to], tip }) => {
      return tip !== undefined && from?.[1] === to?.[1] && to?.[0] === 40
    })
    expect(bells).toHaveLength(2)
    const heads = bells.map((piece) =>
      /M([\d.]+) [\d.]+L([\d.]+) /.exec(markText(pieceMarks(piece, reading)[1] ?? never())),
    )
    for (const head of heads) expect(Number(head?.[1])).toBeLessThan(Number(head?.[2]))
  })
})

function never(): never {
  throw new Error('no arrow was drawn')
}
