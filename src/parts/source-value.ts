import type { Phasor, Quantity } from '../quantities/quantity.ts'
import type { TwoEnds } from './ends.ts'
import type { LawPoint } from './kind.ts'

/** An ideal source; `direct` counts in DC, `alternating` (rms, e^{+jωt}) in AC; absent means zero. */
export interface SourceSpec extends TwoEnds {
  readonly kind: 'voltage-source' | 'current-source'
  readonly direct?: Quantity
  readonly alternating?: Phasor
}

/** What the source gives in an analysis, V or A, real and imaginary part. */
export function sourceValue(spec: SourceSpec, at: LawPoint): readonly [re: number, im: number] {
  if (at.analysis === 'direct') return [spec.direct?.value ?? 0, 0]
  const { alternating } = spec
  if (alternating === undefined) return [0, 0]
  const size = alternating.magnitude.value
  return [size * Math.cos(alternating.angle), size * Math.sin(alternating.angle)]
}
