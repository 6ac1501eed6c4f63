/** Plain elements as the laws that they stand for. */
import type { ElementSink, LawPoint } from 'ringproof/parts/kind'
import type { Heard, Laws, Pair } from '../unit/parts/_heard.ts'
import type { Subject } from './_part-curve.ts'

/** What the elements of a part say of each branch, as laws at a frequency. */
export function elementsAt({ law, spec }: Subject, at: LawPoint, gate: 'open' | 'closed'): Laws | undefined {
  const branches: Heard[] = []
  const mutuals: Record<string, Pair> = {}
  const note = (branch: number, heard: Heard): void => {
    if (branches[branch] !== undefined) throw new Error(`branch ${branch} stated twice`)
    branches[branch] = heard
  }
  const sink: ElementSink = {
    open: (branch) => note(branch, { form: 'equation', a: 0, z: { re: 1, im: 0 }, e: { re: 0, im: 0 } }),
    series: (branch, ohms, henries, re = 0, im = 0) =>
      note(branch, { form: 'equation', a: 1, z: { re: ohms, im: at.omega * henries }, e: { re, im } }),
    beside: (branch, ohms, farads, re = 0, im = 0) =>
      note(branch, { form: 'admittance', y: { re: 1 / ohms, im: at.omega * farads }, s: { re, im } }),
    coupled: (branch, other, k, henries, otherHenries) => {
      mutuals[`${branch},${other}`] = { re: 0, im: at.omega * k * Math.sqrt(henries * otherHenries) }
    },
  }
  if (law.elements === undefined) return undefined
  law.elements(spec, at, gate, sink)
  return { branches, mutuals }
}

/** A law in the one form that two ways of stating it have in common: what carries nothing, a·v = z·i + e, or i = y·v + s. */
export function plainly(heard: Heard): object {
  if (heard.form === 'equation') {
    if (heard.a === 0) return { carries: 'nothing' }
    // an open contact states v/R − i = 0
    if (heard.a !== 1) return { y: { re: heard.a / heard.z.re, im: 0 }, s: { re: 0, im: 0 } }
    return { z: heard.z, e: heard.e }
  }
  const { y, s } = heard
  return [y.re, y.im, s.re, s.im].every((one) => one === 0) ? { carries: 'nothing' } : { y, s }
}
