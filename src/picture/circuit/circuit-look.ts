/** How circuit pictures look; the same rules stand in `src/web/look/pictures.css`: change both. */
export const CIRCUIT_RULES = `.circuit .symbol,
.circuit .wire,
.circuit .way,
.circuit .reach {
  fill: none;
  stroke: var(--ink);
  stroke-width: 1.5;
  stroke-linejoin: round;
  stroke-linecap: round;
}
.circuit .reach {
  stroke: transparent;
  stroke-width: 14;
}
.circuit .way {
  stroke: var(--accent-soft);
  stroke-width: 14;
}
.circuit .wire.flow-0 {
  stroke: var(--edge);
  stroke-width: 1;
}
.circuit .wire.flow-1 {
  stroke-width: 1.5;
}
.circuit .wire.flow-2 {
  stroke-width: 2.5;
}
.circuit .wire.flow-3 {
  stroke-width: 3.5;
}
.circuit .wire.flow-4 {
  stroke-width: 5;
}
.circuit .arrow {
  fill: var(--paper);
  stroke: var(--ink);
  stroke-width: 1.4;
  stroke-linejoin: round;
}
.circuit .point {
  fill: var(--paper);
  stroke: var(--ink);
  stroke-width: 1.5;
}
.circuit .at-joint .point,
.circuit .junction,
.circuit .dot,
.circuit .plate {
  fill: var(--ink);
}
.circuit .value,
.circuit .letters {
  fill: var(--ink-soft);
}
.circuit .on-way .point {
  stroke-width: 3;
}
.circuit .selected .wire,
.circuit .selected .symbol {
  stroke: var(--accent);
}
.circuit .link.selected .reach,
.circuit .link:focus-visible .reach {
  stroke: var(--accent-soft);
}
.circuit .link.offered .reach {
  stroke: var(--accent);
  stroke-width: 9;
  stroke-dasharray: 2 6;
}
`
