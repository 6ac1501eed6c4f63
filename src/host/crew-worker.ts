/** A thread of a crew: takes an order, then stretches one by one until there is none; lays everything else out itself. */
import { parentPort, workerData } from 'node:worker_threads'
import { type BookOrder, type MadeStretch, type Stretch, type StretchMaker, stretchMaker } from '../index.ts'
import { type Problem, ProblemError } from '../problem.ts'

/** What a thread says. */
export type FromThread = { readonly made: MadeStretch } | { readonly problems: readonly Problem[] }

/** Serves whoever started this thread; nothing where nobody did. */
function serve(): void {
  let maker: StretchMaker | undefined
  parentPort?.on('message', (stretch: Stretch | null) => {
    if (stretch === null) {
      parentPort?.close()
      return
    }
    try {
      maker ??= stretchMaker(workerData as BookOrder)
      const bytes = maker(stretch)
      const message: FromThread = { made: { ...stretch, bytes } }
      // the bytes change hands: nothing is copied
      parentPort?.postMessage(message, [bytes.buffer as ArrayBuffer])
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      // an error loses its class on the way; its problems do not
      const message: FromThread = { problems: error.problems }
      parentPort?.postMessage(message)
    }
  })
}

serve()
