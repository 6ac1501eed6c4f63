/** The direct-current point around which alternating current is small; found once for all frequencies. */
import type { Netlist } from '../../netlist/netlist.ts'
import type { PartSpec } from '../../parts/kind.ts'
import { isBent, Laws, type Point } from '../laws.ts'
import type { Question } from '../question.ts'
import { newton, type Working } from './newton.ts'

/** Points of one netlist that are kept at the same time. */
const KEPT = 64

const known = new WeakMap<Netlist, Map<string, Working>>()

/**
 * The point in which a question's condition and changes leave the bent parts; undefined where nothing bends.
 * The sheets' sources feed it even where a question leaves them out of its alternating current.
 * @throws ProblemError `no-convergence`
 */
export function operatingPoint(net: Netlist, question: Question): Point | undefined {
  if (question.small !== undefined) return undefined
  if (!bends(net, question)) return undefined
  const { condition, lifted, added, bridges, within, instead } = question
  const direct: Question = {
    analysis: 'direct',
    condition,
    ...(lifted === undefined ? {} : { lifted }),
    ...(added === undefined ? {} : { added }),
    ...(bridges === undefined ? {} : { bridges }),
    ...(within === undefined ? {} : { within }),
    ...(instead === undefined ? {} : { instead }),
  }
  return (pointsOf(net).get(keyOf(direct)) ?? settledDirect(net, new Laws(net, direct), direct)).point
}

/**
 * The solved network of a direct question whose laws bend, about its point; a point that is known is where the last step
 * begins and ends. Laws are left filled about it.
 * @throws ProblemError `no-convergence`
 */
export function settledDirect(net: Netlist, laws: Laws, question: Question): Working {
  const { probes, series, sources } = question
  // only what the sheets' own sources feed is asked for again
  const isKept = probes === undefined && series === undefined && sources !== 'none'
  const key = keyOf(question)
  const points = pointsOf(net)
  const before = isKept ? points.get(key) : undefined
  if (before !== undefined) {
    laws.fill(net, question, { direct: before.about })
    return before
  }
  const found = newton(net, laws, question)
  if (isKept) points.set(key, found)
  return found
}

/** What a point hangs on. */
function keyOf({ condition, lifted, added, bridges, within, instead }: Question): string {
  return JSON.stringify([condition, lifted, added, bridges, within, instead])
}

function pointsOf(net: Netlist): Map<string, Working> {
  const before = known.get(net)
  if (before !== undefined && before.size < KEPT) return before
  const points = new Map<string, Working>()
  known.set(net, points)
  return points
}

/** Whether some law hangs on the point, with the values that the question gives to parts. */
function bends(net: Netlist, { instead = [] }: Question): boolean {
  const other = ({ part, spec }: { part: number; spec: PartSpec }): boolean => {
    const own = net.parts[part]
    return own !== undefined && isBent({ law: own.law, spec })
  }
  return net.parts.some(isBent) || instead.some(other)
}
