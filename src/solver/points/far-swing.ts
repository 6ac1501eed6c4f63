/**
 * Where the alternating voltage of real sources swings a part far along a law that bends, its slope at the direct point is
 * no longer what it does. Such a part is named as a stand-in: the figure that rests on it is approximate.
 */
import { branchAt, type Netlist } from '../../netlist/netlist.ts'
import type { LawSink } from '../../parts/kind.ts'
import { type Laws, type Point, workingAt } from '../laws.ts'
import { branchesOf, type Linear } from '../linear.ts'
import type { Question } from '../question.ts'

/** A slope that changes by less than this share over the swing is a slope. */
const STRAIGHT = 0.1
/** Swings below this, V or A, are small whatever the law. */
const STILL = 1e-9

/** Names, in `standIns`, every bent part that the solved alternating current swings beyond its slope. Only the sheets' own sources count: test signals have no size. */
export function noteFarSwings(
  net: Netlist,
  laws: Laws,
  question: Question,
  linear: Linear,
  point: Point | undefined,
  standIns: Map<string, readonly number[]>,
): void {
  if (question.sources === 'none' || point === undefined || laws.bent.direct.length === 0) return
  const { falls, currents } = branchesOf(laws, linear, true)
  const hangsOnSize = new Set(laws.bent.swing)
  for (const k of laws.bent.direct) {
    if (hangsOnSize.has(k)) continue
    const volts = Math.SQRT2 * Math.hypot(falls[2 * k]!, falls[2 * k + 1]!)
    const amperes = Math.SQRT2 * Math.hypot(currents[2 * k]!, currents[2 * k + 1]!)
    if (volts < STILL && amperes < STILL) continue
    const { part, ordinal } = branchAt(net, k)
    const at = workingAt(point, k)
    const slopes = [-1, 0, 1].map((side) => {
      const heard = new SlopeSink(ordinal)
      const working = { voltage: at.voltage + side * volts, current: at.current + side * amperes }
      part.law.law(part.spec, { analysis: 'direct', omega: 0, direct: () => working }, 'closed', heard)
      return heard.siemens
    })
    const most = Math.max(...slopes)
    if (most - Math.min(...slopes) <= STRAIGHT * most) continue
    const reason = `${part.name} by its slope, although the alternating voltage swings it far`
    standIns.set(reason, [...(standIns.get(reason) ?? []), k])
  }
}

/** Hears the slope of one branch, siemens. */
class SlopeSink implements LawSink {
  siemens = 0
  readonly #ordinal: number
  constructor(ordinal: number) {
    this.#ordinal = ordinal
  }
  admittance(branch: number, yRe: number): void {
    if (branch === this.#ordinal) this.siemens = yRe
  }
  equation(branch: number, a: number, zRe: number): void {
    if (branch === this.#ordinal) this.siemens = a === 0 ? 0 : a / Math.max(zRe, Number.MIN_VALUE)
  }
  mutual(): void {
    // a bent part couples nothing
  }
}
