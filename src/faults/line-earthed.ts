/** A core that lies on a line wire and on the earth of its socket: it takes the whole line, whoever's set it is in. */
import { type CheckContext, plugLinks, when, wireAt } from '../checks/context.ts'
import type { Consequence, Verdict } from '../checks/rule.ts'
import { earthFree } from '../checks/wiring/free.ts'
import { conducting, linksOf, without } from '../netlist/conduct.ts'
import type { NetCore } from '../netlist/netlist.ts'
import { type Path, pathBetween } from '../netlist/paths.ts'
import { type Cured, curedBy, judgedEverywhere } from './judge-whole.ts'
import { becomeAll, tells } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { figuresOf, waysFree } from './spare-core-joined.ts'
import { firstThatMends, mendOf } from './try-mend.ts'
import { ids } from './wires.ts'

const SHOWS = ['wiring.spares-free', earthFree.id]
const EXPLAINS = [
  ...SHOWS,
  'wiring.loop-through-set',
  'wiring.loop-open-on-hook',
  'wiring.loop-closed-off-hook',
  'line.current',
  'line.leakage',
  'line.no-false-trip',
  'line.answers-while-ringing',
  'bell.rings-alone',
  'bell.rings-with-all',
  'dial.understood',
  'speech.sends',
  'speech.receives',
  'speech.two-sets',
]

/** Says what it spoils in the sets of all places, as the trial of its mend shows. */
export const lineEarthed: FaultRule = {
  id: 'line-earthed',
  title: 'core that earths a line wire',
  explains: EXPLAINS,
  once: true,
  find: (context, verdicts) =>
    failing(verdicts, earthFree.id).flatMap(({ subject }) => {
      const place = context.net.places.find((one) => one.place === subject)
      if (place?.socket?.earth !== true) return []
      const there = context.place.place === subject ? context : context.trial(context.installation, subject)
      return earthing(there, verdicts)
    }),
}

/** The core in the earth contact of the plug, where links alone join it to a line wire. */
function earthing(context: CheckContext, verdicts: readonly Verdict[]): readonly Finding[] {
  const { net, place } = context
  const core = place.cores.find(({ endsIn, far }) => endsIn === 'plug' && far === place.meets[4])
  if (core === undefined) return []
  const links = linksOf(without(conducting(net, when(context, 'on-hook'), 'direct'), plugLinks(context)))
  for (const wire of ['b', 'a'] as const) {
    const node = wireAt(context, wire)
    const path = node === undefined ? undefined : pathBetween(net, links, node, core.far)
    if (path === undefined) continue
    const found = earthed(context, verdicts, core, wire, path)
    if (found !== undefined) return [found]
  }
  return []
}

function earthed(
  context: CheckContext,
  all: readonly Verdict[],
  core: NetCore,
  wire: 'a' | 'b',
  path: Path,
): Finding | undefined {
  const { place } = context
  const mine = all.filter(({ subject }) => subject === place.place || subject.startsWith(`${place.place}/`))
  const tried = firstThatMends(context, mine, waysFree(context, core, path), SHOWS)
  if (tried === undefined) return undefined
  const ends = ids(context, [core.far, wireAt(context, wire)])
  const cured = curedBy(all, judgedEverywhere(tried.after))
  const others = [...new Set(cured.map(({ place: one }) => one))].filter((one) => one !== place.place)
  const reach =
    others.length === 0 || others.every((one) => one === '')
      ? ''
      : ` With it ${others.filter((one) => one !== '').join(', ')} suffers too.`
  return {
    subject: core.name,
    condition: when(context, 'on-hook'),
    says: `The core ${core.name} of ${place.place} meets the ${wire} wire, and its contact is the earth of this socket: the line is earthed all the time, and to the exchange it is out of order.${reach}`,
    path: ids(context, [core.far, core.lands, wireAt(context, wire)]),
    consequences: [
      ...becomeAll(figuresOf(context, ends), figuresOf(tried.after, ends)).filter(tells),
      ...firstOfEach(cured),
    ],
    ...mendOf(tried),
    explains: [
      ...new Set([...SHOWS.filter((id) => failing(mine, id).length > 0), ...cured.map(({ check }) => check)]),
    ],
  }
}

/** One figure of each place and one of the line: they show how far the fault reaches. */
function firstOfEach(cured: readonly Cured[]): readonly Consequence[] {
  const seen = new Set<string>()
  return cured.flatMap(({ place, consequence }) => {
    const [first] = consequence
    if (first?.mended === undefined || seen.has(place)) return []
    seen.add(place)
    return [first]
  })
}
