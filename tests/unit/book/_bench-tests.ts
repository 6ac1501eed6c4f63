import { kitOf } from 'ringproof/answer/instruments-table'
import { deliveredLimits } from 'ringproof/answer/limits-table'
import { deliveredOdds } from 'ringproof/answer/odds-table'
import { stand, type Where } from 'ringproof/answer/standing'
import type { BenchTest, SpecAt } from 'ringproof/book/bench-test'
import { type BenchSet, benchTestsOf } from 'ringproof/book/bench-tests/index'
import { type Amount, type Change, freshVariants } from 'ringproof/figures/variants'
import { type Branch, branchAt, nodeOf, placeOf } from 'ringproof/netlist/netlist'
import type { PartSpec } from 'ringproof/parts/kind'
import { DEMO } from '../../support/bench.ts'

/** A set on the bench with all that can be found out about it. */
export interface OnBench extends BenchSet {
  readonly tests: readonly BenchTest[]
  test(id: string): BenchTest
  branch(name: string): Branch
  node(name: string): number
  /** The score of one test, of the sound set or after changes. */
  score(id: string, changes?: readonly Change[]): Amount
  /** The answer's id to a question. */
  answer(id: string, changes?: readonly Change[]): string
  /** Answers that are not as they should be. */
  amiss(changes?: readonly Change[]): Readonly<Record<string, string>>
  /** Other values for a part. */
  becomes(name: string, make: (spec: PartSpec) => PartSpec): Change
  /** The fault of this name among the modes of a part, as its kind states it. */
  mode(part: string, mode: string): readonly Change[]
}

export const DIGITAL = kitOf('digital', undefined)

/** Puts a demo set on the bench; on premises, the set at a place of them. */
export function onBench(asked: Partial<Where> & { readonly at?: string }, kit = DIGITAL): OnBench {
  const { at, ...where } = asked
  const { net, places } = stand({ target: '', ...where }, DEMO)
  const place = placeOf(net, at ?? places[0] ?? '')
  const set: BenchSet = { net, place, odds: deliveredOdds(), kit, limits: deliveredLimits() }
  const tests = benchTestsOf(set)
  const test = (id: string): BenchTest => {
    const found = tests.find((one) => one.id === id)
    if (found === undefined) throw new Error(`no test is called ${id}`)
    return found
  }
  const score = (id: string, changes: readonly Change[] = []): Amount => {
    const one = test(id)
    const figures = new Float64Array(one.plans.length)
    freshVariants(net, one.plans, changes).read(
      changes.map((_, k) => k),
      figures,
    )
    return one.score(Array.from(figures), specsOf(set, changes))
  }
  const answer = (id: string, changes: readonly Change[] = []): string =>
    worded(test(id), score(id, changes)).id
  const partIndex = (name: string): number => net.parts.findIndex(({ id }) => id === `${place.place}/${name}`)
  return {
    ...set,
    tests,
    test,
    score,
    answer,
    branch: (name) => branchAt(net, net.branchIndex.get(`${place.place}/${name}`) ?? -1),
    node: (name) => nodeOf(net, `${place.place}/${name}`),
    amiss: (changes = []) =>
      Object.fromEntries(
        tests
          .filter(({ words }) => words !== undefined)
          .map((one) => [one.id, worded(one, score(one.id, changes))] as const)
          .filter(([, { fine }]) => !fine)
          .map(([id, one]) => [id, one.id]),
      ),
    becomes: (name, make) => {
      const part = partIndex(name)
      return { instead: { part, spec: make(net.parts[part]!.spec) } }
    },
    mode: (name, mode) => changesOf(set, partIndex(name), mode),
  }
}

function worded({ words }: BenchTest, score: Amount) {
  const found = words?.answers[words.cuts.filter((cut) => score >= cut).length]
  if (found === undefined) throw new Error('that is no question in words')
  return found
}

function specsOf({ net }: BenchSet, changes: readonly Change[]): SpecAt {
  return (part) => {
    const found = changes.find((one) => 'instead' in one && one.instead.part === part)
    return found !== undefined && 'instead' in found ? found.instead.spec : net.parts[part]!.spec
  }
}

function changesOf({ net }: BenchSet, index: number, name: string): readonly Change[] {
  const part = net.parts[index]!
  const found = part.law.modes?.(part.spec).find(({ mode }) => mode === name)
  if (found === undefined) throw new Error(`${part.id} knows no ${name}`)
  const { change, branch } = found
  if ('instead' in change) return [{ instead: { part: index, spec: change.instead } }]
  const all = branch === undefined ? Array.from({ length: part.count }, (_, k) => k) : [branch]
  return all.map((k): Change => {
    const one = branchAt(net, part.first + k)
    if ('open' in change) return { lifted: one.index }
    if ('within' in change) return { within: { branch: one.index, ohms: change.within } }
    return { bridge: { from: one.from, to: one.to, ohms: change.across } }
  })
}
