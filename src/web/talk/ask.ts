/** A worker as a function: ask, and the answer comes. */
import type { Problem } from '../../index.ts'
import type { Came, Sent } from './protocol.ts'

/** A sheet or a request was wrong: what to show. */
export class AskedWrong extends Error {
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[]) {
    super(problems.map(({ found }) => found).join('; '))
    this.problems = problems
  }
}

type TalkOf<Talk> = { [What in keyof Talk]: [ask: unknown, answer: unknown] }

/** Asks a worker; answers come in any order. */
export interface Asker<Talk extends TalkOf<Talk>> {
  /** @throws AskedWrong with the problems; Error where something of ours broke */
  ask<What extends keyof Talk & string>(
    what: What,
    ask: Talk[What][0],
    tells?: (text: string) => void,
  ): Promise<Talk[What][1]>
  /** The same, but undefined where `ask` of the same `lane` came after: only the newest counts. */
  newest<What extends keyof Talk & string>(
    lane: string,
    what: What,
    ask: Talk[What][0],
  ): Promise<Talk[What][1] | undefined>
}

interface Waiting {
  readonly done: (answer: unknown) => void
  readonly wrong: (error: Error) => void
  readonly tells: ((text: string) => void) | undefined
}

/** What is said where a worker ends without a word, as one does whose file does not come. */
const ENDED = 'The part of the page that computes has stopped. Load the page again if it does not come back.'

/**
 * Wraps a worker, which is made when first asked. One that broke down is given up, and with it what it had been
 * asked; the next ask makes another.
 *
 * @param tellFirst the ask that tells a worker what it must know: whatever is asked before waits for it, and the
 *   newest of it is told to a new worker first
 */
export function askerOf<Talk extends TalkOf<Talk>>(
  make: () => Worker,
  tellFirst?: keyof Talk & string,
): Asker<Talk> {
  const waiting = new Map<number, Waiting>()
  const lanes = new Map<string, Lane>()
  let worker: Worker | undefined
  let told: Sent | undefined
  /** Asked before the worker was told what it must know. */
  let early: Sent[] = []
  let last = 0
  const giveUp = (message: string | undefined): void => {
    worker?.terminate()
    worker = undefined
    const all = [...waiting.values()]
    waiting.clear()
    early = []
    for (const one of all) one.wrong(new Error(message || ENDED))
  }
  const started = (): Worker => {
    if (worker !== undefined) return worker
    const made = make()
    worker = made
    made.addEventListener('message', ({ data }: MessageEvent<Came>) => heard(waiting, data))
    made.addEventListener('error', ({ message }) => made === worker && giveUp(message))
    made.addEventListener('messageerror', () => made === worker && giveUp(undefined))
    // nobody waits for this one
    if (told !== undefined) made.postMessage({ ...told, id: 0 })
    return made
  }
  /** Sends what has waited; what cannot be sent is refused. */
  const post = (to: Worker, sent: Sent): void => {
    try {
      to.postMessage(sent)
    } catch (thrown) {
      const one = waiting.get(sent.id)
      waiting.delete(sent.id)
      one?.wrong(thrown instanceof Error ? thrown : new Error(String(thrown)))
    }
  }
  const ask: Asker<Talk>['ask'] = (what, asked, tells) => {
    last += 1
    const id = last
    const sent: Sent = { id, what, ask: asked }
    return new Promise((done, wrong) => {
      const to = started()
      const isEarly = tellFirst !== undefined && told === undefined && what !== tellFirst
      if (isEarly) early.push(sent)
      else to.postMessage(sent)
      // answers come later, never at once
      waiting.set(id, { done: done as (answer: unknown) => void, wrong, tells })
      if (what !== tellFirst) return
      told = sent
      const held = early
      early = []
      for (const one of held) post(to, one)
    })
  }
  return {
    ask,
    async newest(lane, what, asked) {
      const { turn, before } = lanes.get(lane) ?? { turn: 0, before: undefined }
      const mine: Lane = { turn: turn + 1, before }
      lanes.set(lane, mine)
      const isNewest = (): boolean => lanes.get(lane)?.turn === mine.turn
      // one of a lane is worked on at a time: what is outdated by then is never asked
      if (before !== undefined) await before
      if (!isNewest()) return undefined
      const answer = ask(what, asked)
      mine.before = answer.catch(() => undefined)
      try {
        const came = await answer
        return isNewest() ? came : undefined
      } catch (thrown) {
        if (isNewest()) throw thrown
        return undefined
      }
    },
  }
}

/** Asks of which the newest counts. */
interface Lane {
  readonly turn: number
  /** Ends with the one that is worked on. */
  before: Promise<unknown> | undefined
}

function heard(waiting: Map<number, Waiting>, data: Came): void {
  const one = waiting.get(data.id)
  if (one === undefined) return
  if ('tells' in data) {
    one.tells?.(data.tells)
    return
  }
  waiting.delete(data.id)
  if ('answer' in data) one.done(data.answer)
  else one.wrong('problems' in data ? new AskedWrong(data.problems) : new Error(data.broke))
}
