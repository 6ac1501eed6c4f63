import type { PartLaw, PartSpec } from './kind.ts'

/** Admittance between two contacts, siemens: to direct current, and to alternating current at one frequency. */
export interface PortPath {
  readonly from: string
  readonly to: string
  readonly direct: number
  readonly alternating: readonly [re: number, im: number]
}

/** What a linear set is to the rest of the network: an admittance between each two contacts of its plug. */
export interface PortSpec extends PartSpec {
  readonly kind: 'port'
  readonly paths: readonly PortPath[]
}

/**
 * A set as others see it through the contacts of its plug; it stands in for the whole set where that is linear and is
 * not looked into. Reciprocal networks of three and four terminals are as many admittances as there are pairs.
 * @source delta equivalent of a reciprocal network, textbook
 */
export const port: PartLaw<PortSpec> = {
  kind: 'port',
  says: 'A set as others see it through its plug.',
  branches: (spec) =>
    spec.paths.map(({ from, to }, k) => ({ suffix: String(k), from, to, form: 'admittance' })),
  law(spec, at, _gate, sink) {
    spec.paths.forEach(({ direct, alternating: [re, im] }, k) => {
      if (at.analysis === 'direct') sink.admittance(k, direct, 0)
      else sink.admittance(k, re, im)
    })
  },
}
