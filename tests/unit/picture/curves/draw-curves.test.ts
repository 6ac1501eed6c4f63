import { drawCurves, type Figure, figures, type Mark, standalone } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { wellFormed } from '../../../support/well-formed.ts'
import { DEMO } from '../../netlist/_nets.ts'
import { collisions, marksIn } from '../board/_boards.ts'

const speech = (target: string): readonly Figure[] => figures({ target, only: 'speech' }, DEMO).figures
const SEDGE = speech('sedge')
const WRONG = speech('sedge-converted-as-fescue')

const panels = (root: Mark): readonly Mark[] =>
  marksIn(root).filter(({ attributes }) => attributes['data-panel'])

/** Where a point lies: the middle of its shape. */
function placeOf({ tag, attributes }: Mark): readonly [number, number] {
  if (tag === 'circle') return [Number(attributes.cx), Number(attributes.cy)]
  if (tag === 'rect') return [Number(attributes.x) + 3.5, Number(attributes.y) + 3.5]
  const points = String(attributes.points)
    .split(' ')
    .map((one) => one.split(',').map(Number))
  const [first, second] = points
  const [, , , fourth] = points
  const up = (first?.[1] ?? 0) < (second?.[1] ?? 0)
  if (fourth !== undefined) return [first?.[0] ?? 0, (first?.[1] ?? 0) + 5]
  return [first?.[0] ?? 0, (first?.[1] ?? 0) + (up ? 5 : -5)]
}

describe('curves of speech', () => {
  const drawn = drawCurves(SEDGE, { found: WRONG })

  test('has the panels that an engineer reads', () => {
    expect(panels(drawn).map(({ attributes }) => attributes['data-panel'])).toEqual([
      'speech',
      'impedance',
      'loss',
    ])
  })

  test('every point is a figure, at the place that both axes give it', () => {
    for (const panel of panels(drawn)) {
      const all = marksIn(panel)
      const grid = all.filter(({ attributes }) => attributes.class === 'grid')
      const ticks = grid.map(({ attributes }) => [
        Number(attributes['data-value']),
        Number(String(attributes.points).split(',')[1]?.split(' ')[0]),
      ])
      const [low = [0, 0], high = [1, 1]] = [ticks[0], ticks.at(-1)]
      const [v0 = 0, y0 = 0] = low
      const [v1 = 1, y1 = 1] = high
      const marks = all.filter(({ attributes }) => attributes.class === 'tick')
      const xs = marks.map(({ attributes }) => [
        Number(attributes['data-frequency']),
        Number(String(attributes.points).split(',')[0]),
      ])
      const [f0 = 200, x0 = 0] = xs[0] ?? []
      const [f1 = 4000, x1 = 1] = xs.at(-1) ?? []
      const points = all.filter(
        ({ attributes }) => attributes.class === 'point' && attributes['data-value'] !== undefined,
      )
      expect(points.length).toBeGreaterThan(10)
      for (const point of points) {
        const value = Number(point.attributes['data-value'])
        const frequency = Number(point.attributes['data-frequency'])
        const [x, y] = placeOf(point)
        expect(y).toBeCloseTo(y0 + ((y1 - y0) * (value - v0)) / (v1 - v0), 1)
        expect(x).toBeCloseTo(x0 + ((x1 - x0) * Math.log(frequency / f0)) / Math.log(f1 / f0), 1)
      }
    }
  })

  test('currents are in decibels against 1 mA for 1 V', () => {
    const send = SEDGE.find(({ id, frequency }) => id === 'speech.send' && frequency === 1000)
    const [panel] = panels(drawCurves(SEDGE))
    const [first] = marksIn(panel ?? drawn).filter(({ attributes }) => attributes['data-curve'] === 'send')
    const at = marksIn(first ?? drawn).find(({ attributes }) => attributes['data-frequency'] === 1000)
    expect(at?.attributes['data-value']).toBe(20 * Math.log10((send?.value ?? 0) * 1000))
  })

  test('what does not flow at all has no curve and is said', () => {
    const words = marksIn(drawn).flatMap(({ tag, children }) => (tag === 'text' ? [children.join('')] : []))
    expect(words).toContain('receive, found: nothing, no current flows')
  })

  test('a figure without a number leaves a gap', () => {
    const holed = SEDGE.map(
      (figure): Figure =>
        figure.id === 'speech.impedance' && figure.frequency === 1000
          ? { ...figure, value: null, state: 'open' }
          : figure,
    )
    const count = (all: readonly Figure[]): number =>
      marksIn(drawCurves(all))
        .filter(({ attributes }) => attributes['data-curve'] === 'impedance')
        .flatMap(marksIn)
        .filter(({ attributes }) => attributes.class === 'curve').length
    expect([count(SEDGE), count(holed)]).toEqual([1, 2])
  })

  test.each([320, 720, 1200])('has no text on another, %i wide', (width) => {
    expect(collisions(drawCurves(SEDGE, { found: WRONG, width }))).toEqual([])
    expect(collisions(drawCurves(SEDGE, { width }))).toEqual([])
  })

  test('is well-formed, the same twice, and says so when there is nothing', () => {
    expect(wellFormed(standalone(drawn))).toBeUndefined()
    expect(standalone(drawCurves(SEDGE, { found: WRONG }))).toBe(standalone(drawn))
    expect(standalone(drawCurves([]))).toContain('No figures of speech by frequency')
  })
})
