/** A strap missing on the loop, or in the way of the bell. */
import { type CheckContext, nodeShort, when, wireAt } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { speechFigures } from '../checks/wiring/landing.ts'
import type { Move } from '../sheet/model.ts'
import { bellWorth, bestStrap, speechWorth } from './best-strap.ts'
import { become, becomeAll, ownBellCurrents, SILENT } from './measure.ts'
import { type FaultRule, failing } from './named-fault.ts'
import { firstThatMends, judged, mendOf, type Tried } from './try-mend.ts'
import { fitStrap, homeMoves, ids, type StrapBetween } from './wires.ts'

const LOOP = [
  'wiring.loop-through-set',
  'wiring.loop-closed-off-hook',
  'wiring.cores-reach-parts',
  'wiring.no-part-left-out',
]

/** Without one strap the loop is open off-hook; with it both line wires carry it, and the set speaks. */
export const strapMissingOnLoop: FaultRule = {
  id: 'strap-missing-on-loop',
  title: 'strap missing on the loop',
  explains: LOOP,
  yieldsTo: ['unit-missing', 'core-on-dead-terminal', 'cores-joined'],
  find(context, verdicts) {
    const [first] = failing(verdicts, ...LOOP.slice(0, 2))
    // a core off its terminal is no strap that is missing
    if (first === undefined || firstThatMends(context, verdicts, homeMoves(context), LOOP)) return []
    const best = bestStrap(context, 'off-hook', speechWorth)
    const tried = best && firstThatMends(context, verdicts, [[fitStrap(context, best)]], LOOP)
    if (best === undefined || tried === undefined) return []
    const [from, to] = [best.from, best.to].map((node) => nodeShort(context, node))
    return [
      {
        subject: `${from}-${to}`,
        condition: when(context, 'off-hook'),
        says: `Nothing joins ${from} with ${to}, and the loop is open there off-hook: the set neither calls nor speaks.`,
        path: [...new Set([...first.path, ...ids(context, [best.from, best.to])])],
        consequences: [
          ...become(first.figure ?? undefined, judged(tried.after, [first.check])[0]?.figure ?? undefined),
          ...becomeAll(speechFigures(context), speechFigures(tried.after)),
        ],
        ...mendOf(tried),
      },
    ]
  },
}

const BELL = ['wiring.bell-return', 'wiring.ringing-lead-to-bell', 'wiring.no-part-left-out']

/** Without one strap the ringing lead does not reach the bell, or the bell does not return. */
export const strapMissingAtBell: FaultRule = {
  id: 'strap-missing-at-bell',
  title: 'strap missing in the way of the bell',
  explains: BELL,
  yieldsTo: [
    'core-on-dead-terminal',
    'reversed-at-cord',
    'bell-returned-wrong',
    'mirrored-numbering',
    'own-capacitor-left-in',
    'ringing-lead-touching',
    'extension-bell-in-series',
  ],
  find(context, verdicts, told) {
    const [first] = failing(verdicts, ...BELL.slice(0, 2))
    // a core that is parked is not a strap that is missing
    const lead = wireAt(context, 'ringing')
    const parked = context.place.cores.some(({ far, lands }) => far === lead && lands === undefined)
    // a bell that gets too little has another fault than an open way
    const open = ownBellCurrents(context).some(({ value }) => (value ?? 0) < SILENT)
    // a set of two wires has no lead to wait for
    const waits = lead !== undefined ? parked : context.place.meets[3] !== undefined
    if (first === undefined || first.path.some((id) => told.has(id))) return []
    if (waits || !open || firstThatMends(context, verdicts, homeMoves(context), BELL)) return []
    const best = bestStrap(context, 'on-hook', bellWorth)
    const tried = best && bellTried(context, verdicts, best)
    if (best === undefined || tried === undefined) return []
    const [from, to] = [best.from, best.to].map((node) => nodeShort(context, node))
    return [
      {
        subject: `${from}-${to}`,
        condition: when(context, 'on-hook/ringing'),
        says: `Nothing joins ${from} with ${to}, where a strap or a bell resistor belongs, and the way of the bell is open there: it is silent.`,
        path: [...new Set([...first.path, ...ids(context, [best.from, best.to])])],
        consequences: becomeAll(ownBellCurrents(context), ownBellCurrents(tried.after)),
        ...mendOf(tried),
      },
    ]
  },
}

function bellTried(
  context: CheckContext,
  verdicts: readonly Verdict[],
  strap: StrapBetween,
): Tried | undefined {
  const moves: readonly Move[] = [fitStrap(context, strap)]
  return firstThatMends(
    context,
    verdicts,
    [moves],
    [...BELL, 'wiring.ringing-lead-alone', 'wiring.loop-open-on-hook', 'wiring.spares-free'],
  )
}
