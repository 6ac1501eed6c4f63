/** The three workers of the page; each is made when it is first asked. */
import { type Asker, askerOf } from './ask.ts'
import type { BenchTalk, LayoutTalk, StudyTalk } from './protocol.ts'

/** Verdicts, figures, the meter: what answers within a frame or two. */
export const bench: Asker<BenchTalk> = askerOf<BenchTalk>(
  () => new Worker(new URL('../worker/bench-worker.ts', import.meta.url), { type: 'module' }),
)

/** Diagnosis and identification, which may think for a second. */
export const study: Asker<StudyTalk> = askerOf<StudyTalk>(
  () => new Worker(new URL('../worker/study-worker.ts', import.meta.url), { type: 'module' }),
)

/** Places of symbols. */
export const layout: Asker<LayoutTalk> = askerOf<LayoutTalk>(
  () => new Worker(new URL('../worker/layout-worker.ts', import.meta.url), { type: 'module' }),
)
