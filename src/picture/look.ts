/** How pictures look when they are files: light, dark, on paper and in forced colours. */
import { CIRCUIT_RULES } from './circuit/circuit-look.ts'
import { type Mark, mark, markText } from './mark.ts'

/** The page’s tokens that the rules use; light, and dark where the reader prefers it. */
const TOKENS = `.picture {
  --paper: #faf8f3;
  --sheet: #ffffff;
  --sunk: #efece4;
  --ink: #17212b;
  --ink-soft: #45505b;
  --edge: #77818b;
  --edge-soft: #cfccc2;
  --accent: #0a5566;
  --accent-soft: #dcecef;
  --fails: #9c1c1c;
  --focus: #0a5566;
  background: var(--paper);
}
@media screen and (prefers-color-scheme: dark) {
  .picture {
    --paper: #11171d;
    --sheet: #19212a;
    --sunk: #0c1116;
    --ink: #eef2f5;
    --ink-soft: #b9c4cd;
    --edge: #8a97a3;
    --edge-soft: #35414c;
    --accent: #8cd3df;
    --accent-soft: #17343c;
    --fails: #ffb0a8;
    --focus: #8cd3df;
  }
}
@media print {
  .picture {
    --paper: #ffffff;
    --sunk: #ffffff;
    --ink: #000000;
    --ink-soft: #000000;
  }
}
`

/** The same rules as in `src/web/look/pictures.css`, which a test keeps alike: change both. */
export const PICTURE_RULES: string = `.picture {
  font-family: var(--words, system-ui, sans-serif);
  fill: var(--ink);
  stroke: none;
}
.picture .title,
.picture .heading,
.picture .name,
.picture .strong {
  font-weight: 600;
}
.picture .soft {
  fill: var(--ink-soft);
}
.picture .strip,
.picture .body {
  fill: var(--sheet);
  stroke: var(--edge);
}
.picture .strip {
  fill: var(--sunk);
}
.picture .row-back {
  fill: transparent;
}
.picture .row-line {
  stroke: var(--edge-soft);
}
.picture .hit {
  fill: transparent;
  stroke: none;
}
.picture .reach {
  fill: none;
  stroke: transparent;
  stroke-width: 32;
  stroke-linejoin: round;
  pointer-events: stroke;
}
.picture .screw {
  fill: var(--sheet);
  stroke: var(--ink);
  stroke-width: 2;
}
.picture .slot-line,
.picture .lead-out,
.picture .swatch-line {
  fill: none;
  stroke: var(--ink);
  stroke-width: 2;
}
.picture .lead-out {
  stroke: var(--edge);
}
.picture .socket,
.picture .ring,
.picture .sign,
.picture .cross {
  fill: none;
  stroke: var(--ink);
  stroke-width: 2;
}
.picture .ring {
  stroke: var(--accent);
  stroke-width: 4;
}
.picture .sign,
.picture .cross {
  stroke-width: 3;
}
.picture .lead {
  stroke: var(--ink);
  stroke-width: 1.5;
}
.picture .lead-red {
  fill: #c62828;
}
.picture .lead-black {
  fill: #111111;
}
.picture .run {
  fill: none;
  stroke: var(--ink);
  stroke-width: 5;
  stroke-linejoin: round;
}
.picture .core-line {
  fill: none;
  stroke: var(--paper);
  stroke-width: 2;
}
.picture .strap-end,
.picture .solder {
  fill: var(--ink);
}
.picture .lock {
  fill: none;
  stroke: var(--ink);
  stroke-width: 2;
}
.picture .lock-back {
  fill: var(--paper);
}
.picture .flow-0 {
  stroke-width: 1;
}
.picture .swatch {
  stroke: var(--ink);
  stroke-width: 1.5;
}
.picture .core-black {
  fill: #1a1a1a;
}
.picture .core-brown {
  fill: #7a4a21;
}
.picture .core-red {
  fill: #d02b2b;
}
.picture .core-orange {
  fill: #f07f13;
}
.picture .core-yellow {
  fill: #f5d90a;
}
.picture .core-green {
  fill: #2f8f3a;
}
.picture .core-blue {
  fill: #2563c9;
}
.picture .core-violet {
  fill: #7d3fb0;
}
.picture .core-grey {
  fill: #8d9299;
}
.picture .core-white {
  fill: #ffffff;
}
.picture .core-pink {
  fill: #f29ab8;
}
.picture .core-gold {
  fill: #c9a227;
}
.picture .core-turquoise {
  fill: #2fb8ac;
}
.picture .core-silver {
  fill: #c5cad0;
}
.picture .core-unknown {
  fill: none;
}
.picture .frame,
.picture .grid,
.picture .tick {
  fill: none;
  stroke: var(--edge);
}
.picture .grid {
  stroke: var(--edge-soft);
}
.picture .curve {
  fill: none;
  stroke: var(--ink);
  stroke-width: 2.5;
  stroke-linejoin: round;
}
.picture .point {
  fill: var(--paper);
  stroke: var(--ink);
  stroke-width: 2;
}
.picture .spare .screw {
  stroke-dasharray: 4 3;
}
.picture .hold-board .run {
  stroke-width: 6;
}
.picture .taken-out .run {
  stroke-width: 2;
  stroke-dasharray: 5 5;
}
.picture .taken-out .strap-end,
.picture .taken-out .solder {
  fill: none;
}
.picture .changed .body {
  stroke: var(--ink);
  stroke-width: 3;
}
.picture .flow .arrow {
  fill: var(--accent);
  stroke: var(--paper);
}
.picture .flow .run,
.picture .flow.run {
  stroke: var(--accent);
  stroke-width: 2;
}
.picture .flow-2 .run,
.picture .flow-2.run {
  stroke-width: 4;
}
.picture .flow-3 .run,
.picture .flow-3.run {
  stroke-width: 6;
}
.picture .flow-4 .run,
.picture .flow-4.run {
  stroke-width: 9;
}
.picture .offered .hit,
.picture .offered .body {
  stroke: var(--accent);
  stroke-width: 2;
  stroke-dasharray: 7 4;
}
.picture .refused .hit,
.picture .refused .body {
  stroke: var(--fails);
  stroke-width: 3;
  stroke-dasharray: 2 3;
}
.picture .selected .hit,
.picture .selected .body {
  fill: var(--accent-soft);
  stroke: var(--accent);
  stroke-width: 4;
}
.picture.live .thing {
  cursor: pointer;
}
.picture .thing:focus {
  outline: none;
}
.picture .found .curve,
.picture .found .point {
  stroke: var(--ink-soft);
}
.picture .proposed .curve,
.picture .proposed .point {
  stroke: var(--accent);
}
.picture .proposed .point {
  fill: var(--accent);
}
.picture .found .curve {
  stroke-dasharray: 7 5;
}
.picture .tag.taken-out .body,
.picture .chip.taken-out .body,
.picture .tag.parked .body {
  stroke-dasharray: 5 4;
}
.picture .strap .flow-0.run {
  stroke: var(--ink);
  stroke-width: 1.5;
}
.picture .hold-board .flow.run {
  stroke-width: 5;
}
.picture .hold-board .flow-0.run {
  stroke-width: 4;
}
.picture .hold-board .flow-2.run {
  stroke-width: 7;
}
.picture .hold-board .flow-3.run {
  stroke-width: 9;
}
.picture .hold-board .flow-4.run {
  stroke-width: 12;
}
.picture .line.selected .end {
  font-weight: 700;
  text-decoration: underline;
}
.picture .thing:focus-visible .hit,
.picture .thing:focus-visible .body {
  stroke: var(--focus);
  stroke-width: 4;
}
.picture .strap.changed:not(.taken-out) .run {
  stroke: var(--accent);
}
@media (forced-colors: active) {
  .picture {
    --paper: Canvas;
    --sheet: Canvas;
    --sunk: Canvas;
    --ink: CanvasText;
    --ink-soft: CanvasText;
    --edge: CanvasText;
    --edge-soft: GrayText;
    --accent: Highlight;
    --accent-soft: Canvas;
    --fails: CanvasText;
    --focus: Highlight;
  }
  .picture .swatch,
  .picture .swatch-band,
  .picture .lead {
    forced-color-adjust: none;
  }
}
${CIRCUIT_RULES}`

const XMLNS = 'http://www.w3.org/2000/svg'

/** A picture as the text of an SVG file that needs nothing else. */
export function standalone({ tag, attributes, children }: Mark): string {
  const style = mark('style', {}, `\n${TOKENS}${PICTURE_RULES}`)
  const whole = mark(tag, { xmlns: XMLNS, ...attributes }, style, ...children)
  return `<?xml version="1.0" encoding="UTF-8"?>\n${markText(whole)}\n`
}
