/** Do the bells together stay within the ringing load of this line, by the definition that its sheet names? */

import type { Changes, Figure, RingingLoadName } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { isLoadName } from '../../figures/ringing-definitions.ts'
import { ringingLoad, ringingLoadTotal } from '../../figures/ringing-load.ts'
import type { NetPlace } from '../../netlist/netlist.ts'
import type { CheckContext, Rule } from '../context.ts'
import { MARGINAL_BELOW } from '../judge.ts'
import { type Limit, limitOf } from '../limits.ts'
import { BELL_RESISTOR, judgeAndMend, largestFirst, type Mended, namesOf } from '../mends.ts'
import type { Verdict, VerdictLimit } from '../rule.ts'
import { ofLine } from '../sheet-limit.ts'
import { unanswered } from '../unanswered.ts'
import { everybody } from './everybody.ts'

/** The definition where a line's sheet names none. */
const USUAL: RingingLoadName = 'four-kilohm-unit'

/** Published limits of a line, for lines whose sheets set none; two definitions have none. */
const PUBLISHED: Readonly<Partial<Record<RingingLoadName, string>>> = {
  'four-kilohm-unit': 'ringing-load-four-kilohm-unit',
  'unit-ringer': 'ringing-load-unit-ringer',
  'type-a': 'ringing-load-type-a',
  'type-b': 'ringing-load-type-b',
}

export const ringingLoadOfLine: Rule = {
  id: 'line.ringing-load',
  asks: 'Do the bells together stay within the ringing load of this line?',
  once: true,
  run(context) {
    const { net } = context
    const id = ringingLoadOfLine.id
    if (net.line === undefined) return [unanswered(context, id, 'no-line', 'The set stands on no line.')]
    const said = net.line.sheet.limits['load by']
    const name = said ?? USUAL
    if (!isLoadName(name)) {
      const says = `The sheet of this line measures by \`${name}\`, which is no definition known here.`
      return [unanswered(context, id, 'no-limit', says, null, net.name)]
    }
    const figure = total(context, name, net.places)
    const limit = limitFor(context, name, said !== undefined)
    if (limit === undefined) {
      const says = 'Neither the sheet of this line nor a paper known here sets a limit in this measure.'
      return [unanswered(context, id, 'no-limit', says, figure, net.name)]
    }
    const each = net.places.map((place) => context.figure(loadOf(context, name, place)))
    return [
      tight(
        judgeAndMend(
          {
            check: id,
            subject: net.name,
            figure,
            limit,
            path: [],
            says: {
              good: 'The ringing loads together stay within what this line drives.',
              bad: 'The ringing loads together are more than this line drives.',
            },
            tight: TIGHT,
            consequences: each.map((one) => ({ figure: one })),
          },
          () => mendOf(context, name, figure, each, limit.value),
        ),
      ),
    ]
  },
}

/** What each set loads the line with, in the measure that is judged, and the most that all may; no limit where none is known. */
export function loadsOnLine(
  context: CheckContext,
  changes: Changes = {},
): {
  readonly most: number
  readonly loads: ReadonlyMap<string, number>
} {
  const { net } = context
  const said = net.line?.sheet.limits['load by']
  const name = said ?? USUAL
  if (!isLoadName(name)) return { most: Number.POSITIVE_INFINITY, loads: new Map() }
  const most = limitFor(context, name, said !== undefined)?.value ?? Number.POSITIVE_INFINITY
  const loads = net.places.map(
    (place) => [place.place, amountOf(context.figure(loadOf(context, name, place, changes)))] as const,
  )
  return { most, loads: new Map(loads) }
}

const TIGHT = 'one set more is too many for this line'

/** A load is no count: what leaves less than the usual margin is marginal. */
function tight(verdict: Verdict): Verdict {
  if (verdict.state !== 'holds' || (verdict.margin ?? 1) >= MARGINAL_BELOW) return verdict
  const { remark: _, ...rest } = verdict
  return { ...rest, state: 'marginal', mend: TIGHT }
}

function loadOf({ net }: CheckContext, name: RingingLoadName, place: NetPlace, changes: Changes = {}) {
  return ringingLoad(net, place, name, everybody('ringing'), changes)
}

function total(
  context: CheckContext,
  name: RingingLoadName,
  places: readonly NetPlace[],
  changes: Changes = {},
): Figure {
  const { net } = context
  return context.figure(ringingLoadTotal(net, places, name, everybody('ringing'), net.name, changes))
}

/** The limit of the line's sheet, which counts only beside the definition that it is in; else a published one. */
function limitFor(
  { net, limits }: CheckContext,
  name: RingingLoadName,
  named: boolean,
): Limit | VerdictLimit | undefined {
  const own = net.line?.sheet.limits['ringing load']
  if (own !== undefined && named) return ofLine(own, 'at-most', '1', 'limits: ringing load')
  const published = PUBLISHED[name]
  return published === undefined ? undefined : limitOf(limits, published)
}

/** Who goes, the heaviest first; `any one of them` where all are alike. */
function goingOf(order: readonly { place: NetPlace; load: number }[], gone: number): string {
  const most = order[0]?.load ?? 0
  const loading = order.filter(({ load }) => load > NEXT_TO_NOTHING * most)
  const least = loading.at(-1)?.load ?? most
  if (most - least < ALIKE * most && loading.length > gone)
    return gone === 1 ? 'any one of them' : `any ${gone} of them`
  return namesOf(order.slice(0, gone).map(({ place }) => place.place))
}

/** Loads that differ by less than this share are alike. */
const ALIKE = 0.05

/** Share of the heaviest load below which a set loads the line with next to nothing. */
const NEXT_TO_NOTHING = 0.1

/** How many loads one bell must be to be worth a resistor of its own. */
const HEAVY = 1.5

interface Loading {
  readonly place: NetPlace
  readonly load: number
}

/** A bell resistor at the heaviest set, where that is enough; else the fewest sets to go, the heaviest first. */
function mendOf(
  context: CheckContext,
  name: RingingLoadName,
  figure: Figure,
  each: readonly Figure[],
  most: number,
): Mended {
  const order = heaviestFirst(context, each)
  const [heaviest] = order
  if (heaviest !== undefined && heaviest.load > HEAVY) {
    const changes = resistorIn(context, heaviest.place)
    const mended = total(context, name, context.net.places, changes)
    const among = order.length > 1 ? ', the heaviest of them' : ''
    const fit = `put a bell resistor of ${BELL_RESISTOR.text} into ${heaviest.place.place}${among}`
    if (mended.value !== null && mended.value <= most)
      return { mend: fit, consequences: [{ figure, mended }] }
    // what is too much by itself is no better off on another line
    if (heaviest.load > most && mended.value !== null) {
      const eased = context.net.places.map((place) => context.figure(loadOf(context, name, place, changes)))
      const going = fewest(heaviestFirst(context, eased), mended.value, most)
      const left = total(context, name, going.stay, changes)
      const mend = `move ${going.who} to another line, and put a bell resistor of ${BELL_RESISTOR.text} into ${heaviest.place.place}, which by itself is more than such a line drives`
      return { mend, consequences: [{ figure, mended: left }] }
    }
  }
  const { who, stay } = fewest(order, amountOf(figure), most)
  return {
    mend: `move ${who} to another line`,
    consequences: [{ figure, mended: total(context, name, stay) }],
  }
}

function heaviestFirst({ net }: CheckContext, each: readonly Figure[]): readonly Loading[] {
  return largestFirst(
    net.places.map((place, k) => ({ place, load: amountOf(each[k]) })),
    ({ load }) => load,
  )
}

function resistorIn({ net }: CheckContext, { place }: NetPlace): Changes {
  const bells = net.branches.filter(({ part }) => part.place === place && part.role === 'sounder')
  return { within: bells.map(({ index }) => ({ branch: index, ohms: BELL_RESISTOR.value })) }
}

/** The fewest sets to go, the heaviest first, and who stays. */
function fewest(
  order: readonly Loading[],
  all: number,
  most: number,
): { readonly who: string; readonly stay: readonly NetPlace[] } {
  let left = all
  let gone = 0
  while (left > most && gone < order.length) {
    left -= order[gone]?.load ?? 0
    gone += 1
  }
  return { who: goingOf(order, gone), stay: order.slice(gone).map(({ place }) => place) }
}
