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

/** Wraps a worker, which is made when first asked. */
export function askerOf<Talk extends TalkOf<Talk>>(make: () => Worker): Asker<Talk> {
  const waiting = new Map<number, Waiting>()
  const lanes = new Map<string, number>()
  let worker: Worker | undefined
  let last = 0
  const started = (): Worker => {
    if (worker !== undefined) return worker
    const made = make()
    worker = made
    made.addEventListener('message', ({ data }: MessageEvent<Came>) => {
      const one = waiting.get(data.id)
      if (one === undefined) return
      if ('tells' in data) {
        one.tells?.(data.tells)
        return
      }
      waiting.delete(data.id)
      if ('answer' in data) one.done(data.answer)
      else one.wrong('problems' in data ? new AskedWrong(data.problems) : new Error(data.broke))
    })
    made.addEventListener('error', (event) => {
      for (const one of waiting.values()) one.wrong(new Error(event.message))
      waiting.clear()
    })
    return made
  }
  const ask: Asker<Talk>['ask'] = (what, asked, tells) => {
    last += 1
    const id = last
    const sent: Sent = { id, what, ask: asked }
    return new Promise((done, wrong) => {
      waiting.set(id, { done: done as (answer: unknown) => void, wrong, tells })
      started().postMessage(sent)
    })
  }
  return {
    ask,
    async newest(lane, what, asked) {
      const turn = (lanes.get(lane) ?? 0) + 1
      lanes.set(lane, turn)
      const answer = await ask(what, asked)
      return lanes.get(lane) === turn ? answer : undefined
    },
  }
}
