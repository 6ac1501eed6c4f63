import { kindOf } from 'ringproof/parts/index'
import { settled } from '../../contracts/_part-curve.ts'
import { spec } from './_heard.ts'

/** Where Newton comes to rest. */
export interface Newton {
  readonly steps: number
  readonly voltage: number
  readonly current: number
}

/** A part's first branch in a source behind a resistance, from rest. */
export function newton(
  written: { readonly kind: string; readonly [key: string]: unknown },
  volts: number,
  ohms: number,
): Newton {
  const one = spec(written)
  const found = settled({ law: kindOf(one), spec: one }, 0, volts, ohms)
  if (found === undefined) throw new Error('does not come to rest')
  return { steps: found.steps, ...found.working }
}
