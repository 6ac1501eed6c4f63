/** A crew of threads, one a core: each works stretches of a fault book out by itself. */
import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import {
  type BookOrder,
  type Crew,
  crewHere,
  type MadeStretch,
  type Stretch,
  stretchMaker,
} from '../index.ts'
import { ProblemError } from '../problem.ts'
import type { FromThread } from './crew-worker.ts'

/** The thread's own file, which a build puts beside this one. */
const ENTRY = 'crew-worker.js'

/** More threads than this are never of use: what they share is laid out in each of them. */
const MOST = 8

/** Less than this, in variants times branches, is done before a thread has laid out what it works on. */
const LITTLE = 200_000

/**
 * Room for what is short-lived in a thread, MB. Left to itself each thread lets hundreds of them fill up before it
 * clears them away; measured, two threads take a third less memory so, and no more time.
 */
const YOUNG = 6

/** Lets others have their turn, such as a key that stops the program. */
const breathe = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

/**
 * A crew of so many threads, one a core when nothing is said. In this very thread where there is but one core, where
 * the work is small, and where the thread's file is not there, as when the sources run by themselves.
 */
export function threadCrew(
  lanes: number = Math.min(MOST, availableParallelism()),
  entry: string = fileURLToPath(new URL(ENTRY, import.meta.url)),
): Crew<BookOrder> {
  const here = crewHere(1, stretchMaker, breathe)
  return {
    lanes,
    run: (order, stretches, effort = Number.POSITIVE_INFINITY) =>
      lanes < 2 || stretches.length < 2 || effort < LITTLE || !existsSync(entry)
        ? here.run(order, stretches)
        : inThreads(order, stretches, Math.min(lanes, stretches.length), entry),
  }
}

async function* inThreads(
  order: BookOrder,
  stretches: readonly Stretch[],
  lanes: number,
  entry: string,
): AsyncGenerator<MadeStretch> {
  const waiting = [...stretches]
  const results = new Inbox()
  const threads = Array.from({ length: lanes }, () => {
    const thread = new Worker(entry, {
      workerData: order,
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
    })
    const next = (): void => thread.postMessage(waiting.shift() ?? null)
    thread.on('message', (message: FromThread) => {
      if ('made' in message) next()
      results.put(message)
    })
    thread.on('error', (error) => results.put({ failed: error }))
    next()
    return thread
  })
  try {
    for (let made = 0; made < stretches.length; made += 1) yield await results.take()
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()))
  }
}

/** What the threads say, in the order in which they say it. */
class Inbox {
  readonly #said: (FromThread | { readonly failed: unknown })[] = []
  #wake: () => void = () => {}

  put(message: FromThread | { readonly failed: unknown }): void {
    this.#said.push(message)
    this.#wake()
  }

  /** The next stretch that is made. @throws what a thread failed by */
  async take(): Promise<MadeStretch> {
    for (;;) {
      const message = this.#said.shift()
      if (message === undefined) {
        await new Promise<void>((resolve) => {
          this.#wake = resolve
        })
      } else if ('made' in message) return message.made
      else if ('problems' in message) throw new ProblemError(message.problems)
      else throw message.failed
    }
  }
}
