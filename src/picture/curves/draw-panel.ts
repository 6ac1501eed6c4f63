/** One panel: a quantity over frequency. */
import { formatNumber } from '../../quantities/format.ts'
import { type Mark, mark } from '../mark.ts'
import { type Box, boxAt, circleAt, lineThrough, round, shapeOf, textAt } from '../shapes.ts'
import { fitText } from '../text-size.ts'
import { evenAxis, octaves } from './axis.ts'
import type { Curve, Panel } from './read-curves.ts'

/** Least and most frequency of the axis, Hz. */
export const BAND: readonly [number, number] = [200, 4000]
const SMALL = 13
const NAME = 16
const HEAD = 56
const LEFT = 64
const RIGHT = 204
const FOOT = 48
const LABEL = 18
const NOTE = 20

/** Frequencies with a number below the axis, Hz; each third has a tick. */
const NUMBERED: ReadonlySet<number> = new Set([200, 315, 500, 800, 1250, 2000, 4000])

/** How tall a panel is. */
export function panelHeight({ curves, notes }: Panel): number {
  return HEAD + FOOT + Math.max(200, curves.length * LABEL) + notes.length * NOTE
}

export function drawPanel(panel: Panel, box: Box): Mark {
  const plot: Box = {
    x: box.x + LEFT,
    y: box.y + HEAD,
    width: box.width - LEFT - RIGHT,
    height: box.height - HEAD - FOOT - panel.notes.length * NOTE,
  }
  const points = panel.curves.flatMap(({ runs }) => runs.flat())
  const axis = evenAxis(
    points.map(({ value }) => value),
    6,
    panel.floor,
  )
  const [low, high] = [
    Math.min(BAND[0], ...points.map(({ frequency }) => frequency)),
    Math.max(BAND[1], ...points.map(({ frequency }) => frequency)),
  ]
  const xOf = (frequency: number): number => plot.x + plot.width * octaves(frequency, low, high)
  const yOf = (value: number): number =>
    plot.y + (plot.height * (axis.most - value)) / (axis.most - axis.least)
  const bottom = plot.y + plot.height
  const thirds = [...new Set(points.map(({ frequency }) => frequency))].sort((p, q) => p - q)
  const numbered = numberedOf(thirds, xOf)
  const labels = labelHeights(panel.curves, yOf, plot)
  return mark(
    'g',
    { class: 'panel', 'data-panel': panel.id },
    textAt([box.x, box.y + 20], NAME, panel.title, 'heading'),
    textAt([box.x, box.y + 42], SMALL, panel.unit, 'soft'),
    ...axis.ticks.flatMap((tick) => [
      lineThrough(
        [
          [plot.x, yOf(tick)],
          [plot.x + plot.width, yOf(tick)],
        ],
        'grid',
        { 'data-value': tick },
      ),
      textAt([plot.x - 8, yOf(tick) + 5], SMALL, tickText(tick), 'soft', 'end'),
    ]),
    ...thirds.flatMap((frequency) => [
      lineThrough(
        [
          [xOf(frequency), bottom],
          [xOf(frequency), bottom + (numbered.has(frequency) ? 8 : 4)],
        ],
        'tick',
        { 'data-frequency': frequency },
      ),
      ...(numbered.has(frequency)
        ? [textAt([xOf(frequency), bottom + 24], SMALL, String(frequency), 'soft', 'middle')]
        : []),
    ]),
    textAt([plot.x + plot.width + 28, bottom + 24], SMALL, 'Hz', 'soft'),
    boxAt(plot, 'frame'),
    ...panel.curves.map((curve) => drawCurve(curve, xOf, yOf)),
    ...panel.notes.map((note, k) =>
      textAt([box.x, bottom + 48 + k * NOTE], SMALL, fitText(note, SMALL, box.width), 'soft'),
    ),
    ...panel.curves.map((curve, k) =>
      drawLabel(curve, plot.x + plot.width + 12, labels[k] ?? plot.y, panel.curves),
    ),
  )
}

/** Room that a number below the axis wants. */
const NUMBER = 46

/** Of the frequencies that may have a number those for which there is room, the last one among them. */
function numberedOf(thirds: readonly number[], xOf: (frequency: number) => number): ReadonlySet<number> {
  const kept: number[] = []
  for (const frequency of thirds.filter((one) => NUMBERED.has(one)).reverse()) {
    const next = kept.at(-1)
    if (next === undefined || xOf(next) - xOf(frequency) >= NUMBER) kept.push(frequency)
  }
  return new Set(kept)
}

function tickText(tick: number): string {
  if (tick === 0) return '0'
  const text = formatNumber(tick, 4)
  return (text.includes('.') ? text.replace(/\.?0+$/, '') : text).replace('-', '−')
}

function drawCurve(
  { side, name, order, runs }: Curve,
  xOf: (frequency: number) => number,
  yOf: (value: number) => number,
): Mark {
  return mark(
    'g',
    { class: `curve-group ${side}`, 'data-curve': name },
    ...runs.map((run) =>
      lineThrough(
        run.map(({ frequency, value }) => [xOf(frequency), yOf(value)]),
        'curve',
      ),
    ),
    ...runs.flat().map(({ frequency, value }) => {
      const said = { 'data-frequency': frequency, 'data-value': value }
      return withData(pointAt([xOf(frequency), yOf(value)], order), said)
    }),
  )
}

function withData({ tag, attributes, children }: Mark, more: Mark['attributes']): Mark {
  return { tag, attributes: { ...attributes, ...more }, children }
}

/** Each quantity of a panel has marks of its own: round, square, pointed up, pointed down, standing on a corner. */
export function pointAt([x, y]: readonly [number, number], order: number): Mark {
  const shapes: readonly (() => Mark)[] = [
    () => circleAt([x, y], 4, 'point'),
    () => boxAt({ x: x - 3.5, y: y - 3.5, width: 7, height: 7 }, 'point'),
    () =>
      shapeOf(
        [
          [x, y - 5],
          [x + 5, y + 4],
          [x - 5, y + 4],
        ],
        'point',
      ),
    () =>
      shapeOf(
        [
          [x, y + 5],
          [x + 5, y - 4],
          [x - 5, y - 4],
        ],
        'point',
      ),
    () =>
      shapeOf(
        [
          [x, y - 5],
          [x + 5, y],
          [x, y + 5],
          [x - 5, y],
        ],
        'point',
      ),
  ]
  const shape = shapes[order % shapes.length]
  return shape === undefined ? circleAt([x, y], 4, 'point') : shape()
}

function drawLabel({ label, side, order }: Curve, x: number, y: number, all: readonly Curve[]): Mark {
  const both = all.some((one) => one.side !== side)
  const words = [...(label === '' ? [] : [label]), ...(both ? [side] : [])].join(', ')
  return mark(
    'g',
    { class: `curve-label ${side}` },
    lineThrough(
      [
        [x, y],
        [x + 22, y],
      ],
      'curve',
    ),
    pointAt([round(x + 11), y], order),
    textAt([x + 28, y + 5], SMALL, fitText(words, SMALL, RIGHT - 44), 'soft'),
  )
}

/** Labels stand as near to the ends of their curves as they can without lying on each other. */
function labelHeights(
  curves: readonly Curve[],
  yOf: (value: number) => number,
  plot: Box,
): readonly number[] {
  const wanted = curves.map(({ runs }, k) => ({ k, y: yOf(runs.at(-1)?.at(-1)?.value ?? 0) }))
  const sorted = [...wanted].sort((p, q) => p.y - q.y || p.k - q.k)
  const heights: number[] = curves.map(() => 0)
  let least = plot.y
  sorted.forEach(({ k, y }, n) => {
    const most = plot.y + plot.height - (sorted.length - 1 - n) * LABEL
    const placed = Math.max(least, Math.min(y, most))
    heights[k] = placed
    least = placed + LABEL
  })
  return heights
}
