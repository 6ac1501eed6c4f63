/** Which readings are worth thinking about: where known sets have straps, parts and contacts, and where cords land. */
import type { Pair } from './expected.ts'
import type { KnownSet } from './known.ts'

/** Terminals and the two ends of something between them, by their names. */
type Ends = readonly [string, string]

/** Handset down and up; off-normal too where a contact of the dial lies between. */
const ALWAYS = ['on-hook', 'off-hook'] as const
const DIALLING = 'off-hook/make'

/** Readings that may tell known sets apart, each once, in the order of the sets' sheets. */
export function candidatePairs(among: readonly KnownSet[]): readonly Pair[] {
  const pairs = new Map<string, Pair>()
  const seen = new Set<string>()
  for (const known of among) {
    if (seen.has(known.wiring)) continue
    seen.add(known.wiring)
    for (const [ends, conditions] of endsOf(known)) {
      const [red, black] = [...ends].sort(byTerminal)
      if (red === undefined || black === undefined) continue
      for (const condition of conditions) pairs.set(`${red} ${black} ${condition}`, { red, black, condition })
    }
  }
  return [...pairs.values()]
}

/** By the strip, then by the number: A2 before A10. */
export function byTerminal(a: string, b: string): number {
  const [p, q] = [/\d+$/.exec(a)?.[0] ?? '', /\d+$/.exec(b)?.[0] ?? '']
  const [strip, other] = [a.slice(0, a.length - p.length), b.slice(0, b.length - q.length)]
  return strip === other ? Number(p) - Number(q) : strip < other ? -1 : 1
}

function* endsOf({ net, sheet }: KnownSet): Generator<readonly [Ends, readonly string[]]> {
  const terminals = new Set(net.places.flatMap((place) => place.terminals))
  const name = (node: number): string => (net.nodes[node] ?? '').replace(/^[^/]*\//, '')
  for (const { from, to, part } of net.branches) {
    if (from === to || !terminals.has(from) || !terminals.has(to)) continue
    const word = part.gate?.word
    const dials = word !== undefined && word !== 'off-hook' && word !== 'key'
    yield [[name(from), name(to)], dials ? [...ALWAYS, DIALLING] : ALWAYS]
  }
  const landed = landingsOf(sheet)
  for (const [k, one] of landed.entries()) {
    for (const other of landed.slice(k + 1)) yield [[one, other], ALWAYS]
  }
}

/** Terminals on which its cords land. */
function landingsOf({ cords }: KnownSet['sheet']): readonly string[] {
  const all = Object.values(cords).flatMap(({ cores }) => Object.values(cores).map(({ lands }) => lands))
  return [...new Set(all.filter((one) => one !== 'parked'))]
}
