import { seededRandom } from 'ringproof/algebra/random'
import { drawWide, type WideErrors, wideErrors } from '../support/wide-range.ts'

const WAYS: readonly (readonly [keyof WideErrors, string])[] = [
  ['conductances', 'conductances alone, in doubles'],
  ['equations', 'links, sources and ohms below 1 Ω as equations'],
  ['refined', 'the same, refined part by part'],
]

/** How many of so many random networks from 1 mΩ to 1 GΩ are good to nine digits, by each way of solving. */
export function wideTable(circuits: number, seed: number): string {
  const random = seededRandom(seed)
  const errors = Array.from({ length: circuits }, () => wideErrors(drawWide(random)))
  const rows = WAYS.map(([way, says]) => {
    const good = errors.filter((one) => one[way] <= 1e-9).length
    const worst = Math.max(0, ...errors.map((one) => one[way]))
    return `  ${says.padEnd(48)} ${String(good).padStart(5)} of ${circuits}   worst ${worst.toExponential(1)}`
  })
  return [
    `1 mΩ to 1 GΩ, ${circuits} random networks, every voltage and current against exact fractions, seed ${seed}:`,
    ...rows,
    '',
  ].join('\n')
}
