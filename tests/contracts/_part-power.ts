/** Power that a part takes at its branches, for any voltages and currents that its linear law allows. */

import { add, type Complex, divide, multiply } from '../support/complex.ts'
import type { Laws } from '../unit/parts/_heard.ts'

/** Power in watts and the size of its terms; `drive` gives each branch's free coordinate. */
export function powerTaken(
  { branches, mutuals }: Laws,
  drive: readonly Complex[],
): { readonly power: number; readonly size: number } {
  let power = 0
  let size = 0
  branches.forEach((heard, k) => {
    const free = drive[k] ?? { re: 0, im: 0 }
    let voltage = free
    let current = free
    if (heard.form === 'admittance') current = multiply(heard.y, free)
    else if (heard.a === 0) return
    else {
      let sum = multiply(heard.z, free)
      for (const [pair, m] of Object.entries(mutuals)) {
        const [branch, other] = pair.split(',').map(Number)
        const heardOther = branches[other ?? -1]
        const carries = heardOther?.form === 'equation' && heardOther.a !== 0
        if (branch === k && carries) sum = add(sum, multiply(m, drive[other ?? -1] ?? { re: 0, im: 0 }))
      }
      voltage = divide(sum, { re: heard.a, im: 0 })
    }
    power += voltage.re * current.re + voltage.im * current.im
    size += Math.hypot(voltage.re, voltage.im) * Math.hypot(current.re, current.im)
  })
  return { power, size }
}
