/** What a set is to the rest of the network through the contacts of its plug, where nothing in it hangs on the rest. */
import { createDense } from '../algebra/dense.ts'
import type { Condition } from '../netlist/condition.ts'
import { conducting, without } from '../netlist/conduct.ts'
import { branchAt, type Netlist } from '../netlist/netlist.ts'
import { joinedTo } from '../netlist/paths.ts'
import { pairsOf } from '../netlist/portion.ts'
import type { PortSpec } from '../parts/port.ts'
import { Matrix } from './matrix.ts'
import type { Question } from './question.ts'
import { currentIn, type Solution } from './solution.ts'

/** The set at one frequency, or to direct current. */
export interface Equivalent {
  /** Siemens between each two contacts, in the order of `pairsOf`. */
  readonly paths: readonly { readonly re: number; readonly im: number }[]
  /** Why figures that rest on it are approximate. */
  readonly reasons: readonly string[]
}

/** Ohms between each contact and earth while the set is measured. */
const LINK = 1

/** A smaller share of the largest admittance is what rounding leaves; as a conductance it would join what is apart. */
const ROUNDING = 1e-15

/**
 * Whether a set is linear whatever the rest does: it has no source and touches no earth of its own, the size of no
 * alternating voltage matters to it, and no direct current can flow through a part whose law bends, since at most one
 * contact can be reached from there.
 * @param own the set alone
 */
export function isLinear(own: Netlist, contacts: readonly number[], condition: Condition): boolean {
  if (contacts.length < 2) return false
  if (own.parts.some(({ role }) => role === 'source')) return false
  if (own.branches.some(({ from, to }) => from === 0 || to === 0)) return false
  const conducts = conducting(own, condition, 'direct')
  for (const { law, spec, first, count } of own.parts) {
    const bends = law.bends?.(spec) ?? []
    if (bends.length === 0) continue
    if (bends.includes('swing')) return false
    const branches = Array.from({ length: count }, (_, k) => first + k)
    const choice = without(conducts, branches)
    const met = new Set<number>()
    for (const k of branches) {
      const { from, to } = branchAt(own, k)
      for (const end of [from, to]) {
        const reached = joinedTo(own, choice, end)
        for (const contact of contacts) if (reached.has(contact)) met.add(contact)
      }
    }
    if (met.size > 1) return false
  }
  return true
}

/**
 * Measures the set: each contact is tied to earth by a small resistance, a volt is put into one after the other, and
 * what all of them then carry and hold gives the admittances: I = Y·V.
 * @returns undefined where the set has no such admittances, its contacts being one point
 */
export function equivalentOf(
  own: Netlist,
  contacts: readonly number[],
  about: Pick<Question, 'analysis' | 'frequency' | 'condition'>,
): Equivalent | undefined {
  const stated: Question = {
    ...about,
    sources: 'none',
    small: true,
    bridges: contacts.map((from) => ({ from, to: 0, ohms: LINK })),
  }
  const matrix = Matrix.of(own, stated)
  if (matrix === undefined) return undefined
  const first = own.branches.length
  const answers = contacts.map((_, j) => matrix.answer({ ...stated, series: [{ branch: first + j, re: 1 }] }))
  const paths = pathsFrom(answers, contacts, first)
  return paths && { paths, reasons: reasonsOf(own, answers[0], contacts) }
}

/** Solves Vᵀ·Yᵀ = Iᵀ, one row of Y at a time. */
function pathsFrom(
  answers: readonly Solution[],
  contacts: readonly number[],
  first: number,
): Equivalent['paths'] | undefined {
  const n = contacts.length
  const places = Array.from({ length: n * n }, (_, k) => k)
  const system = createDense(
    { order: n, rows: places.map((k) => Math.floor(k / n)), columns: places.map((k) => k % n) },
    true,
  )
  system.clear()
  answers.forEach(({ voltages }, j) => {
    contacts.forEach((node, i) => {
      system.add(system.slots[j * n + i]!, voltages[2 * node]!, voltages[2 * node + 1]!)
    })
  })
  if (!system.factor().ok) return undefined
  const rows = contacts.map((_, i) => {
    const b = new Float64Array(2 * n)
    answers.forEach((answer, j) => {
      // into the set flows what leaves the link
      const { re, im } = currentIn(answer, first + i)
      b[2 * j] = -re
      b[2 * j + 1] = -im
    })
    system.solve(b, 1)
    return b
  })
  const largest = Math.max(...rows.map((row) => Math.max(...row.map(Math.abs))))
  const clean = (value: number): number => (Math.abs(value) < ROUNDING * largest ? 0 : value)
  return pairsOf(contacts.map((_, k) => k)).map(([p, q]) => ({
    re: clean(-(rows[p]![2 * q]! + rows[q]![2 * p]!) / 2),
    im: clean(-(rows[p]![2 * q + 1]! + rows[q]![2 * p + 1]!) / 2),
  }))
}

/** The stand-ins that the contacts have to do with. */
function reasonsOf(
  own: Netlist,
  answer: Solution | undefined,
  contacts: readonly number[],
): readonly string[] {
  if (answer === undefined) return []
  const islands = new Set(contacts.map((node) => answer.island[node]))
  const reaches = (k: number): boolean => islands.has(answer.island[branchAt(own, k).from])
  return [...answer.standIns].filter(([, branches]) => branches.some(reaches)).map(([reason]) => reason)
}

/** Both analyses of a set as the values of what stands in for it. */
export function portSpec(direct: Equivalent, alternating: Equivalent | undefined): PortSpec {
  return {
    kind: 'port',
    paths: direct.paths.map(({ re }, k) => {
      const at = alternating?.paths[k]
      return { from: '', to: '', direct: re, alternating: [at?.re ?? 0, at?.im ?? 0] }
    }),
  }
}
