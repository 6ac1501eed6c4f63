/** What follows from what lies on the bench: the quick half after every move, the whole a little later. */
import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Board, CheckAnswer, Problem, Verdict } from '../../../../index.ts'
import { shelf, shelfState } from '../../../state/shelf.ts'
import { counted } from '../../../state/tally.ts'
import { onBench, present, side, type Work } from '../../../state/work.ts'
import { AskedWrong } from '../../../talk/ask.ts'
import type { JudgedQuick, ShelfRow } from '../../../talk/protocol.ts'
import { bench } from '../../../talk/solver.ts'

/** Of which document, with which sheets in reach, and the how manieth judgement since the page was opened. */
export interface Judgement {
  readonly of: Work
  readonly by: readonly ShelfRow[]
  readonly turn: number
  readonly quick: JudgedQuick
}

export const judged: Signal<Judgement | undefined> = signal(undefined)
/** The same set without any move; for comparison. */
export const foundQuick: Signal<JudgedQuick | undefined> = signal(undefined)
/** The whole judgement of the document it names; that of an older one until it comes. */
export const whole: Signal<
  { readonly of: Work; readonly by: readonly ShelfRow[]; readonly answer: CheckAnswer } | undefined
> = signal(undefined)
/** Why nothing could be judged. */
export const trouble: Signal<readonly Problem[]> = signal([])

/** The board of the side that the pictures show. */
export const board: ReadonlySignal<Board | undefined> = computed(() =>
  side.value === 'found' ? foundQuick.value?.board : judged.value?.quick.board,
)

/** The verdicts as found, each under its check and subject. */
export const foundVerdicts: ReadonlySignal<readonly Verdict[]> = computed(
  () => foundQuick.value?.verdicts ?? [],
)

/** Takes over a judgement; the one who has it need not wait for another. */
export function tookJudgement(of: Work, quick: JudgedQuick): void {
  batch(() => {
    judged.value = { of, by: shelf.peek(), quick, turn: (judged.peek()?.turn ?? 0) + 1 }
    counted.value = { of, counts: quick.counts }
    trouble.value = []
  })
}

/** Shows why something could not be done. */
export function tookTrouble(thrown: unknown): void {
  trouble.value = problemsOf(thrown)
}

/** Problems of whatever a worker threw. */
export function problemsOf(thrown: unknown): readonly Problem[] {
  if (thrown instanceof AskedWrong) return thrown.problems
  const found = thrown instanceof Error ? thrown.message : String(thrown)
  const expected = 'an answer'
  return [{ code: 'ours', severity: 'error', found, expected, mend: 'please report it' }]
}

/** After so long without a move the whole is judged, ms: it takes longer than a frame. */
const QUIET = 250

/** Judges whatever comes to lie on the bench, until it is ended. */
export function watchBench(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  const ends = [
    effect(() => {
      const now = present.value
      const by = shelf.value
      // a worker that does not know the sheets yet would find no set
      if (now === undefined || shelfState.value !== 'ready') return
      const before = judged.peek()
      if (before?.of === now && before.by === by) return
      void bench
        .newest('judge', 'judge', { bench: onBench(now) })
        .then((quick) => {
          if (quick !== undefined && present.peek() === now) tookJudgement(now, quick)
        })
        .catch(tookTrouble)
    }),
    effect(() => {
      const here = judged.value
      clearTimeout(timer)
      const before = whole.peek()
      if (here === undefined || (before?.of === here.of && before.by === here.by)) return
      timer = setTimeout(() => judgeWhole(here), QUIET)
    }),
    watchFound(),
  ]
  return () => {
    clearTimeout(timer)
    for (const end of ends) end()
  }
}

function judgeWhole({ of: now, by }: Judgement): void {
  void bench
    .newest('check', 'check', { bench: onBench(now), side: 'proposed' })
    .then((answer) => {
      if (answer !== undefined && present.peek() === now) whole.value = { of: now, by, answer }
    })
    .catch(tookTrouble)
}

/** What the set was like is asked once for as long as it stands where it stands, and the sheets are the same. */
function watchFound(): () => void {
  let known = ''
  let knownBy: readonly ShelfRow[] | undefined
  return effect(() => {
    const now = present.value
    const by = shelf.value
    if (now === undefined || shelfState.value !== 'ready') return
    const key = JSON.stringify([now.set, now.on, now.at, now.in])
    if (key === known && by === knownBy) return
    if (key !== known) foundQuick.value = undefined
    known = key
    knownBy = by
    void bench
      .newest('found', 'judge', { bench: onBench({ ...now, moves: [] }) })
      .then((quick) => {
        if (quick !== undefined && key === known && by === knownBy) foundQuick.value = quick
      })
      .catch(tookTrouble)
  })
}
