/** Speech by frequency as curves. */
import type { Figure } from '../../figures/figure.ts'
import { type Mark, mark } from '../mark.ts'
import { textAt } from '../shapes.ts'
import { drawPanel, panelHeight } from './draw-panel.ts'
import { panelsOf } from './read-curves.ts'

export interface DrawCurvesOptions {
  /** The same figures of the set as found, drawn beside those of `figures` in a style of their own. */
  readonly found?: readonly Figure[]
  /** Width in units of the picture; 720 when absent. */
  readonly width?: number
  /** Whose they are, for those who do not see them. */
  readonly title?: string
}

const WIDTH = 720
const NARROWEST = 400
const EDGE = 12
const GAP = 16

/**
 * Draws the speech figures of the first place and condition among `figures` over frequency, each third of an octave
 * marked: send, receive and sidetone in dB against 1 mA for 1 V; the size of the impedance; return loss. Figures
 * without a number leave a gap. An empty picture says so.
 */
export function drawCurves(figures: readonly Figure[], options: DrawCurvesOptions = {}): Mark {
  const width = Math.max(NARROWEST, options.width ?? WIDTH)
  const panels = panelsOf(figures, options.found ?? [])
  const says = options.title ?? 'Speech by frequency'
  const drawn: Mark[] = []
  let y = EDGE
  for (const panel of panels) {
    const height = panelHeight(panel)
    drawn.push(drawPanel(panel, { x: EDGE, y, width: width - 2 * EDGE, height }))
    y += height + GAP
  }
  if (panels.length === 0) {
    drawn.push(textAt([EDGE, y + 24], 16, 'No figures of speech by frequency', 'soft'))
    y += 48
  }
  const height = y - GAP + EDGE
  return mark(
    'svg',
    {
      class: 'picture curves',
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': says,
    },
    mark('title', {}, says),
    ...drawn,
  )
}
