/** Which branches carry a current one way round and hardly the other: told by their laws, whatever kind they are of. */
import type { Netlist } from '../netlist/netlist.ts'
import type { LawPoint, LawSink } from '../parts/kind.ts'

/** Where a law is asked, V and A: below every diode's drop, so that none is asked for kiloamperes. */
const ASKED = { voltage: 0.3, current: 1e-4 }
/** From this ratio of its slopes, one way round and the other, a branch has a polarity. */
const POLAR = 2

/** Branches, by index, whose slope one way round is more than twice that of the other. */
export function polarBranches({ parts }: Netlist): ReadonlySet<number> {
  const polar = new Set<number>()
  for (const part of parts) {
    const { law, spec, first, count } = part
    if (law.bends?.(spec).includes('direct') !== true) continue
    const slopes = (sign: number): readonly number[] => {
      const sink = new SlopeSink(count)
      const working = { voltage: sign * ASKED.voltage, current: sign * ASKED.current }
      const at: LawPoint = { analysis: 'direct', omega: 0, direct: () => working }
      law.law(spec, at, 'closed', sink)
      return sink.slopes
    }
    const [there, back] = [slopes(1), slopes(-1)]
    for (let k = 0; k < count; k += 1) {
      const [p, q] = [there[k] ?? 0, back[k] ?? 0]
      if (Math.max(p, q) > POLAR * Math.min(p, q)) polar.add(first + k)
    }
  }
  return polar
}

/** Hears of each law its slope, S. */
class SlopeSink implements LawSink {
  readonly slopes: number[]
  constructor(count: number) {
    this.slopes = Array.from({ length: count }, () => 0)
  }
  admittance(branch: number, yRe: number): void {
    this.slopes[branch] = Math.abs(yRe)
  }
  equation(branch: number, a: number, zRe: number): void {
    this.slopes[branch] = zRe === 0 ? (a === 0 ? 0 : Number.MAX_VALUE) : Math.abs(a / zRe)
  }
  mutual(): void {
    // coupling has no polarity
  }
}
