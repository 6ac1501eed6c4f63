/**
 * The diagnosis that is going on: what it is about, what was told at the beginning, and where it has come to. All of it
 * is plain data in signals of the page, so that nothing is lost when the view is left.
 */
import { type Signal, signal } from '@preact/signals'
import type { DiagnoseAnswer, DiagnosisState, NextQuestion, Problem } from '../../../index.ts'
import { hasKeys, remembered } from '../../state/remembered.ts'
import { AskedWrong } from '../../talk/ask.ts'
import type { DiagnosisAct, DiagnosisAsk, OnBench, Side } from '../../talk/protocol.ts'
import { study } from '../../talk/solver.ts'

/** What is told before the first question, and what may be asked. */
export interface Told {
  readonly symptoms: readonly string[]
  /** Readings made before, and other things seen, as they are written; absent in what an earlier build noted. */
  readonly readings?: readonly string[]
  readonly observed?: readonly string[]
  readonly inside: boolean
  readonly live: boolean
  readonly pairs: boolean
}

/** What is being diagnosed; `begun` once questions are asked. */
export interface Case {
  readonly bench: OnBench
  readonly side: Side
  /** Its name for people. */
  readonly name: string
  readonly told: Told
  readonly begun: boolean
  readonly state?: DiagnosisState
}

/** What the worker last said. */
export interface Said {
  readonly question?: NextQuestion
  readonly result: DiagnoseAnswer
}

/** Nothing is told, and no hand is led to a live line: whoever may work there says so. */
export const NOTHING_TOLD: Told = { symptoms: [], inside: true, live: false, pairs: false }

export const current: Signal<Case | undefined> = remembered<Case | undefined>(
  'diagnosis',
  undefined,
  (read) => hasKeys(read, 'bench', 'side', 'name', 'told', 'begun'),
)
export const said: Signal<Said | undefined> = signal(undefined)
/** How far the fault book is; undefined while nothing is worked out. */
export const busy: Signal<string | undefined> = signal(undefined)
/** Why the last answer was not understood, or the case cannot be diagnosed. */
export const refused: Signal<readonly Problem[]> = signal([])
export const broke: Signal<string | undefined> = signal(undefined)

/** Turns of asking: only the newest counts. */
let turn = 0

/** Complaints are listed while nothing is told. */
function untold({ inside, live, pairs }: Told): Told {
  return { symptoms: [], inside, live, pairs }
}

function asked({ bench, side, told }: Case): DiagnosisAsk {
  return { bench, side, ...told }
}

/** Asks the worker; undefined where it refused, or where something was asked after it. */
async function tell(one: Case, act?: DiagnosisAct): Promise<DiagnosisState | undefined> {
  turn += 1
  const mine = turn
  busy.value = 'Working it out…'
  refused.value = []
  broke.value = undefined
  try {
    const { state } = one
    const ask = {
      ...asked(one),
      ...(state === undefined ? {} : { state }),
      ...(act === undefined ? {} : { act }),
    }
    const answer = await study.ask('diagnose', ask, (text) => {
      if (mine === turn) busy.value = text
    })
    if (mine !== turn) return undefined
    const { question, result } = answer
    said.value = question === undefined ? { result } : { question, result }
    return answer.state
  } catch (error) {
    if (mine !== turn) return undefined
    if (error instanceof AskedWrong) refused.value = error.problems
    else broke.value = error instanceof Error ? error.message : String(error)
    return undefined
  } finally {
    if (mine === turn) busy.value = undefined
  }
}

/** Takes up a set: works out its book and asks what one may begin with. */
export async function take(
  bench: OnBench,
  side: Side,
  name: string,
  told: Told = NOTHING_TOLD,
): Promise<void> {
  const one: Case = { bench, side, name, told, begun: false }
  current.value = one
  said.value = undefined
  await tell({ ...one, told: untold(told) })
}

/** Begins to ask, with what was told. */
export async function begin(told: Told): Promise<boolean> {
  const now = current.value
  if (now === undefined) return false
  const { state: _before, ...fresh } = now
  const one: Case = { ...fresh, told, begun: true }
  const state = await tell(one)
  if (state !== undefined) current.value = { ...one, state }
  return state !== undefined
}

/** Answers, passes over or takes back. False where the words were not understood: all stays as it was. */
export async function act(what: DiagnosisAct): Promise<boolean> {
  const now = current.value
  if (now === undefined) return false
  const state = await tell(now, what)
  if (state !== undefined) current.value = { ...now, state }
  return state !== undefined
}

/** What was said last, asked for again: after a reload only the state is left. */
export async function resume(): Promise<void> {
  const now = current.value
  if (now !== undefined && said.value === undefined && busy.value === undefined)
    await tell(now.begun ? now : { ...now, told: untold(now.told) })
}

/** Back to the complaints; what was told there is kept. */
export async function again(): Promise<void> {
  const now = current.value
  if (now !== undefined) await take(now.bench, now.side, now.name, now.told)
}

/** Answers that can be taken back. */
export function answered({ steps }: DiagnosisState): number {
  return steps.filter(({ given }) => given !== true).length
}
