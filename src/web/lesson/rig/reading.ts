/** What the library says of a house, as the lesson uses it. Nothing is computed here but sums and comparisons of it. */
import type { FollowAnswer, SolveAnswer, Verdict } from '../../../index.ts'
import { MASTER } from './house.ts'
import { elementsOf } from './path.ts'

/** A current as a phasor, A rms. */
export interface Phasor {
  readonly re: number
  readonly im: number
}

export interface BellReading {
  readonly place: string
  /** Ringing current with everything plugged in, A rms. */
  readonly current: number
  /** What it rings from, A rms, as the set's sheet has it. */
  readonly need: number
  readonly rings: boolean
}

export interface HouseReading {
  /** Hz */
  readonly frequency: number
  readonly bells: readonly BellReading[]
  /** Through the capacitor of the master socket, A rms. */
  readonly capacitor: number
  /** How many capacitors lie in the sockets of the house. */
  readonly capacitors: number
  /** Sum of the ringing loads by the line's own definition, and what the line allows. */
  readonly load: { readonly sum: number; readonly allowed: number }
  /** Direct current on-hook, A, and what is allowed. */
  readonly leakage: { readonly value: number; readonly allowed: number }
  /** Loop current off-hook by place, A. */
  readonly loops: ReadonlyMap<string, number>
  /** While it rings, by branch. */
  readonly currents: ReadonlyMap<string, Phasor>
  /** The ringing current from wire to wire of the exchange, as the lesson names what it passes. */
  readonly path?: readonly string[]
}

/** Size of a phasor. */
export const sizeOf = ({ re, im }: Phasor): number => Math.hypot(re, im)

/** The checks that tell what the lesson shows. */
export const HOUSE_CHECKS: readonly string[] = [
  'bell.rings-with-all',
  'line.ringing-load',
  'line.leakage',
  'line.current',
]

/** The frequency at which this house rings, from its verdicts. @throws Error where no bell is judged */
export function frequencyOf(verdicts: readonly Verdict[]): number {
  for (const { figure } of verdicts)
    if (figure?.id === 'ringing.current' && figure.frequency !== undefined) return figure.frequency
  throw new Error('no bell of this house was judged')
}

/** Puts together what was asked of one house. */
export function readingOf(
  checked: readonly Verdict[],
  solved: SolveAnswer,
  followed?: FollowAnswer,
): HouseReading {
  const of = (check: string): readonly Verdict[] => checked.filter((one) => one.check === check)
  const currents = new Map<string, Phasor>()
  for (const [branch, amount] of Object.entries(solved.currents)) currents.set(branch, phasorOf(amount))
  const [load] = of('line.ringing-load')
  const [leakage] = of('line.leakage')
  return {
    frequency: frequencyOf(checked),
    bells: of('bell.rings-with-all').map((one) => ({
      place: one.subject.split('/')[0] ?? one.subject,
      current: one.figure?.value ?? 0,
      need: one.limit?.value ?? 0,
      rings: one.state === 'holds' || one.state === 'marginal',
    })),
    capacitor: sizeOf(currents.get(`${MASTER}/capacitor`) ?? { re: 0, im: 0 }),
    capacitors: [...currents.keys()].filter((id) => /^(box|socket-\d+)\/capacitor$/.test(id)).length,
    load: { sum: load?.figure?.value ?? 0, allowed: load?.limit?.value ?? 0 },
    leakage: { value: leakage?.figure?.value ?? 0, allowed: leakage?.limit?.value ?? 0 },
    loops: new Map(
      of('line.current').map((one) => [one.subject.split('/')[0] ?? '', one.figure?.value ?? 0]),
    ),
    currents,
    ...(followed === undefined ? {} : { path: elementsOf(followed) }),
  }
}

function phasorOf(amount: SolveAnswer['currents'][string]): Phasor {
  if (amount === null) return { re: 0, im: 0 }
  return typeof amount === 'number' ? { re: amount, im: 0 } : amount
}

/** The bell of a place. @throws Error where no bell stands there */
export function bellAt({ bells }: HouseReading, place: string): BellReading {
  const found = bells.find((one) => one.place === place)
  if (found === undefined) throw new Error(`no bell at ${place}`)
  return found
}
