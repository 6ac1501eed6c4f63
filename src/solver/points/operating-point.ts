/** The direct-current point around which alternating current is small; found once for all frequencies. */
import type { Netlist, NetPart } from '../../netlist/netlist.ts'
import type { PartSpec } from '../../parts/kind.ts'
import { Laws, type Point } from '../laws.ts'
import type { Question } from '../question.ts'
import { newton } from './newton.ts'

/** Points of one netlist that are kept at the same time. */
const KEPT = 256

const known = new WeakMap<Netlist, Map<string, Point>>()

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
  let points = known.get(net)
  if (points === undefined || points.size >= KEPT) {
    points = new Map()
    known.set(net, points)
  }
  const key = JSON.stringify([condition, lifted, added, bridges, within, instead])
  const before = points.get(key)
  if (before !== undefined) return before
  const { point } = newton(net, new Laws(net, direct), direct)
  points.set(key, point)
  return point
}

/** Whether some law hangs on the point, with the values that the question gives to parts. */
function bends(net: Netlist, { instead = [] }: Question): boolean {
  const hangs = (part: NetPart | undefined, spec: PartSpec | undefined): boolean =>
    part !== undefined && spec !== undefined && part.law.bends?.(spec).includes('direct') === true
  return (
    net.parts.some((part) => hangs(part, part.spec)) ||
    instead.some(({ part, spec }) => hangs(net.parts[part], spec))
  )
}
