/** How circuit pictures look; the same rules stand in `src/web/look/pictures.css`: change both. */
export const CIRCUIT_RULES = `.circuit .symbol,
.circuit .leg,
.circuit .wire,
.circuit .way,
.circuit .way-inside,
.circuit .reach,
.circuit .reach-inside {
  fill: none;
  stroke: var(--ink);
  stroke-width: 1.5;
  stroke-linejoin: round;
  stroke-linecap: round;
}
.circuit .leg {
  stroke-linecap: butt;
}
.circuit .reach,
.circuit .reach-inside {
  stroke: transparent;
  stroke-width: 14;
  pointer-events: stroke;
}
.circuit .reach-inside {
  stroke-width: 10;
  pointer-events: none;
}
.circuit .way {
  stroke: var(--accent);
  stroke-width: 15;
}
.circuit .way-inside {
  stroke: var(--paper);
  stroke-width: 11;
}
.circuit .halo {
  fill: none;
  stroke: var(--accent);
  stroke-width: 2;
}
.circuit .wire.flow-0,
.circuit .leg.flow-0 {
  stroke: var(--edge);
  stroke-width: 1;
}
.circuit .wire.flow-1,
.circuit .leg.flow-1 {
  stroke-width: 1.5;
}
.circuit .wire.flow-2,
.circuit .leg.flow-2 {
  stroke-width: 2.5;
}
.circuit .wire.flow-3,
.circuit .leg.flow-3 {
  stroke-width: 3.5;
}
.circuit .wire.flow-4,
.circuit .leg.flow-4 {
  stroke-width: 5;
}
.circuit .arrowhead {
  fill: var(--paper);
  stroke: var(--ink);
  stroke-width: 1.4;
  stroke-linejoin: round;
}
.circuit .knot {
  fill: var(--paper);
  stroke: var(--ink);
  stroke-width: 1.5;
}
.circuit .at-joint .knot,
.circuit .junction,
.circuit .dot,
.circuit .plate {
  fill: var(--ink);
}
.circuit .value,
.circuit .letters {
  fill: var(--ink-soft);
}
.circuit .piece.on-way .name {
  text-decoration: underline;
}
.circuit .node.selected .hit {
  fill: transparent;
}
.circuit .link.selected .reach,
.circuit .link:focus-visible .reach {
  stroke: var(--accent);
  stroke-width: 17;
}
.circuit .link:focus-visible .reach {
  stroke: var(--focus);
}
.circuit .link.selected .reach-inside,
.circuit .link:focus-visible .reach-inside {
  stroke: var(--accent-soft);
  stroke-width: 9;
}
.circuit .link.offered .reach {
  stroke: var(--accent);
  stroke-width: 9;
  stroke-dasharray: 2 6;
}
.circuit .link.offered .reach-inside {
  stroke: var(--paper);
  stroke-width: 5;
}
`
