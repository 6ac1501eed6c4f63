/** The page's workers that compute; each is made when it is first asked, and again where it broke down. Symbols are placed by `place.ts`. */
import { type Asker, askerOf } from './ask.ts'
import type { BenchTalk, StudyTalk } from './protocol.ts'

/** Verdicts, figures, the meter: what answers within a frame or two. */
export const bench: Asker<BenchTalk> = askerOf<BenchTalk>(
  () => new Worker(new URL('../worker/bench-worker.ts', import.meta.url), { type: 'module' }),
  'shelf',
)

/** Diagnosis and identification, which may think for a second. */
export const study: Asker<StudyTalk> = askerOf<StudyTalk>(
  () => new Worker(new URL('../worker/study-worker.ts', import.meta.url), { type: 'module' }),
  'shelf',
)
